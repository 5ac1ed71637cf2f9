"""Times a live look at 150 parts: from a click on a switch, or an edit, to everything painted anew.

The plan is a cut of the whole-layout demo. One switch is clicked with real mouse events in the whole editor,
with the figures at the pointer and a lamp's card shown; an edit gives a wire another size. Everything means
lamps and wires, flags, the figures at the pointer, the inspector's card and the strip of findings. The clock
begins when the button comes up, for that is what throws the switch: a hand has pressed it a tenth of a second
before, and what the press shows is painted by then.
"""

import sys
import tempfile
from collections import deque
from pathlib import Path
from statistics import median
from time import perf_counter, process_time, thread_time

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QObject, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editors import DEMOS, close_editor, made_editor

from app.start import Editor
from wiring.catalogue.shelf import builtin_kinds
from wiring.edits.set_wire import set_wire
from wiring.files.store import load
from wiring.plan.plan import Plan

PARTS, ROUNDS = 150, 21
LATEST_SEC = 10.0
lit_clock = thread_time if "--cpu" in sys.argv else perf_counter  # of this thread, the worker waits
clock = process_time if "--cpu" in sys.argv else perf_counter


def cut(plan: Plan, count: int) -> Plan:
    """Return the plan with the parts that lie nearest to its supplies along the wires."""
    kinds = builtin_kinds()
    beside: dict[str, list[str]] = {}
    for wire in plan.wires.values():
        beside.setdefault(wire.start.part, []).append(wire.end.part)
        beside.setdefault(wire.end.part, []).append(wire.start.part)
    kept = dict.fromkeys(p.id for p in plan.parts.values() if kinds[p.kind].purpose == "feed")
    waiting = deque(kept)
    while waiting:
        for one in beside.get(waiting.popleft(), ()):
            if one not in kept and len(kept) < count:
                kept[one] = None
                waiting.append(one)
    return plan.with_changes(
        parts={i: p for i, p in plan.parts.items() if i in kept},
        wires={i: w for i, w in plan.wires.items() if w.start.part in kept and w.end.part in kept},
        wireways=plan.wireways,
    )


def refresh_times() -> dict[str, float]:
    """Return medians in ms by name: all of it, and lamps and wires alone, in one thread and in two."""
    plan = cut(load(DEMOS / "harbour.underboard"), PARTS)
    times: dict[str, float] = {"refresh_parts": len(plan.parts), "refresh_wires": len(plan.wires)}
    for words, at_once in (("", False), ("_one_thread", True)):
        with tempfile.TemporaryDirectory() as folder:
            editor = made_editor(Path(folder), at_once=at_once, size=(1600, 1000))
            editor.session.open(plan, None)
            live = _Live(editor)
            throws = [live.throw() for _ in range(ROUNDS)]
            edits = [live.edit(n) for n in range(ROUNDS)]
            close_editor(editor)
        times[f"light_150{words}_ms"] = median(light for light, _ in throws)
        times[f"refresh_150{words}_ms"] = median(every for _, every in throws)
        times[f"edit_light_150{words}_ms"] = median(light for light, _ in edits)
        times[f"edit_refresh_150{words}_ms"] = median(every for _, every in edits)
    return times


class _Live(QObject):
    """Clicks and edits, and sees to it that new figures and findings really were painted."""

    def __init__(self, editor: Editor) -> None:
        super().__init__()
        self._editor, self._view = editor, editor.window.plan_view
        self._settle()
        plan, kinds = editor.session.plan, editor.session.kinds
        lamps = [p.id for p in plan.parts.values() if kinds[p.kind].purpose == "light"]
        self._switch = max(
            (i for i in editor.session.positions if self._stands(i) == {"off", "on"}),
            key=lambda i: self._put_out(i, lamps),
        )
        self._wire = next(w.id for w in plan.wires.values() if w.end.part in lamps)
        editor.session.stand_as_in_use()
        editor.selection.select(lamps[:1])
        self._settle()
        self._painted_with: object = None
        self._view.installEventFilter(self)

    def throw(self) -> tuple[float, float]:
        """Click the switch; return ms until lamps and wires are painted, and until everything is."""
        part = self._editor.session.plan.parts[self._switch]
        place = self._view.px(part.x_mm, part.y_mm)
        left, plain = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
        QTest.mouseMove(self._view, place)
        before = self._editor.session.positions[self._switch]
        QTest.mousePress(self._view, left, plain, place)
        self._settle()
        times = self._time(lambda: QTest.mouseRelease(self._view, left, plain, place))
        assert self._editor.session.positions[self._switch] != before
        return times

    def edit(self, n: int) -> tuple[float, float]:
        """Give a wire another size; return ms as for a throw."""
        size = "1.0 mm²" if n % 2 else "18 AWG"
        return self._time(lambda: self._editor.session.do(set_wire([self._wire], size=size)))

    def _time(self, act) -> tuple[float, float]:
        old, solving = self._editor.solving.answer, self._editor.solving
        dark = self._view.sight().figures
        light, late = None, perf_counter() + LATEST_SEC
        began, began_lit = clock(), lit_clock()
        act()
        while True:
            assert perf_counter() < late, "no new figures were painted"
            QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
            answer = solving.answer
            if light is None and self._painted_with is not dark:
                light = (lit_clock() - began_lit) * 1000
            if light is not None and answer is not old and self._shows(answer):
                QCoreApplication.processEvents()
                every = (clock() - began) * 1000
                break
        self._settle()
        return light, every

    def _shows(self, answer) -> bool:
        """Return whether flags and strip have what the answer has found."""
        strip = self._editor.window.strip.model.rowCount() == len(answer.situation.findings)
        return (
            strip
            and self._painted_with is answer.situation.figures
            and self._flags_of is self._view._state.worst
        )

    def _stands(self, part: str) -> set[str]:
        plan, kinds = self._editor.session.plan, self._editor.session.kinds
        return {p.name for p in kinds[plan.parts[part].kind].positions}

    def _put_out(self, switch: str, lamps: list[str]) -> int:
        from wiring.circuit.solve import solve

        session = self._editor.session
        on, off = (
            solve(session.plan, session.kinds, session.positions | {switch: stand}) for stand in ("on", "off")
        )
        return sum(abs((on.parts[i].light or 0) - (off.parts[i].light or 0)) > 0.01 for i in lamps)

    def _settle(self) -> None:
        for _ in range(3):
            solving = self._editor.solving
            for lane in (solving._figures, solving._outlooks, solving._foresight):
                lane.wait()
            QApplication.processEvents()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Note with which figures and flags the plan is painted."""
        if event.type() == QEvent.Type.Paint:
            self._painted_with = self._view.sight().figures
            self._flags_of = self._view._state.worst
        return False
