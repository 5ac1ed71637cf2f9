"""The battery's log: fitted, swapped, charged, measured; a new entry in one line, the entries below it."""

from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import QDate, QLocale, Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDateEdit,
    QHeaderView,
    QLabel,
    QPushButton,
    QSizePolicy,
    QSpacerItem,
    QTableWidget,
    QTableWidgetItem,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.inspector.committing import committed
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ValueField
from app.outlook.breaking_line import BreakingLine
from app.session import PlanChanged, Session
from app.theme.box_name import name_box
from app.theme.icons import icon
from app.theme.sizes import fix_width, section_width
from wiring.edits.log_battery import log_battery, strike_reading
from wiring.plan.battery_log import CHARGED, FITTED, MEASURED, SWAPPED, BatteryReading
from wiring.quantities.wording import worded

if TYPE_CHECKING:
    from wiring.plan.plan import Plan

EVENTS = (
    (MEASURED, "Measured"),
    (FITTED, "Fitted for the first time"),
    (SWAPPED, "Swapped for fresh cells"),
    (CHARGED, "Charged full"),
)
LOADS = (("lit", "with everything lit"), ("rest", "with nothing on for hours"))
HEADS = ("Day", "What was done", "Read", "Note", "")
DAY, WHAT, READ, NOTE, STRIKE = range(len(HEADS))
STRIKE_WIDTH = 40
WORDS = (
    "Note when its cells were fitted, swapped or charged, and what a meter reads now and then. "
    "The forecast starts from the latest entry."
)
DATE_FORMAT = "yyyy-MM-dd"


class LogPage(QWidget):
    """Follows the plan; each entry is one step that can be undone."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self._battery = ""
        self._volts_v: float | None = None
        self._shown: tuple[BatteryReading, ...] | None = None
        words = QLabel(WORDS, self)
        words.setProperty("look", "quiet")
        words.setWordWrap(True)
        self.what = _box(EVENTS, "What was done", self)
        self.what.activated.connect(self._event_chosen)
        self.day = QDateEdit(self)
        self.day.setAccessibleName("Day")
        self.day.setCalendarPopup(True)
        self.day.setDisplayFormat(DATE_FORMAT)
        self.day.setLocale(QLocale.c())
        self.day.setDate(_today())
        self.volts = ValueField(
            "Volts read", "voltage", self._volts_typed, self, may_be_empty=True, bare=True
        )
        self.volts.line.setPlaceholderText("volts read")
        self.volts.line.setObjectName("logVolts")
        self.volts.line.returnPressed.connect(self.add)
        fix_width(self.volts, 96)
        self.load = _box(LOADS, "What was on while it was measured", self)
        self.note = TypedField("Note", lambda _typed: "", self, hint="note", bare=True)
        self.note.line.returnPressed.connect(self.add)
        self._add = QPushButton("Add to the log", self)
        self._add.setAccessibleName("Add to the log")
        self._add.clicked.connect(self.add)
        self._fault = QLabel(self)
        self._fault.setProperty("look", "wrong")
        self._fault.setTextFormat(Qt.TextFormat.PlainText)
        self._fault.setWordWrap(True)
        self._fault.hide()
        self.volts.faulted.connect(self._show_fault)
        self.table = _table(self)
        line = BreakingLine(
            (self.what, self.day, self.volts), (self.load, self.note, self._add), self.note, self
        )
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(words)
        column.addWidget(line)
        column.addWidget(self._fault)
        column.addWidget(self.table, 1)
        column.addItem(QSpacerItem(0, 0, vData=QSizePolicy.Policy.Expanding))  # while there is no table
        session.changed.connect(self._plan_changed)

    def follow(self, battery: str) -> None:
        """Show the log of a battery as it is now."""
        plan = self._session.plan
        entries = entries_of(plan, battery)
        other = battery != self._battery
        self._battery = battery
        if other or entries != self._shown:
            self._shown = entries
            self._fill(entries)
        self.day.setMaximumDate(_today())
        if other:
            self.day.setDate(_today())
            self._clear()

    def add(self) -> None:
        """Put what the line says into the log."""
        self.volts.commit_now()
        event = str(self.what.currentData())
        measured = event == MEASURED
        if measured and self.volts.fault:
            return
        if measured and self._volts_v is None:
            self._show_fault("Type the volts the meter read, then add the entry.")
            self.volts.line.setFocus()
            return
        edit = log_battery(
            self._battery,
            event,
            date(*_parts(self.day.date())),
            self._volts_v or 0.0 if measured else 0.0,
            under_load=self.load.currentData() == LOADS[0][0],
            note=self.note.line.text().strip(),
        )
        fault = committed(self._session, edit)
        self._show_fault(fault)
        if not fault:
            self._clear()

    def _clear(self) -> None:
        self._volts_v = None
        for field in (self.volts, self.note):
            field.line.clear()
            field.line.setModified(False)
            field.show_fault("")
        self._show_fault("")

    def _plan_changed(self, change: PlanChanged) -> None:
        if change.cause == "open":
            self._clear()
        self.follow(self._battery)

    def _volts_typed(self, value: float | None) -> str:
        self._volts_v = value
        return ""

    def _event_chosen(self) -> None:
        measured = self.what.currentData() == MEASURED
        self.volts.setEnabled(measured)
        self.load.setEnabled(measured)

    def _show_fault(self, sentence: str) -> None:
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))

    def _fill(self, entries: tuple[BatteryReading, ...]) -> None:
        self.table.setRowCount(0)
        self.table.setRowCount(len(entries))
        self.table.setVisible(bool(entries))
        for row, entry in enumerate(entries):
            for column, text in enumerate(
                (entry.day, dict(EVENTS)[entry.event], read_words(entry), entry.note)
            ):
                self.table.setItem(row, column, QTableWidgetItem(text))
            strike = QToolButton(self.table)
            strike.setIcon(icon("close"))
            strike.setProperty("look", "small")
            strike.setToolTip("Strike this entry out")
            strike.setAccessibleName(f"Strike out the entry of {entry.day}")
            # Striking an entry deletes this very button, so the click must be over first.
            strike.clicked.connect(lambda _on=False, entry=entry: self._session.do(strike_reading(entry)))
            self.table.setCellWidget(row, STRIKE, strike)


def entries_of(plan: "Plan", battery: str) -> tuple[BatteryReading, ...]:
    """Return what the log says of a battery, the latest first."""
    return tuple(reversed([e for e in plan.battery_log if e.battery == battery]))


def read_words(entry: BatteryReading) -> str:
    """Return what was read, "" when nothing was."""
    if entry.event != MEASURED:
        return ""
    return f"{worded(entry.volts_v, 'voltage')} {dict(LOADS)['lit' if entry.under_load else 'rest']}"


def _today() -> QDate:
    today = date.today()
    return QDate(today.year, today.month, today.day)


def _parts(day: QDate) -> tuple[int, int, int]:
    return day.year(), day.month(), day.day()


def _box(options: tuple[tuple[str, str], ...], name: str, parent: QWidget) -> QComboBox:
    box = QComboBox(parent)
    name_box(box, name)
    for value, words in options:
        box.addItem(words, value)
    return box


def _table(parent: QWidget) -> QTableWidget:
    table = QTableWidget(0, len(HEADS), parent)
    table.setAccessibleName("Log of the battery")
    table.setHorizontalHeaderLabels(list(HEADS))
    table.verticalHeader().hide()
    table.setShowGrid(False)
    table.setTabKeyNavigation(False)
    table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
    table.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
    header = table.horizontalHeader()
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
    header.setHighlightSections(False)
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setSectionResizeMode(NOTE, QHeaderView.ResizeMode.Stretch)
    header.setSectionResizeMode(STRIKE, QHeaderView.ResizeMode.Fixed)
    section_width(header, STRIKE, STRIKE_WIDTH)
    return table
