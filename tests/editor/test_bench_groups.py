"""Parts joined as one thing on the panel bench: taken, moved and taken apart as on the plan."""

import pytest
from PySide6.QtCore import Qt
from support.benches import BUTTON, LAMP, PANEL, STRIP, SWITCH, BenchDesk, panel_plan
from support.editing import KINDS, done
from support.surfaces import CTRL, SHIFT

from wiring.edits.groups import join
from wiring.edits.place_part import place
from wiring.plan.groups import members

Key = Qt.Key
SECOND = "p11"  # a second indicator


@pytest.fixture
def bench(qtbot):
    """A panel whose button and indicator are one thing, with the strip far from the panel."""
    plan = done(panel_plan(), place(KINDS["indicator-red"], 270, 370, panel=PANEL))
    assert SECOND in plan.parts
    return BenchDesk(qtbot, done(plan, join((LAMP, SECOND, STRIP))))


def test_a_click_takes_the_whole_thing_that_is_on_the_bench_the_next_one_part(bench):
    bench.face_click(140, 30)
    assert bench.selection.ids == {LAMP, SECOND}  # the strip is elsewhere, and no hand on the bench takes it
    bench.face_click(140, 30)
    assert bench.selection.ids == {LAMP}
    bench.face_click(170, 70)
    assert bench.selection.ids == {SECOND}
    bench.face_key(Key.Key_J)
    assert bench.selection.ids == {LAMP, SECOND}
    bench.face_click(10, 10)
    bench.face_click(140, 30)
    bench.face_double(140, 30)
    bench.face_release(140, 30)
    assert bench.selection.ids == {LAMP}


def test_a_drag_by_one_moves_all_of_it_on_the_bench_and_nothing_elsewhere(bench):
    strip = bench.plan.parts[STRIP]
    bench.face_drag((140, 30), (120, 20))
    assert (bench.where(LAMP), bench.where(SECOND)) == ((120, 20), (150, 60))
    assert bench.plan.parts[STRIP] is strip
    bench.session.undo()
    bench.face_click(140, 30)
    bench.face_click(140, 30)
    bench.face_drag((140, 30), (120, 20))  # by one that is chosen alone
    assert (bench.where(LAMP), bench.where(SECOND)) == ((120, 20), (170, 70))


def test_shift_puts_all_of_it_in_and_out_and_a_band_takes_it_whole_or_not(bench):
    bench.face_click(90, 50)
    bench.face_click(140, 30, SHIFT)
    assert bench.selection.ids == {BUTTON, LAMP, SECOND}
    bench.face_click(170, 70, SHIFT)
    assert bench.selection.ids == {BUTTON}
    bench.face_drag((75, 12), (155, 60))
    assert bench.selection.ids == {BUTTON}  # half of the thing is no thing
    bench.face_drag((75, 12), (190, 95))
    assert bench.selection.ids == {BUTTON, LAMP, SECOND}


def test_parts_are_joined_and_taken_apart_by_the_menu_and_by_what_the_window_does(bench):
    bench.selection.select((SWITCH, BUTTON))
    assert bench.view.bench.do("join")
    assert bench.session.undo_label == "Join as one thing" and members(bench.plan, SWITCH) == (SWITCH, BUTTON)
    assert bench.selection.ids >= {SWITCH, BUTTON}
    assert bench.view.bench.do("take_apart") and members(bench.plan, SWITCH) == ()
    said = []
    bench.session.refused.connect(said.append)
    bench.face_key(Key.Key_J)
    assert len(said) == 1 and "joined with nothing" in said[0]


def test_from_behind_the_wires_between_come_with_it(bench):
    bench.selection.select((SWITCH, BUTTON))
    bench.view.bench.do("join")
    bench.face_key(Key.Key_Escape)
    bench.face_key(Key.Key_B)
    assert bench.bench.behind
    bench.face_click(93, 54)  # beside its terminals and the wire to it
    wires = bench.selection.ids & bench.plan.wires.keys()
    assert bench.selection.ids - wires == {SWITCH, BUTTON} and len(wires) == 1
    before = bench.plan
    bench.face_key(Key.Key_Down)
    assert bench.where(SWITCH)[1] == 60 and bench.where(BUTTON)[1] == 60
    bench.session.undo()
    bench.face_key(Key.Key_X, CTRL)
    assert SWITCH not in bench.plan.parts and not wires & bench.plan.wires.keys()
    bench.session.undo()
    assert bench.plan is before
