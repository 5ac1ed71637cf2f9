"""What to expect of a battery in one sentence, how far it may differ, and why it ends."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from app.theme.words import scaled
from wiring.quantities.wording import worded
from wiring.studies.outlook import Outlook, Span

FINE_BELOW = 4.0  # of whatever is counted: below it a tenth matters
BETWEEN, WORDS_WIDE = 30, 220  # from words to figures; the least width words are read in
_SPANS = (("Sessions", "sessions", 0), ("Hours lit", "hours", 0), ("Days", "days", 0))


class Summary(QWidget):
    """Words on the left, low, typical and high on the right."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.words, self.reason, self.notes = QLabel(self), QLabel(self), QLabel(self)
        self.words.setProperty("look", "big")
        said = QVBoxLayout()
        said.setSpacing(4)
        for label in (self.words, self.reason, self.notes):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
            policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
            policy.setHeightForWidth(True)
            label.setSizePolicy(policy)
            said.addWidget(label)
        for label in (self.reason, self.notes):
            label.setProperty("look", "quiet")
        said.addStretch(1)
        self._spans = QFrame(self)
        self._grid = QGridLayout(self._spans)
        self._grid.setContentsMargins(0, 6, 0, 6)
        self._grid.setHorizontalSpacing(26)
        self._grid.setVerticalSpacing(3)
        self._names: list[QLabel] = []
        self.cells = self._made_cells()
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(BETWEEN)
        row.addLayout(said, 1)
        row.addWidget(self._spans, 0, Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)

    def minimumSizeHint(self) -> QSize:
        """No wider than the figures: beside them there need be no words."""
        return QSize(self._spans.minimumSizeHint().width(), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the figures below the words where both have no room side by side."""
        super().resizeEvent(event)
        beside = self._spans.sizeHint().width() + BETWEEN + scaled(WORDS_WIDE) <= self.width()
        way = QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom
        if way != self._row.direction():
            self._row.setDirection(way)
            self._row.setSpacing(BETWEEN if beside else 4)

    def say(self, words: str, reason: str) -> None:
        """Show words only."""
        self.words.setText(words)
        self.reason.setText(reason)
        self.notes.hide()
        self._spans.hide()

    def show_outlook(self, outlook: Outlook) -> None:
        """Show what is to be expected."""
        drawn = outlook.first_load_a > 0
        fresh = f" It gives {worded(outlook.first_load_a, 'current')} when fresh." if drawn else ""
        self.say(outlook.words[:1].upper() + outlook.words[1:], outlook.end_reason + fresh)
        self.notes.setText(" ".join(outlook.notes))
        self.notes.setVisible(bool(outlook.notes))
        self._spans.setVisible(drawn)
        for row, (_, name, digits) in zip(self.cells, _SPANS, strict=True):
            span: Span = getattr(outlook, name)
            digits = 1 if span.high < FINE_BELOW else digits
            for cell, value in zip(row, (span.low, span.typical, span.high), strict=True):
                cell.setText(f"{value:.{digits}f}")
        for widget in (self._names[0], *self.cells[0]):  # what is never off has no sessions
            widget.setHidden(outlook.always_on)

    def _made_cells(self) -> list[list[QLabel]]:
        for column, text in enumerate(("", "low", "typical", "high")):
            head = QLabel(text, self._spans)
            head.setProperty("look", "caption")
            self._grid.addWidget(head, 0, column, Qt.AlignmentFlag.AlignRight)
        rows: list[list[QLabel]] = []
        for number, (title, _, _) in enumerate(_SPANS, start=1):
            name = QLabel(title, self._spans)
            name.setProperty("look", "quiet")
            self._grid.addWidget(name, number, 0)
            self._names.append(name)
            row = [QLabel(self._spans) for _ in range(3)]
            row[1].setStyleSheet("font-weight: 600;")
            for column, cell in enumerate(row, start=1):
                self._grid.addWidget(cell, number, column, Qt.AlignmentFlag.AlignRight)
            rows.append(row)
        return rows
