"""The battery view: what to expect, and below it the course, other packs, the log, or what counts."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QFileDialog,
    QVBoxLayout,
    QWidget,
)

from app.making import Making
from app.outlook.course_bar import CourseBar
from app.outlook.course_export import FILTERS, SUFFIXES, write_course
from app.outlook.course_table import CourseTable
from app.outlook.curve_view import CurveView
from app.outlook.log_page import LogPage
from app.outlook.no_battery import NoBattery
from app.outlook.other_packs import OtherPacks
from app.outlook.pack_acts import priced, put_in
from app.outlook.section_switch import SectionSwitch
from app.outlook.summary import Summary
from app.outlook.thrown_line import ThrownLine
from app.outlook.upright_area import UprightArea
from app.outlook.what_counts import WhatCounts
from app.proposed_file import proposed_file
from app.session import Session
from app.solving import Answer
from app.theme.box_name import name_box
from app.theme.look import Look
from app.theme.sizes import least_width
from app.theme.wrapping_row import WrappingRow
from wiring.plan.designations import part_label

if TYPE_CHECKING:
    from wiring.studies.compare_packs import Candidate

NONE_YET = (
    "Place a battery from “Feed it” and wire something to it; its outlook then stands here: "
    "how many sessions it lasts, and when to swap it."
)
COURSE, PACKS, LOG, COUNTS = range(4)
SECTIONS = ("Course", "Other packs", "Log", "What counts")


class BatteryPage(QWidget):
    """Shows one battery of the plan at a time."""

    chosen = Signal(str)  # id of the battery that is shown
    told = Signal(str)  # what was done, in one sentence

    def __init__(self, session: Session, look: Look, parent: QWidget, *, at_once: bool = False) -> None:
        super().__init__(parent)
        self._session = session
        self._answer: Answer | None = None
        self.choice = QComboBox(self)
        name_box(self.choice, "Battery")
        least_width(self.choice, 220)
        self.choice.activated.connect(self._choose)
        self.switch = SectionSwitch("What is shown of the battery", SECTIONS, self)
        self.bar = CourseBar(self)
        self.summary = Summary(self)
        self.thrown = ThrownLine(session, self)
        self.curve = CurveView(look, self)
        self.table = CourseTable(self)
        self.packs = OtherPacks(lambda key, typed: priced(session, key, typed), self, at_once=at_once)
        self.packs.wanted.connect(self._put_in)
        self.log = LogPage(session, self)
        self.counts = WhatCounts(look, self, at_once=at_once)
        self._none = NoBattery(look, self)
        self._fill = QWidget(self)  # keeps the words at the top while there is nothing below them
        self.bar.table_wanted.connect(lambda _on: self._show_section())
        self.bar.along.connect(self.curve.show_along)
        self.bar.save_wanted.connect(self._ask_where)
        self.switch.chosen.connect(lambda _index: self._go_to_section())
        head = WrappingRow(12)
        head.addWidget(self.choice)
        head.addWidget(self.switch)
        inside = QWidget(self)
        column = QVBoxLayout(inside)
        column.setContentsMargins(28, 14, 28, 14)
        column.setSpacing(12)
        column.addLayout(head)
        column.addWidget(self.summary)
        column.addWidget(self.thrown)
        column.addWidget(self.bar)
        for widget in (self._none, self.curve, self.table, self.packs, self.log, self.counts, self._fill):
            column.addWidget(widget, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(UprightArea(inside, self))  # a low window has no room for large words
        self._show_chosen()

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

    @property
    def makings(self) -> tuple[Making, ...]:
        """What is worked out beside the window."""
        return self.packs.making, self.counts.making

    def _put_in(self, one: "Candidate") -> None:
        """Let the plan have another pack, and say from when it counts."""
        battery = self.battery
        if put_in(self._session, battery, one, date.today()) and one.outlook is not None:
            label = part_label(self._session.plan, battery)
            self.told.emit(
                f"{label} is now {one.title}, counted as fitted today; its card can give another day."
            )

    def _choose(self) -> None:
        self._show_chosen()
        self.chosen.emit(self.battery)

    def _show_chosen(self) -> None:
        answer = self._answer
        outlook = answer.situation.outlooks.get(self.battery) if answer else None
        waiting = answer is not None and not answer.complete
        self.curve.show_outlook(outlook)
        self.table.show_outlook(outlook)
        self.log.follow(self.battery)
        for late in (self.packs, self.counts):
            late.follow(answer, self.battery)
        if outlook is not None:
            self.summary.show_outlook(outlook)
        else:
            self.summary.say(
                "Working the outlook out…" if waiting else "No battery yet",
                "" if waiting else _none_yet(answer),
            )
        self.thrown.follow(counted=outlook is not None)
        self._show_section()

    def _go_to_section(self) -> None:
        """Show another section; the focus goes with it unless the switch itself has it."""
        focus = QApplication.focusWidget()
        inside = focus is not None and self.isAncestorOf(focus) and not self.switch.isAncestorOf(focus)
        self._show_section()
        if inside:  # what is still being worked out cannot have the keys; they go to its name above
            shown = self.landing.isVisible()
            (self.landing if shown else self.switch.pressed).setFocus()

    @property
    def landing(self) -> QWidget:
        """What the focus goes to."""
        course: QWidget = self.table if self.bar.as_table.isChecked() else self.curve
        below: tuple[QWidget, ...] = (course, self.packs.table, self.log.what, self.counts.table)
        return below[self.switch.index]

    def _show_section(self) -> None:
        outlook = self._answer.situation.outlooks.get(self.battery) if self._answer else None
        there, section = outlook is not None, self.switch.index
        course = there and section == COURSE and outlook is not None and bool(outlook.curve.hours)
        as_table = self.bar.as_table.isChecked()
        self.switch.setVisible(there)
        self.bar.setVisible(course)
        self.curve.setVisible(course and not as_table)
        self.table.setVisible(course and as_table)
        self.packs.setVisible(there and section == PACKS)
        self.log.setVisible(there and section == LOG)
        self.counts.setVisible(there and section == COUNTS)
        none = not there and self._answer is not None and self._answer.complete
        self._none.setVisible(none)
        self._fill.setVisible(not none and (not there or (section == COURSE and not course)))

    def _ask_where(self) -> None:
        """Ask for a name and write the course there."""
        proposed = proposed_file(self._session.path, self._session.plan.title, SUFFIXES[0])
        name, chosen = QFileDialog.getSaveFileName(self, "Save the course", str(proposed), FILTERS)
        if name:
            suffix = next((end for end in SUFFIXES if f"*{end}" in chosen), SUFFIXES[0])
            self.save_course(Path(name) if name.lower().endswith(SUFFIXES) else Path(name + suffix))

    def save_course(self, path: Path) -> None:
        """Write the course to a file and say so, or say why not."""
        outlook = self._answer.situation.outlooks.get(self.battery) if self._answer else None
        if outlook is not None:
            self.told.emit(write_course(path, outlook, self.curve) or f"Written to {path}.")


def _none_yet(answer: Answer | None) -> str:
    """Say what to do to get an outlook, and what feeds the plan instead."""
    feeds = []
    if answer is not None:
        plan, kinds = answer.situation.plan, answer.situation.kinds
        feeds = [p for p in plan.parts if kinds[plan.parts[p].kind].key.startswith("supply")]
    if not feeds:
        return NONE_YET
    names = ", ".join(part_label(plan, part_id) for part_id in feeds[:4])
    return f"The mains feeds this plan, through {names}, and does not run down. {NONE_YET}"
