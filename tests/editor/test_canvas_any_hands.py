import random

import pytest
from PySide6.QtCore import Qt
from support.gesture_runs import KINDS, around, bench_plan
from support.hands import Hands
from support.surfaces import CTRL, LEFT, MIDDLE, PLAIN, SHIFT, Desk

from app.window.actions import ACTS
from wiring.edits.panels import add_panel
from wiring.edits.scenes import add_scene
from wiring.plan.soundness import unsound

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


# Acts of the window that open a box of the system, a page of their own, or another plan.
BOXES = {
    *("new", "open", "save", "save_as", "save_pdf", "print", "take_ticks", "quit", "picture"),
    *("export_svg", "export_csv", "export_spice", "export_json", "export_carry"),
    *("look", "keys", "log", "about"),
}
TO_PLAN = ("Tab", "Left", "Down", "Shift+Up", "Return", "Return", "Backspace", "Space", "Esc", "+", "-", "N")
WORDS = ("8", "60mm", "E1", "lamp", "1ft")
SOUGHT = ("fuse", "toggle", "led", "building", "strip", "push")


def at_work(hands, dice, steps):
    """Do this and that with the whole window: keys, words, clicks and drags only."""

    def spot():
        terminals = hands.view.sight().geometry.terminals
        at = terminals.get(dice.choice(terminals.keys())).tolist() if len(terminals) else (100, 100)
        if dice.random() < 0.5 and hands.in_sight(*at):
            return at
        seen = hands.view.sight().visible
        return dice.uniform(seen.left + 1, seen.right - 1), dice.uniform(seen.top + 1, seen.bottom - 1)

    keyed = [a.name for a in ACTS if a.keys and a.name not in BOXES]
    acts = (
        lambda: hands.act(dice.choice(keyed)),
        lambda: hands.key(dice.choice(TO_PLAN)),
        lambda: hands.click(*spot(), keys=dice.choice((PLAIN, PLAIN, SHIFT))),
        lambda: hands.double_click(*spot()),
        lambda: hands.drag(spot(), spot(), keys=dice.choice((PLAIN, PLAIN, CTRL, SHIFT))),
        lambda: hands.word(dice.choice(WORDS)),
        lambda: hands.place(dice.choice(SOUGHT), spot()),
    )
    for _ in range(steps):
        if hands.view.isVisible():
            dice.choice(acts)()
        else:
            hands.act("plan")


@pytest.mark.parametrize("seed", range(2))
def test_whatever_was_done_to_the_window_is_undone_and_redone_by_keys(editor, caplog, seed):
    session, first = editor.session, furnished()
    session.open(first, None)
    hands = Hands(editor)
    hands.view.setFocus()
    hands.act("show_all")
    at_work(hands, random.Random(seed), 50)
    hands.act("plan")
    for _ in range(4):
        hands.key("Esc")
    hands.view.setFocus()
    end = session.plan
    assert unsound(end, KINDS) == ()
    steps = 0
    while session.undo_label is not None and steps < 1000:
        hands.act("undo")
        steps += 1
    assert session.plan is first and steps > 3
    for _ in range(steps):
        hands.act("redo")
    assert session.plan is end and session.redo_label is None
    assert not [r.getMessage() for r in caplog.records if r.levelname == "ERROR"]  # no fault inside was met
