"""Live figures: a name on the left, the value in tabular numerals on the right."""

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from app.inspector.selectable_words import SelectableWords


class Figure(NamedTuple):
    """One reading in words."""

    name: str
    value: str
    strong: bool = False


class FiguresTable(QWidget):
    """Keeps its labels and changes only their text, so nothing jumps while figures run."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._rows: list[tuple[QLabel, SelectableWords]] = []
        self._strong: list[bool] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(10)
        self._grid.setVerticalSpacing(5)
        self._grid.setColumnStretch(0, 1)
        self.figures: tuple[Figure, ...] = ()

    def show_figures(self, figures: Sequence[Figure]) -> None:
        """Show these readings."""
        before = self.figures
        if before == tuple(figures) and self._rows:
            return
        self.figures = tuple(figures)
        while len(self._rows) < len(figures):
            self._add_row()
        for number, (name, value) in enumerate(self._rows):
            there = number < len(figures)
            if there != (number < len(before)) or not before:
                name.setVisible(there)
                value.setVisible(there)
            if there and before[number : number + 1] != (figures[number],):
                value.say(figures[number].value, runs=name.text() == figures[number].name)
                name.setText(figures[number].name)
                self._weigh(number, figures[number].strong)
        if bool(before) != bool(figures) or not self._rows:
            self.setVisible(bool(figures))
        self.setAccessibleName("; ".join(f"{f.name} {f.value}" for f in figures))

    def _weigh(self, number: int, strong: bool) -> None:
        if self._strong[number] != strong:
            self._strong[number] = strong
            value = self._rows[number][1]
            # A rule, not a font of its own: that is lost when the rules change with the look.
            value.setProperty("look", "strong" if strong else None)
            value.style().unpolish(value)
            value.style().polish(value)

    def _add_row(self) -> None:
        name, value = QLabel(self), SelectableWords(self)
        name.setProperty("look", "quiet")
        for label in (name, value):
            label.setTextFormat(Qt.TextFormat.PlainText)
        name.setWordWrap(True)
        value.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        row = len(self._rows)
        self._grid.addWidget(name, row, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(value, row, 1, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        self._rows.append((name, value))
        self._strong.append(False)
