"""The battery's course as a table, for those who would rather read than look."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView, QTableWidget, QTableWidgetItem, QWidget

from app.outlook.course_frames import when_words
from wiring.studies.outlook import Outlook

ROWS = 24
HEADS = ("Hours lit", "When", "Volts", "Light of 100")


class CourseTable(QTableWidget):
    """A fair number of the curve's samples."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(0, len(HEADS), parent)
        self.setAccessibleName("Course of the battery as a table")
        self.setHorizontalHeaderLabels(list(HEADS))
        self.verticalHeader().hide()
        self.setShowGrid(False)
        self.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        self.horizontalHeader().setDefaultAlignment(right)
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)

    def show_outlook(self, outlook: Outlook | None) -> None:
        """Show another course."""
        rows = course_rows(outlook) if outlook is not None else ()
        self.setRowCount(len(rows))
        for row, cells in enumerate(rows):
            for column, text in enumerate(cells):
                item = QTableWidgetItem(text)
                item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
                self.setItem(row, column, item)


def course_rows(outlook: Outlook) -> tuple[tuple[str, ...], ...]:
    """Return evenly spaced samples, the first and the last among them, in words."""
    curve, fitted = outlook.curve, outlook.counted_from
    return tuple(
        (
            f"{curve.hours[n]:.1f}",
            when_words(curve.days[n], fitted),
            f"{curve.volts[n]:.2f}",
            f"{curve.lightness[n]:.0f}" if curve.lightness else "",
        )
        for n in _spread(len(curve.hours), ROWS)
    )


def _spread(count: int, wanted: int) -> Sequence[int]:
    if count <= wanted:
        return range(count)
    return sorted({round(k * (count - 1) / (wanted - 1)) for k in range(wanted)})
