import random

import pytest
from PySide6.QtCore import Qt
from support.gesture_runs import around, bench_plan
from support.surfaces import CTRL, LEFT, MIDDLE, PLAIN, SHIFT, Desk

from wiring.edits.panels import add_panel
from wiring.edits.scenes import add_scene

K = Qt.Key
KEYS = (
    *(K.Key_R, K.Key_T, K.Key_Space, K.Key_Delete, K.Key_Backspace, K.Key_Return, K.Key_Escape, K.Key_Tab),
    *(K.Key_Left, K.Key_Down, K.Key_Plus, K.Key_Minus, K.Key_Home),
)
WITH_CTRL = (K.Key_A, K.Key_D, K.Key_C, K.Key_V)


def furnished():
    plan = add_scene("Fish quay", 200, 20, 200, 160).apply(bench_plan())
    return add_panel("Quay panel", 200, 220, 200, 160).apply(plan)


def busy(desk, dice, steps):
    """Do this and that, without rhyme or reason."""
    view = desk.view
    tools = (
        view.begin_wire,
        view.begin_select,
        lambda: view.begin_place(dice.choice(["led-red", "toggle-on-off", "led-strip-warm-white"])),
        lambda: view.begin_draw(dice.choice(["scene", "panel", "board", "track"])),
    )

    def spot():
        terminals = view.sight().geometry.terminals
        if len(terminals) and dice.random() < 0.4:
            return terminals.get(dice.choice(terminals.keys())).tolist()
        return dice.uniform(-100, 700), dice.uniform(-50, 500)

    acts = (
        lambda: desk.click(*spot(), keys=dice.choice((PLAIN, PLAIN, SHIFT))),
        lambda: desk.drag(spot(), spot(), keys=dice.choice((PLAIN, PLAIN, CTRL, SHIFT))),
        lambda: desk.drag(spot(), spot(), button=MIDDLE),
        lambda: desk.press(*spot()),
        lambda: desk.move(*spot()),
        lambda: desk.release(*spot(), button=LEFT),
        lambda: desk.key(dice.choice(KEYS), dice.choice((PLAIN, SHIFT))),
        lambda: desk.key(dice.choice(WITH_CTRL), CTRL) if len(desk.plan.parts) < 60 else None,
        lambda: dice.choice(tools)(),
        lambda: desk.session.undo() if dice.random() < 0.5 else desk.session.redo(),
        view.repaint,
    )
    for _ in range(steps):
        dice.choice(acts)()


@pytest.mark.parametrize("seed", range(6))
def test_whatever_hands_do_the_plan_stays_whole_and_undo_leads_back(qtbot, seed):
    first = furnished()
    desk = Desk(qtbot, plan=first)
    busy(desk, random.Random(seed), 150)
    desk.key(K.Key_Escape)
    desk.key(K.Key_Escape)
    plan = desk.plan
    assert all(ref.part in plan.parts for w in plan.wires.values() for ref in (w.start, w.end))
    kept, anew = desk.view.sight().geometry, around(plan).geometry
    assert set(kept.paths) == set(anew.paths)
    assert all(kept.paths[w] == anew.paths[w] for w in anew.paths)
    assert set(kept.terminals.keys()) == set(anew.terminals.keys())
    while desk.session.undo_label is not None:
        desk.session.undo()
    assert desk.plan is first
