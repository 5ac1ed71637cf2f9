"""What more there is to say of a scene's use: never off, the months it rests, how its battery is charged."""

import calendar
from collections.abc import Callable

import msgspec
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QGridLayout, QPushButton, QToolButton, QVBoxLayout, QWidget

from app.inspector.value_field import ValueField
from wiring.plan.scene import UsePattern

MONTHS = tuple(calendar.month_name)[1:]
IN_A_ROW = 6
ALL_YEAR = "All year round"
ALWAYS = "Always on, never switched off"
ALWAYS_HOURS, ALWAYS_SESSIONS = 24.0, 31.0  # what the plan says of a scene that is never off


class UseDetails(QWidget):
    """One quiet line that says it; a click unfolds twelve small toggles and the charging."""

    def __init__(self, where: str, apply: Callable[[UsePattern], str], parent: QWidget) -> None:
        super().__init__(parent)
        self._apply = apply
        self._use = UsePattern()
        self.line = QPushButton(self)
        self.line.setProperty("look", "small")
        self.line.setCheckable(True)
        self.line.setToolTip("Never switched off, months without sessions, and charging")
        self.line.setAccessibleName(f"Months and charging, {where}")
        self._inner = QWidget(self)
        self._inner.hide()
        self.line.toggled.connect(self._inner.setVisible)
        self._before = UsePattern()  # what it goes back to when it is no longer always on
        self.always = QCheckBox("Always on", self._inner)
        self.always.setAccessibleName(f"Always on, {where}")
        self.always.setToolTip(
            "For what no switch puts out: a flasher, a module that draws a little day and night. "
            "Give it a scene of its own and put the part into it on the part’s card."
        )
        self.always.clicked.connect(self._always_chosen)
        self.months: dict[int, QToolButton] = {}
        grid = QGridLayout()
        grid.setSpacing(2)
        for number, name in enumerate(MONTHS, start=1):
            button = QToolButton(self._inner)
            button.setText(name[:3])
            button.setCheckable(True)
            button.setProperty("look", "month")
            button.setToolTip(f"Sessions in {name}")
            button.setAccessibleName(f"Sessions in {name}")
            button.clicked.connect(self._months_chosen)
            grid.addWidget(button, (number - 1) // IN_A_ROW, (number - 1) % IN_A_ROW)
            self.months[number] = button
        self.charged = ValueField("Charged after", "count", self._charged_typed, self, may_be_empty=True)
        self.charged.setToolTip("After how many sessions a rechargeable battery is charged")
        inner = QVBoxLayout(self._inner)
        inner.setContentsMargins(0, 0, 0, 4)
        inner.setSpacing(5)
        inner.addWidget(self.always)
        inner.addLayout(grid)
        inner.addWidget(self.charged)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.line, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self._inner)

    def fold(self) -> None:
        """Be as first made: folded, with no use to go back to."""
        self.line.setChecked(False)
        self._before = UsePattern()

    def show_use(self, use: UsePattern) -> None:
        """Show how it is used."""
        self._use = use
        self.line.setText(use_words(use))
        always = is_always_on(use)
        self.always.setChecked(always)
        for number, button in self.months.items():
            button.setChecked(number not in use.months_off)
            button.setEnabled(not always)
        every = use.sessions_per_charge
        self.charged.show_value(every or None, "when empty")

    def _always_chosen(self, on: bool) -> None:
        if on:
            self._before = self._use
            wanted = UsePattern(ALWAYS_HOURS, ALWAYS_SESSIONS)
        else:
            wanted = UsePattern() if is_always_on(self._before) else self._before
        every = self._use.sessions_per_charge
        self._apply(msgspec.structs.replace(wanted, sessions_per_charge=every))

    def _months_chosen(self) -> None:
        off = tuple(number for number, button in self.months.items() if not button.isChecked())
        self._apply(msgspec.structs.replace(self._use, months_off=off))
        self.show_use(self._use)

    def _charged_typed(self, sessions: float | None) -> str:
        return self._apply(msgspec.structs.replace(self._use, sessions_per_charge=int(sessions or 0)))


def is_always_on(use: UsePattern) -> bool:
    """Whether it is never switched off."""
    return (
        use.hours_per_session >= ALWAYS_HOURS
        and use.sessions_per_month >= ALWAYS_SESSIONS
        and not use.months_off
    )


def use_words(use: UsePattern) -> str:
    """Return the months and the charging in a few words."""
    off = sorted(set(use.months_off))
    if is_always_on(use):
        words = ALWAYS
    elif not off:
        words = ALL_YEAR
    elif len(off) <= IN_A_ROW:
        words = "Not in " + ", ".join(MONTHS[n - 1][:3] for n in off)
    else:
        there = [n for n in range(1, 13) if n not in off]
        words = "Only in " + ", ".join(MONTHS[n - 1][:3] for n in there) if there else "In no month"
    every = use.sessions_per_charge
    return f"{words}; charged after {every}" if every else words
