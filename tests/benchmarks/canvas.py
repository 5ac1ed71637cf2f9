"""Times the drawing surface with 500 and 5000 parts and as many wires; prints one `name = number` a line.

Run it as `python tests/benchmarks/canvas.py`. All times are milliseconds, medians, on a surface of 1600 by
1000 pixels without a screen: `frame` when nothing but the pointer has moved, `rerender` when all that stands
still is painted anew (whole plan in sight, about 550 parts, about 40), `drag` and `hover` for one pointer
event with its frame, `edit` for moving one part with everything that follows it on the surface. With `--cpu`
processor time is counted instead of time by the clock, for machines that are busy with other things.

The last lines are about the whole editor with 5000 parts and 5000 wires: a frame while pulling and
zooming, the worst and the 95th percentile of all frames of a walk with every turn of the event loop, a frame
while a part with fifty wires is dragged, from the file to a painted window, from a choice to the painted
plan and inspector, and how many acts of the hand the quay scene takes from an empty plan to its sheets.
Choices are timed apart too: the very first, then a part, a wire, a few things and nothing in turn
(`select_ms` is the median of all of these), 500 things, all there is, and nothing after all.
`light_150_ms` and `refresh_150_ms` are from a click on a switch to lamps and wires painted and to everything
painted (see refreshing.py); `_one_thread` is the same without a thread beside the window, as tests have it.
"""

import itertools
import os
import sys
from functools import partial
from pathlib import Path
from statistics import median
from time import perf_counter, process_time

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[2]))

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication

from app.canvas.camera import Camera
from app.canvas.view import PlanView
from app.selection import Selection
from app.session import Session
from tests.benchmarks.frames_on_the_way import walk_ms
from tests.benchmarks.refreshing import refresh_times
from tests.benchmarks.selecting import select_times
from tests.benchmarks.whole_editor import drag_ms, frame_ms, open_s, quay_actions, with_hub
from wiring.catalogue.shelf import builtin_kinds
from wiring.edits.move import move
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

PITCH_MM = 60.0
COLOURS = ("RD", "BK", "BU", "YE", "WH", "GN", "OG", "BN", "GNWH", "GY")
LAMPS = ("led-warm-white", "lamp-12v", "building-led", "led-red", "toggle-on-off", "terminal-strip-4")
RUNS = 9
clock = process_time if "--cpu" in sys.argv else perf_counter


def street(count: int) -> Plan:
    """Return parts in rows, each wired to the next over two bends."""
    kinds, across = builtin_kinds(), round(count**0.5 * 1.3)
    parts, wires = {}, {}
    for i in range(count):
        key = LAMPS[i % len(LAMPS)]
        parts[f"p{i}"] = Part(
            id=f"p{i}",
            kind=key,
            designation=f"E{i}",
            x_mm=i % across * PITCH_MM,
            y_mm=i // across * PITCH_MM,
            turn_deg=90.0 * (i // across % 2),
        )
    for i in range(count - 1):
        a, b = parts[f"p{i}"], parts[f"p{i + 1}"]
        middle = (a.y_mm + b.y_mm) / 2 + 21 + i % 3 * 3
        wires[f"w{i}"] = Wire(
            id=f"w{i}",
            label=f"W{i}",
            start=TerminalRef(a.id, kinds[a.kind].terminals[-1].name),
            end=TerminalRef(b.id, kinds[b.kind].terminals[0].name),
            colour=COLOURS[i % len(COLOURS)],
            bends=((a.x_mm, middle), (b.x_mm, middle)),
        )
    return Plan(parts=parts, wires=wires, next_number=10 * count)


def ms(act) -> float:
    """Return the median time of an act."""
    times = []
    for _ in range(RUNS):
        began = clock()
        act()
        times.append((clock() - began) * 1000)
    return median(times)


def pointer(view, kind, place, buttons=Qt.MouseButton.NoButton) -> None:
    button = Qt.MouseButton.LeftButton if kind != QEvent.Type.MouseMove else Qt.MouseButton.NoButton
    QApplication.sendEvent(
        view, QMouseEvent(kind, place, place, button, buttons, Qt.KeyboardModifier.NoModifier)
    )
    view.repaint()


def measure(count: int) -> None:
    """Print the times for a plan of that many parts."""
    session = Session(street(count), builtin_kinds())
    began = clock()
    view = PlanView(session, Selection())
    print(f"build_{count}_ms = {(clock() - began) * 1000:.1f}")
    view.resize(1600, 1000)
    view.show()
    QApplication.processEvents()
    for name, shown in (("out", count), ("mid", 550), ("in", 40)):
        scale = (1600 * 1000 / (min(shown, count) * PITCH_MM**2)) ** 0.5
        if name == "out":
            view.show_all()
        else:
            x, y = session.plan.parts[f"p{count // 2 + round(count**0.5 * 0.6)}"].x_mm, 20 * PITCH_MM
            view._look(Camera(scale, x - 800 / scale, y - 500 / scale))
        settle(view)
        print(f"frame_{name}_{count}_ms = {ms(view.repaint):.2f}")
        print(f"rerender_{name}_{count}_ms = {ms(lambda: anew(view)):.1f}")
        print(f"hover_{name}_{count}_ms = {ms(partial(hover, view, itertools.count(500))):.2f}")
        drag(view, session, name, count)
    edit = move(["p7"], 5, 0)
    print(f"edit_{count}_ms = {ms(lambda: (session.do(edit), view.repaint())):.1f}")
    view.close()


def settle(view) -> None:
    view._burst.stop()
    anew(view)


def anew(view) -> None:
    view._state._told += 1  # as an answer or another theme does; nothing else is worked out
    view.repaint()


def hover(view, steps) -> None:
    pointer(view, QEvent.Type.MouseMove, QPointF(next(steps), 400))


def drag(view, session, name, count) -> None:
    seen = view.sight().visible
    x, y = (seen.left + seen.right) / 2, (seen.top + seen.bottom) / 2
    part = min(session.plan.parts.values(), key=lambda p: abs(p.x_mm - x) + abs(p.y_mm - y))
    start = QPointF(view.px(part.x_mm, part.y_mm))
    left = Qt.MouseButton.LeftButton
    pointer(view, QEvent.Type.MouseButtonPress, start, left)
    pointer(view, QEvent.Type.MouseMove, start + QPointF(20, 0), left)
    steps = iter(range(10_000))
    spot = lambda: start + QPointF(20 + next(steps), 7)  # noqa: E731
    print(f"drag_{name}_{count}_ms = {ms(lambda: pointer(view, QEvent.Type.MouseMove, spot(), left)):.2f}")
    view._acting.cancel()


def main() -> None:
    app = QApplication.instance() or QApplication([])
    for count in (500, 5000):
        measure(count)
    plan = with_hub(street(5000))
    print(f"frame_ms_5000 = {frame_ms(plan):.1f}")
    worst_ms, p95_ms = walk_ms(plan)
    print(f"frame_worst_ms_5000 = {worst_ms:.1f}")
    print(f"frame_p95_ms_5000 = {p95_ms:.1f}")
    print(f"drag_ms = {drag_ms(plan):.1f}")
    print(f"open_s = {open_s(plan):.2f}")
    for name, took in select_times(plan).items():
        print(f"{name} = {took:.1f}")
    for name, took in refresh_times().items():
        print(f"{name} = {took:.1f}")
    print(f"quay_actions = {quay_actions()}")
    del app


if __name__ == "__main__":
    main()
