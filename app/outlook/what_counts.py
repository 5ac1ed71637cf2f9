"""What each assumption changes in the forecast, largest change first."""

from datetime import date

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHeaderView, QWidget

from app.outlook.change_bars import CHANGE, ChangeBars
from app.outlook.late_table import LateTable
from app.solving import Answer
from app.theme.look import Look
from app.theme.words import scaled
from wiring.plan.positions import lasting

HEADS = ("If this were so", "Sessions", "Lasts", "Longer or shorter by")
CHANGED, CHANGED_WIDTH, NARROW_WIDTH = 3, 300, 150
ROOM_FOR_BARS = 540
NOTHING = "There is no forecast to ask about: its cell type is not in the list, or nothing hangs on it."
SAID = "One thing at a time is changed; all the rest stays as in the plan."
LEAST_SHARE = 0.005  # a smaller change is none


class WhatCounts(LateTable):
    """One row an assumption."""

    def __init__(self, look: Look, parent: QWidget, *, at_once: bool = False) -> None:
        super().__init__("What counts in the forecast", HEADS, _asked_otherwise, parent, at_once=at_once)
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(CHANGED, QHeaderView.ResizeMode.Fixed)
        header.resizeSection(CHANGED, CHANGED_WIDTH)
        self.table.setItemDelegateForColumn(CHANGED, ChangeBars(look, self.table))
        self.heads_right((1, 2, 3))
        self.table.setWordWrap(False)
        self.found.connect(self._show_effects)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Shorten the bars before the names."""
        super().resizeEvent(event)
        roomy = self.width() >= scaled(ROOM_FOR_BARS)
        width = max(CHANGED_WIDTH, scaled(NARROW_WIDTH)) if roomy else scaled(NARROW_WIDTH)
        self.table.horizontalHeader().resizeSection(CHANGED, width)

    def _show_effects(self, found: object) -> None:
        """Show the effects in their order."""
        assert isinstance(found, tuple)
        from wiring.studies.time_words import time_words

        self.words.setText(SAID if found else NOTHING)
        self.table.setVisible(bool(found))
        self.table.setRowCount(len(found))
        for row, effect in enumerate(found):
            name = effect.assumption[:1].upper() + effect.assumption[1:]
            self.put(row, 0, name, strong=row == 0)
            self.put(row, 1, f"{effect.sessions:.0f}", right=True)
            self.put(row, 2, time_words(effect.days), right=True)
            changed = self.put(row, CHANGED, "" if row == 0 else change_words(effect.change), right=True)
            if row > 0:
                changed.setData(CHANGE, effect.change)


def change_words(change: float) -> str:
    """Return a share of the days as words with a sign."""
    if abs(change) < LEAST_SHARE:
        return "no change"
    return f"{'+' if change > 0 else '−'}{abs(change):.0%}"


def _asked_otherwise(answer: Answer, battery: str, today: date) -> object:
    from wiring.studies.sensitivity import sensitivities

    plan, kinds = answer.situation.plan, answer.situation.kinds
    return sensitivities(plan, kinds, lasting(plan, kinds, answer.situation.positions), battery, today)
