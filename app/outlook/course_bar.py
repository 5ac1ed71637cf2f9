"""The line above a battery's course: what lies along its foot, the course as a table, and saving it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from app.outlook.course_frames import DAYS, HOURS
from app.outlook.section_switch import SectionSwitch
from app.theme.wrapping_row import WrappingRow

ALONG = ((HOURS, "By hours lit"), (DAYS, "By calendar"))


class CourseBar(QWidget):
    """Tells what is chosen; does nothing itself."""

    along = Signal(str)  # HOURS or DAYS
    table_wanted = Signal(bool)
    save_wanted = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.switch = SectionSwitch("What lies along the foot", tuple(words for _, words in ALONG), self)
        self.switch.chosen.connect(lambda index: self.along.emit(ALONG[index][0]))
        self.as_table = QPushButton("As a table", self)
        self.as_table.setCheckable(True)
        self.as_table.setAccessibleName("Show the course as a table")
        self.as_table.toggled.connect(self._table_toggled)
        self.save = QPushButton("Save…", self)
        self.save.setAccessibleName("Save the course as a drawing, a picture or rows")
        self.save.setToolTip("Save the course as a drawing (SVG), a picture (PNG) or rows (CSV)")
        self.save.clicked.connect(lambda: self.save_wanted.emit())
        row = WrappingRow(8, at_right=2, parent=self)
        for widget in (self.switch, self.as_table, self.save):
            row.addWidget(widget)

    def _table_toggled(self, on: bool) -> None:
        self.as_table.setText("As a curve" if on else "As a table")
        self.switch.setEnabled(not on)
        self.table_wanted.emit(on)
