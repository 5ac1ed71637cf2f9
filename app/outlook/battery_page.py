"""The battery view: what to expect in one sentence, how far it may differ, the course, and why it ends."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from app.outlook.course_table import CourseTable
from app.outlook.curve_view import CurveView
from app.solving import Answer
from app.theme.look import Look
from wiring.plan.designations import part_label
from wiring.quantities.wording import worded
from wiring.studies.outlook import Outlook, Span

NONE_YET = (
    "Place one from “Feed it” and wire something to it; its outlook then stands here: "
    "how many sessions it lasts, and when to swap it."
)
_SPANS = (("Sessions", "sessions", 0), ("Hours lit", "hours", 0), ("Days", "days", 0))


class BatteryPage(QWidget):
    """Shows one battery of the plan at a time."""

    chosen = Signal(str)  # id of the battery that is shown

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._answer: Answer | None = None
        self.choice = QComboBox(self)
        self.choice.setAccessibleName("Battery")
        self.choice.setMinimumWidth(220)
        self.choice.activated.connect(self._choose)
        self._as_table = QPushButton("As a table", self)
        self._as_table.setCheckable(True)
        self._as_table.setAccessibleName("Show the course as a table")
        self.words = QLabel(self)
        self.words.setProperty("look", "big")
        self.reason = QLabel(self)
        self.reason.setProperty("look", "quiet")
        for label in (self.words, self.reason):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
            policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
            policy.setHeightForWidth(True)
            label.setSizePolicy(policy)
        self._spans = QFrame(self)
        self._grid = QGridLayout(self._spans)
        self._grid.setContentsMargins(0, 6, 0, 6)
        self._grid.setHorizontalSpacing(26)
        self._grid.setVerticalSpacing(3)
        self._cells = self._made_cells()
        self.curve = CurveView(look, self)
        self.table = CourseTable(self)
        self.table.hide()
        self._fill = QWidget(self)  # keeps the words at the top while there is no course to show
        self._as_table.toggled.connect(self._swap)
        head = QHBoxLayout()
        head.addWidget(self.choice)
        head.addStretch(1)
        head.addWidget(self._as_table)
        summary = QHBoxLayout()
        summary.setSpacing(30)
        said = QVBoxLayout()
        said.setSpacing(4)
        said.addWidget(self.words)
        said.addWidget(self.reason)
        said.addStretch(1)
        summary.addLayout(said, 1)
        summary.addWidget(self._spans)
        column = QVBoxLayout(self)
        column.setContentsMargins(28, 14, 28, 14)
        column.setSpacing(12)
        column.addLayout(head)
        column.addLayout(summary)
        column.addWidget(self.curve, 1)
        column.addWidget(self.table, 1)
        column.addWidget(self._fill, 1)

    def show_answer(self, answer: Answer) -> None:
        """Show the outlooks of an answer."""
        self._answer = answer
        plan, outlooks = answer.situation.plan, answer.situation.outlooks
        kept = self.choice.currentData()
        self.choice.clear()
        for part_id in outlooks:
            label = plan.parts[part_id].label
            self.choice.addItem(f"{part_label(plan, part_id)}  {label}".rstrip(), part_id)
        found = self.choice.findData(kept)
        self.choice.setCurrentIndex(max(found, 0) if outlooks else -1)
        self.choice.setVisible(len(outlooks) > 1)
        self._show_chosen()

    @property
    def battery(self) -> str:
        """Id of the battery that is shown, "" when there is none."""
        return str(self.choice.currentData() or "")

    def _choose(self) -> None:
        self._show_chosen()
        self.chosen.emit(self.battery)

    def _show_chosen(self) -> None:
        answer = self._answer
        outlook = answer.situation.outlooks.get(self.choice.currentData()) if answer else None
        waiting = answer is not None and not answer.complete
        self._spans.setVisible(outlook is not None)
        self._as_table.setVisible(outlook is not None and bool(outlook.curve.hours))
        self._fill.setVisible(outlook is None or not outlook.curve.hours)
        self._swap(self._as_table.isChecked())
        self.curve.show_outlook(outlook)
        self.table.show_outlook(outlook)
        if outlook is None:
            self.words.setText("Working the outlook out…" if waiting else "No battery yet")
            self.reason.setText("" if waiting else NONE_YET)
            return
        self.words.setText(outlook.words[:1].upper() + outlook.words[1:])
        gives = worded(outlook.first_load_a, "current")
        drawn = outlook.first_load_a > 0
        self.reason.setText(
            f"{outlook.end_reason} It gives {gives} when fresh." if drawn else outlook.end_reason
        )
        self._spans.setVisible(drawn)
        self._fill_spans(outlook)

    def _swap(self, table: bool) -> None:
        there = not self._fill.isVisibleTo(self)
        self.table.setVisible(there and table)
        self.curve.setVisible(there and not table)

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
            row = [QLabel(self._spans) for _ in range(3)]
            row[1].setStyleSheet("font-weight: 600;")
            for column, cell in enumerate(row, start=1):
                self._grid.addWidget(cell, number, column, Qt.AlignmentFlag.AlignRight)
            rows.append(row)
        return rows

    def _fill_spans(self, outlook: Outlook) -> None:
        for row, (_, name, digits) in zip(self._cells, _SPANS, strict=True):
            span: Span = getattr(outlook, name)
            for cell, value in zip(row, (span.low, span.typical, span.high), strict=True):
                cell.setText(f"{value:.{digits}f}")
