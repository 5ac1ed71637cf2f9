"""Times choosing in the whole editor: from a choice to the plan and the inspector painted, 5000 parts."""

import itertools
import sys
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path
from statistics import median
from time import perf_counter, thread_time

from PySide6.QtCore import QCoreApplication, QEvent, QObject
from PySide6.QtWidgets import QApplication
from support.editors import close_editor, made_editor

from app.start import Editor
from wiring.plan.plan import Plan

ROUNDS, KINDS = 6, 6  # parts that follow each other in the plan are of six kinds in turn
BAND = 250  # parts, and as many wires, in a rubber band
clock = thread_time if "--cpu" in sys.argv else perf_counter
Ids = tuple[str, ...]


def select_times(plan: Plan) -> dict[str, float]:
    """Return medians in ms by name; `select_ms` is over parts, wires, several and nothing in turn."""
    with tempfile.TemporaryDirectory() as folder:
        editor = made_editor(Path(folder), at_once=False, size=(1600, 1000))
        editor.session.open(plan, None)
        for _ in range(3):
            editor.solving._figures.wait()
            QApplication.processEvents()
        painted = _Painted(editor)
        first = painted.time_of([next(iter(plan.parts))])
        in_turn = [(sort, painted.time_of(ids)) for sort, ids in choices(plan)]
        times = {sort: [ms for s, ms in in_turn if s == sort] for sort in ("part", "wire", "several", "none")}
        many = [painted.time_of(ids) for ids in bands(plan)]
        every = [painted.time_of(ids) for ids in ([*plan.parts, *plan.wires], []) * 3]
        close_editor(editor)
    return {
        "select_first_ms": first,
        "select_part_ms": median(times["part"]),
        "select_wire_ms": median(times["wire"]),
        "select_several_ms": median(times["several"]),
        "select_none_ms": median(times["none"]),
        "select_500_ms": median(many),
        "select_many_ms": median(every[::2]),
        "select_none_after_many_ms": median(every[1::2]),
        "select_ms": median(ms for _, ms in in_turn),
    }


def choices(plan: Plan) -> Iterator[tuple[str, Ids]]:
    """Walk choices no two of which are alike in a row: another kind of part each time."""
    parts, wires = list(plan.parts), list(plan.wires)
    for n in range(ROUNDS * KINDS):
        yield "part", (parts[n + 1],)
        yield "wire", (wires[100 + n],)
        yield "part", (parts[500 + 5 * n],)
        yield "several", (parts[n], parts[n + 1], wires[n])
        yield "wire", (wires[300 + n],)
        yield "several", tuple(parts[n + KINDS * k] for k in range(8))  # of one kind
        yield "none", ()


def bands(plan: Plan) -> Iterator[list[str]]:
    """Walk what rubber bands over 500 things catch."""
    parts, wires = list(plan.parts), list(plan.wires)
    for begin in range(0, 10 * BAND, 2 * BAND):
        yield parts[begin : begin + BAND] + wires[begin : begin + BAND]


class _Painted(QObject):
    """Chooses, and sees to it that both halves of the window really were painted."""

    def __init__(self, editor: Editor) -> None:
        super().__init__()
        self._selection, self._window = editor.selection, editor.window
        self._seen: set[str] = set()
        application = QApplication.instance()
        assert application is not None
        self._watched = {"plan": editor.window.plan_view, "card": editor.window.inspector._area.viewport()}
        for widget in self._watched.values():
            widget.installEventFilter(self)

    def time_of(self, ids: Iterable[str]) -> float:
        """Return the time of one choice, with all that follows it in the window's own event loop."""
        self._seen.clear()
        wanted = frozenset(ids)
        began = clock()
        self._selection.select(wanted)
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        for _ in itertools.takewhile(lambda _: self._seen != {"plan", "card"}, range(3)):
            QApplication.processEvents()
        took = clock() - began
        assert self._seen == {"plan", "card"}, self._seen
        return took * 1000

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Note what is painted."""
        if event.type() == QEvent.Type.Paint:
            self._seen.update(name for name, widget in self._watched.items() if widget is watched)
        return False
