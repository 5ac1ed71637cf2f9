"""Times the whole editor with 5000 parts and 5000 wires as a hand meets it; counts the acts of the quay."""

import itertools
import sys
import tempfile
from pathlib import Path
from statistics import median
from time import perf_counter, thread_time

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QApplication
from support.editors import close_editor, made_editor
from support.quay_walk import Walk, walk_the_quay

from app.canvas.view import PlanView
from app.selection import Selection
from app.session import Session
from app.settings import Remembered
from app.start import Editor
from wiring.catalogue.shelf import builtin_kinds
from wiring.files.store import load, save
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

LEFT, MIDDLE, NONE = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton, Qt.MouseButton.NoButton
PLAIN = Qt.KeyboardModifier.NoModifier
HUB_WIRES = 50
clock = thread_time if "--cpu" in sys.argv else perf_counter


def with_hub(plan: Plan) -> Plan:
    """Return the plan with a block in its middle from which fifty wires lead to lamps around it."""
    parts, wires = dict(plan.parts), dict(plan.wires)
    middle = list(plan.parts.values())[len(parts) // 2]
    hub = Part(
        id="hub",
        kind="distribution-block-12",
        designation="X9999",
        x_mm=middle.x_mm + 30,
        y_mm=middle.y_mm + 30,
    )
    parts[hub.id] = hub
    near = sorted(
        (p for p in plan.parts.values() if p.kind == "led-red"),
        key=lambda p: abs(p.x_mm - hub.x_mm) + abs(p.y_mm - hub.y_mm),
    )
    for n, lamp in enumerate(near[:HUB_WIRES]):
        wires.pop(f"w{n}")
        wires[f"h{n}"] = Wire(
            id=f"h{n}",
            label=f"H{n}",
            start=TerminalRef("hub", str(n % 12 + 1)),
            end=TerminalRef(lamp.id, "A"),
            bends=((hub.x_mm + n, hub.y_mm + 40), (lamp.x_mm, hub.y_mm + 40)),
        )
    return plan.with_changes(parts=parts, wires=wires)


def frame_ms(plan: Plan) -> float:
    """Return the median time of a frame while the plan is pulled and zoomed with the wheel."""
    view = _view(plan)
    centre = QPointF(800, 500)
    times = []
    _mouse(view, QEvent.Type.MouseButtonPress, centre, MIDDLE, MIDDLE)
    for n in range(60):
        times.append(
            _timed(
                view,
                lambda n=n: _mouse(view, QEvent.Type.MouseMove, centre + QPointF(4 * n, n), NONE, MIDDLE),
            )
        )
    _mouse(view, QEvent.Type.MouseButtonRelease, centre, MIDDLE, NONE)
    for turn in [120] * 12 + [-120] * 12 + [120] * 20:
        times.append(_timed(view, lambda turn=turn: _wheel(view, centre, turn)))
    view.close()
    return median(times)


def drag_ms(plan: Plan) -> float:
    """Return the median time of a frame while a block with fifty wires is dragged."""
    view = _view(plan)
    hub = plan.parts["hub"]
    start = QPointF(view.px(hub.x_mm, hub.y_mm))
    _mouse(view, QEvent.Type.MouseButtonPress, start, LEFT, LEFT)
    _mouse(view, QEvent.Type.MouseMove, start + QPointF(9, 0), NONE, LEFT)
    view.repaint()
    assert view._acting.preview.plan is not None and "hub" in view._acting.preview.touched
    steps = itertools.count(10)
    move = lambda: _mouse(view, QEvent.Type.MouseMove, start + QPointF(next(steps), 6), NONE, LEFT)  # noqa: E731
    times = [_timed(view, move) for _ in range(60)]
    view._acting.cancel()
    view.close()
    return median(times)


def open_s(plan: Plan) -> float:
    """Return the seconds from a file on the disk to a painted window, figures still being worked out."""
    application = QApplication.instance()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "large.underboard"
        save(plan, path)
        began = clock()
        editor = Editor(application, Remembered(Path(folder) / "editor.ini"), look="light")
        editor.window.resize(1600, 1000)
        editor.session.open(load(path), path)
        editor.window.show()
        editor.window.plan_view.repaint()
        took = clock() - began
        close_editor(editor)
    return took


def quay_actions() -> int:
    """Return how many acts the quay scene takes from an empty plan to the printed sheets."""
    with tempfile.TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        editor = made_editor(Path(folder), size=(1440, 900))
        walk = Walk(editor)
        walk_the_quay(walk, Path(folder) / "quay.pdf", patch)
        close_editor(editor)
    return len(walk.done)


def _view(plan: Plan) -> PlanView:
    view = PlanView(Session(plan, builtin_kinds()), Selection())
    view.resize(1600, 1000)
    view.show()
    QApplication.processEvents()
    hub = plan.parts["hub"]
    view._look(view._state.camera.__class__(0.5, hub.x_mm - 1600, hub.y_mm - 1000))
    view._burst.stop()  # the hand rests: this frame is sharp
    view.repaint()
    return view


def _timed(view: PlanView, act) -> float:
    began = clock()
    act()
    view.repaint()
    return (clock() - began) * 1000


def _mouse(view, kind, place, button, buttons) -> None:
    QApplication.sendEvent(view, QMouseEvent(kind, place, place, button, buttons, PLAIN))


def _wheel(view, place, turned) -> None:
    phase = Qt.ScrollPhase.NoScrollPhase
    event = QWheelEvent(place, place, QPoint(), QPoint(0, turned), NONE, PLAIN, phase, False)
    QApplication.sendEvent(view, event)
