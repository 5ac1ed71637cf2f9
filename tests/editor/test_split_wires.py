"""Wires are split at terminal strips, plugs and blocks, and parts set down on a wire are put into it."""

import pytest
from support.gesture_runs import KINDS
from support.surfaces import CTRL, Desk

from app.canvas.rerouting import route
from wiring.circuit.solve import solve
from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.lead_over import lead_over
from wiring.edits.place_part import place
from wiring.edits.wireways import add_wireway
from wiring.plan.lengths import wire_path
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.plan.soundness import unsound


def lamp_plan(*more) -> Plan:
    plan = Plan()
    for edit in (
        place(KINDS["supply-regulated"], 80, 300),
        place(KINDS["lamp-12v"], 560, 100),
        connect(TerminalRef("p1", "+"), TerminalRef("p2", "1"), colour="RD", bends=[(200, 200), (400, 200)]),
        connect(TerminalRef("p1", "-"), TerminalRef("p2", "2"), bends=[(200, 230), (400, 230)]),
        *more,
    ):
        plan = edit.apply(plan)
    return plan


@pytest.fixture
def desk(qtbot):
    more = place(KINDS["plug-2"], 300, 420), place(KINDS["distribution-block-6"], 300, 500)
    return Desk(qtbot, lamp_plan(*more))


def entries(desk, x, y) -> dict:
    hit = desk.view._hit(desk.px(x, y).x(), desk.px(x, y).y())
    menu = desk.view.menu_for(hit, desk.px(x, y))
    desk.kept = menu
    return {inner.text(): inner for a in menu.actions() if a.menu() for inner in a.menu().actions()}


def lit(plan) -> bool:
    return abs(solve(plan, KINDS, in_use(plan, KINDS)).parts["p2"].current_a) > 1e-3


def test_a_wire_is_split_at_a_new_strip_where_the_menu_was_asked_for(desk):
    desk.click(300, 200)
    entries(desk, 300, 200)["a new terminal strip here"].trigger()
    strip = list(desk.plan.parts.values())[-1]
    assert strip.kind == "terminal-strip-4" and (strip.x_mm, strip.y_mm) == (300, 200)
    assert len(desk.plan.wires) == 3 and lit(desk.plan) and unsound(desk.plan, KINDS) == ()
    assert desk.session.undo_label == "Split wire"
    desk.session.undo()
    assert len(desk.plan.wires) == 2


def test_the_way_that_was_drawn_stays_and_its_corner_meets_the_terminal_of_the_strip(qtbot):
    plan = Plan()
    for edit in (
        place(KINDS["supply-regulated"], 80, 500),
        place(KINDS["lamp-12v"], 560, 140),
        connect(TerminalRef("p1", "+"), TerminalRef("p2", "1"), bends=[(120, 440), (300, 440), (300, 140)]),
    ):
        plan = edit.apply(plan)
    desk = Desk(qtbot, plan)
    desk.click(300, 300)
    entries(desk, 300, 300)["a new terminal strip here"].trigger()
    near, far = desk.plan.wires.values()
    strip = near.end.part
    assert near.bends == ((120, 440), (desk.terminal(strip, near.end.terminal)[0], 440))
    assert far.bends == ((desk.terminal(strip, far.start.terminal)[0], 140),)
    assert unsound(desk.plan, KINDS) == ()


def test_several_wires_are_split_over_a_standing_plug_each_through_its_own_way(desk):
    desk.selection.select(["w3", "w4"])
    there = entries(desk, 300, 200)
    assert "-X1" in there and "-X2" not in there  # a block would join the two wires
    there["-X1"].trigger()
    ways = {r.terminal for w in desk.plan.wires.values() for r in (w.start, w.end) if r.part == "p5"}
    assert ways == {"1a", "1b", "2a", "2b"} and lit(desk.plan)
    assert desk.session.undo_label == "Split 2 wires"


def test_pieces_to_a_strip_that_stands_off_the_wire_run_square(desk):
    desk.selection.select(["w3", "w4"])
    entries(desk, 300, 200)["-X1"].trigger()
    for wire in desk.plan.wires.values():
        path = wire_path(desk.plan, KINDS, wire)
        at_plug = path[-2:] if wire.end.part == "p5" else path[:2]
        (ax, ay), (bx, by) = at_plug
        assert min(abs(ax - bx), abs(ay - by)) < 1.0
    assert desk.session.undo_label == "Split 2 wires"


def test_pieces_of_a_wire_in_a_wireway_are_led_along_it_again(qtbot):
    ways = add_wireway([(120, 240), (560, 240)], "Beam"), place(KINDS["terminal-strip-4"], 300, 280)
    plan = lamp_plan(*ways)
    desk = Desk(qtbot, route(plan, KINDS, ["w3", "w4"]).apply(plan))
    assert desk.plan.wires["w3"].along
    desk.selection.select(["w3", "w4"])
    entries(desk, 300, 240)["-X1"].trigger()
    assert len(desk.plan.wires) == 4 and all(w.along for w in desk.plan.wires.values())
    assert lit(desk.plan)
    desk.session.undo()
    assert len(desk.plan.wires) == 2


def test_a_single_wire_may_go_over_a_block(desk):
    desk.click(300, 200)
    entries(desk, 300, 200)["-X2"].trigger()
    assert len(desk.plan.wires) == 3 and lit(desk.plan)


def test_a_part_without_a_free_joint_is_refused_in_one_sentence():
    with pytest.raises(EditRefused, match="has no free joints left"):
        lead_over(["w3"], "p2", kinds=KINDS).apply(lamp_plan())


def test_a_fuse_set_down_on_a_wire_is_put_into_it_and_with_ctrl_beside_it(desk):
    desk.view.begin_place("fuse")
    desk.move(300, 200)
    assert "into wire -W1" in desk.hints[-1]
    desk.press(300, 200)
    desk.release(300, 200)
    fuse = list(desk.plan.parts)[-1]
    ends = [r.terminal for w in desk.plan.wires.values() for r in (w.start, w.end) if r.part == fuse]
    assert sorted(ends) == ["1", "2"] and lit(desk.plan)
    assert desk.plan.wires["w3"].end == TerminalRef(fuse, "1")  # the side that faces the supply
    desk.press(300, 230, CTRL)
    desk.release(300, 230, CTRL)
    assert len(desk.plan.wires) == 3


def test_a_lamp_set_down_on_a_wire_does_not_interrupt_it(desk):
    desk.view.begin_place("lamp-12v")
    desk.move(300, 200)
    desk.press(300, 200)
    desk.release(300, 200)
    assert len(desk.plan.wires) == 2 and len(desk.plan.parts) == 5
