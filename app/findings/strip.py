"""The strip below the pages: how many findings of each rank there are, and the list of them when opened."""

from collections import Counter
from collections.abc import Sequence

from PySide6.QtCore import QEvent, QModelIndex, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QListView,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.findings.finding_list import FINDING_ROLE, FindingModel, FindingPainter
from app.findings.flag import Flag, rank_word
from app.findings.mend_buttons import MendButtons
from app.theme.elided import Elided
from app.theme.look import Look
from app.theme.sizes import hint_height, list_height
from wiring.findings.finding import Finding, Rank

LOOKING = "Looking for faults"
BAR_HEIGHT = 36
LIST_HEIGHT = 168
KEY = "Ctrl+I"
_NAMES = {
    Rank.DANGER: ("danger", "dangers"),
    Rank.WEAK: ("weak point", "weak points"),
    Rank.NOTE: ("note", "notes"),
}


class FindingsStrip(QFrame):
    """Shows findings; a click on one tells what it is about."""

    pointed = Signal(object)  # ids the finding names
    left = Signal()  # the list was put away by key: the focus belongs to the page again

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("strip")
        self._headline = QLabel("No figures yet", self)
        self._headline.setTextFormat(Qt.TextFormat.PlainText)
        self._counts: dict[Rank, tuple[QWidget, QLabel]] = {}
        self._numbers: Counter[Rank] = Counter()
        self._toggle = QToolButton(self)
        self._toggle.setCheckable(True)
        self._toggle.setText("Show")
        self._toggle.setObjectName("showFindings")
        self._toggle.setAccessibleName("Show or hide the findings")
        self._toggle.setShortcut(KEY)
        self._toggle.setToolTip(f"Show or hide the findings  {KEY}")
        self._toggle.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self._toggle.toggled.connect(self._unfold)
        self._toggle.clicked.connect(self._come_in)
        self.model = FindingModel(self)
        self.list = QListView(self)
        self.list.setAccessibleName("Findings")
        self.list.setModel(self.model)
        self.list.setItemDelegate(FindingPainter(look, self.list))
        self.list.setResizeMode(QListView.ResizeMode.Adjust)
        self.list.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setMouseTracking(True)
        list_height(self.list, LIST_HEIGHT)
        self.list.installEventFilter(self)
        self.list.hide()
        self.list.clicked.connect(self._point)
        self.list.activated.connect(self._point)
        self.mends = MendButtons(self.list)
        self.hint = Elided(self, lines=2)
        self.hint.setProperty("look", "quiet")
        taking = self.hint.sizePolicy()
        taking.setRetainSizeWhenHidden(True)  # else the counts spread over its room
        self.hint.setSizePolicy(taking)
        self.hint.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        bar = QWidget(self)
        hint_height(bar, BAR_HEIGHT)
        self._row = row = QHBoxLayout(bar)
        row.setContentsMargins(16, 0, 10, 0)
        row.setSpacing(6)
        for rank in sorted(_NAMES, reverse=True):
            badge, count = _badge(look, rank, bar)
            self._counts[rank] = (badge, count)
            row.addWidget(badge)
        row.addWidget(self._headline)
        row.addWidget(self.hint, 1)
        row.addSpacing(10)
        row.addWidget(self._toggle)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(bar)
        column.addWidget(self.list)
        self.show_findings((), empty=True)

    def show_findings(
        self, findings: Sequence[Finding], *, empty: bool = False, looking: bool = False
    ) -> None:
        """Show these; `empty` says that nothing has been drawn yet, `looking` that there may be more."""
        row = self.list.currentIndex().row()
        self.model.show_findings(findings)
        self.mends.go_on(row)
        counts = Counter(f.rank for f in findings)
        self._numbers = counts
        for rank, (badge, _) in self._counts.items():
            badge.setVisible(counts[rank] > 0)
        self._headline.setVisible(not findings and not self.hint.text())
        found = LOOKING if looking else "Nothing to find fault with"
        self._headline.setText("Nothing drawn yet" if empty else found)
        self._toggle.setEnabled(bool(findings))
        if not findings:
            self._toggle.setChecked(False)
        self._write_counts()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Write the counts for another width."""
        super().resizeEvent(event)
        self._write_counts()

    def changeEvent(self, event: QEvent) -> None:
        """The same when the words have another size."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "_row"):
            self._write_counts()

    def _write_counts(self) -> None:
        """Write how many there are of each rank; where that has no room the flag stands for the word."""
        for brief in (False, True):
            for rank, (badge, label) in self._counts.items():
                number = self._numbers[rank]
                words = f"{number} {_NAMES[rank][number != 1]}"
                label.setText(str(number) if brief else words)
                label.setAccessibleName(words)
                badge.setToolTip(words if brief else "")
                badge.updateGeometry()
            room = self.width() - self._row.minimumSize().width()
            if room >= 0 and self.hint.fits(room):
                break
        for layout in (*(badge.layout() for badge, _ in self._counts.values()), self._row):
            if layout is not None:
                layout.activate()  # in the very next frame: Qt would take one for each layout in another

    def show_waiting(self) -> None:
        """Forget the findings of another plan: those of this one are being looked for."""
        self.show_findings((), looking=True)

    @property
    def verdict(self) -> str:
        """What stands where there are no findings to count."""
        return self._headline.text()

    def show_hint(self, words: str) -> None:
        """Show what the tool in hand waits for."""
        self.hint.setText(words)
        self._write_counts()
        self._headline.setVisible(not words and not self.model.rowCount())  # words need the room

    def unfold(self, yes: bool = True) -> None:
        """Open or close the list."""
        self._toggle.setChecked(yes)

    def _unfold(self, yes: bool) -> None:
        held = not yes and self.list.hasFocus()
        self._toggle.setText("Hide" if yes else "Show")
        self._toggle.setShortcut(KEY)  # Qt forgets it when the words change
        self.list.setVisible(yes)
        if held:
            self.left.emit()  # else what is next in the row gets the keys

    def _come_in(self, yes: bool) -> None:
        """Go on by keys in the list that was just opened."""
        if yes:
            self.list.setFocus(Qt.FocusReason.ShortcutFocusReason)
            if not self.list.currentIndex().isValid():
                self.list.setCurrentIndex(self.model.index(0, 0))
        else:
            self.left.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Put the list away on Escape."""
        key = event.key() if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress else None
        if watched is self.list and key == Qt.Key.Key_Escape:
            self.unfold(False)
            return True
        return super().eventFilter(watched, event)

    def _point(self, index: QModelIndex) -> None:
        finding: Finding = index.data(FINDING_ROLE)
        self.pointed.emit((*finding.parts, *finding.wires))


def _badge(look: Look, rank: Rank, parent: QWidget) -> tuple[QWidget, QLabel]:
    badge = QWidget(parent)
    flag, count = Flag(look, badge), QLabel(badge)
    flag.show_rank(rank_word(rank))
    row = QHBoxLayout(badge)
    row.setContentsMargins(0, 0, 12, 0)
    row.setSpacing(6)
    row.addWidget(flag)
    row.addWidget(count)
    return badge, count
