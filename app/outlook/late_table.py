"""A table whose rows take seconds to work out: asked for only while it is seen, made beside the window."""

from collections.abc import Callable, Iterable, Sequence
from datetime import date

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHeaderView, QLabel, QTableWidget, QTableWidgetItem, QVBoxLayout, QWidget

from app.making import Making
from app.outlook.wrapped_words import WrappedWords
from app.solving import Answer

FAILED = "This could not be worked out; the plan itself is safe. The log says more."

MEANWHILE = "Working it out…"

Work = Callable[[Answer, str, date], object]


class LateTable(QWidget):
    """Words above a table; the old rows stay, greyed, until the new ones are there."""

    found = Signal(object)  # what was worked out, to be put into the table

    def __init__(
        self,
        name: str,
        heads: Sequence[str],
        work: Work,
        parent: QWidget,
        *,
        meanwhile: str = MEANWHILE,
        at_once: bool = False,
    ) -> None:
        super().__init__(parent)
        self._work, self._meanwhile = work, meanwhile
        self._asked: tuple[int, tuple[tuple[str, str], ...], str] | None = None
        self._wish: tuple[Answer, str] | None = None
        self.making = Making(self, at_once=at_once)
        self.making.made.connect(self._arrived)
        self.words = QLabel(self)
        self.words.setProperty("look", "quiet")
        self.words.setWordWrap(True)
        self.table = QTableWidget(0, len(heads), self)
        self.table.setItemDelegate(WrappedWords(self.table))
        self._fitting = QTimer(self, singleShot=True, interval=0)
        self._fitting.timeout.connect(self.table.resizeRowsToContents)
        self.table.setAccessibleName(name)
        self.table.setHorizontalHeaderLabels(list(heads))
        self.table.verticalHeader().hide()
        self.table.setShowGrid(False)
        self.table.setTabKeyNavigation(False)
        self.table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        self.table.setSelectionMode(QTableWidget.SelectionMode.SingleSelection)
        self.table.setVerticalScrollMode(QTableWidget.ScrollMode.ScrollPerPixel)
        self.table.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.table.horizontalHeader().setHighlightSections(False)
        self.table.horizontalHeader().sectionResized.connect(lambda *_: self.fit_rows())
        self.table.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.words)
        column.addWidget(self.table, 1)
        column.addStretch(0)

    def follow(self, answer: Answer | None, battery: str) -> None:
        """Show what holds for a battery of that answer, at once or as soon as this is looked at."""
        self._wish = (answer, battery) if answer is not None and answer.complete and battery else None
        if self._wish is not None and self.isVisible():
            self._ask()

    def showEvent(self, event: QShowEvent) -> None:
        """Work out what was put off."""
        super().showEvent(event)
        if self._wish is not None:
            self._ask()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give long words the lines they need."""
        super().resizeEvent(event)
        self.fit_rows()

    def fit_rows(self) -> None:
        """Fit the rows' heights once the columns have their widths."""
        self._fitting.start()

    def heads_right(self, columns: Iterable[int]) -> None:
        """Let the heads of these columns stand above numbers."""
        for column in columns:
            head = self.table.horizontalHeaderItem(column)
            if head is not None:
                head.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)

    def put(
        self, row: int, column: int, text: str, *, right: bool = False, strong: bool = False
    ) -> QTableWidgetItem:
        """Put words into a cell; return it."""
        item = QTableWidgetItem(text)
        side = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
        item.setTextAlignment(side | Qt.AlignmentFlag.AlignVCenter)
        if strong:
            font = item.font()
            font.setBold(True)
            item.setFont(font)
        self.table.setItem(row, column, item)
        return item

    def _ask(self) -> None:
        assert self._wish is not None
        answer, battery = self._wish
        key = (answer.revision, tuple(sorted(answer.positions.items())), battery)
        if key == self._asked:
            return
        if self._asked is None or self._asked[2] != battery:
            self.table.hide()
        self._asked = key
        self.words.setText(self._meanwhile)
        self.table.setEnabled(False)
        work = self._work
        self.making.ask(lambda: work(answer, battery, date.today()))

    def _arrived(self, found: object) -> None:
        self.table.setEnabled(True)
        self.table.setVisible(found is not None)
        if found is None:
            self._asked = None
            self.words.setText(FAILED)
            return
        self.found.emit(found)
