"""A wire drawn with square corners keeps them while the parts at its ends are moved, turned or lined up."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS, done

from wiring.edits.align import align
from wiring.edits.connect import connect
from wiring.edits.move import move
from wiring.edits.place_part import place
from wiring.edits.turn import turn
from wiring.plan.names import TerminalRef
from wiring.plan.places import terminal_at
from wiring.plan.plan import Plan

LAMP = KINDS["led-warm-white"]
SHIFT = st.floats(-300, 300).map(lambda v: round(v, 1))


def two_lamps(*corners) -> Plan:
    return done(
        Plan(),
        place(LAMP, 0, 0),
        place(LAMP, 400, 200),
        connect(TerminalRef("p1", "A"), TerminalRef("p2", "K"), bends=corners),
    )


def square_plans() -> list[Plan]:
    plan = two_lamps()
    (ax, ay), (kx, ky) = (terminal_at(plan.parts[p], LAMP, t) for p, t in (("p1", "A"), ("p2", "K")))
    return [two_lamps((kx, ay)), two_lamps((ax, ky)), two_lamps((150, ay), (150, ky))]


def square(plan: Plan) -> bool:
    (wire,) = plan.wires.values()
    start = terminal_at(plan.parts["p1"], LAMP, "A")
    end = terminal_at(plan.parts["p2"], LAMP, "K")
    way = (start, *wire.bends, end)
    return all(min(abs(a - c), abs(b - d)) < 0.01 for (a, b), (c, d) in pairwise(way))


@pytest.mark.parametrize("plan", square_plans())
@given(part=st.sampled_from(["p1", "p2"]), dx=SHIFT, dy=SHIFT)
@settings(deadline=None, max_examples=25)
def test_moving_one_end_leaves_a_square_wire_square_and_moving_back_restores_it(plan, part, dx, dy):
    there = move([part], dx, dy).apply(plan)
    assert square(plan) and square(there)
    assert move([part], -dx, -dy).apply(there) == plan


@pytest.mark.parametrize("plan", square_plans())
def test_turning_and_lining_up_leave_it_square(plan):
    assert square(turn(["p2"], 90).apply(plan)) and square(align(["p1", "p2"], "row").apply(plan))
    assert done(plan, *[turn(["p1"], 90)] * 4) == plan


def test_a_slanted_wire_and_its_corners_stay_where_they_were():
    plan = two_lamps((60, 90))
    assert move(["p1"], 20, 30).apply(plan).wires == plan.wires


def test_a_corner_in_the_middle_of_a_straight_stretch_is_left():
    _, y_mm = terminal_at(two_lamps().parts["p1"], LAMP, "A")
    plan = two_lamps((100, y_mm), (200, y_mm), (200, 300))
    assert move(["p1"], 0, 50).apply(plan).wires == plan.wires
