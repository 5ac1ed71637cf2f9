"""A wire pulled by hand from part to part turns its first corner off their bodies wherever one way does."""

import itertools

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from support.editing import done
from support.gesture_runs import KINDS, around, at, key, run, terminal

from app.canvas.gestures.pull_wire import pull_from
from wiring.edits.laying import body_box
from wiring.edits.place_part import place
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

SORTS = st.sampled_from(
    ["battery-9v", "toggle-on-off", "building-led", "supply-regulated", "terminal-strip-4"]
)
TURNS = st.sampled_from([0.0, 90.0, 180.0, 270.0, 30.0])
PLACES = st.tuples(st.integers(-4, 4), st.integers(-4, 4))


def _in(x, y, box):
    left, top, right, bottom = box
    return left + 0.3 < x < right - 0.3 and top + 0.3 < y < bottom - 0.3


def crosses(plan, path, parts):
    """Whether one of many points along a way lies in a body."""
    boxes = [body_box(plan.parts[p], KINDS[plan.parts[p].kind]) for p in parts]
    for (ax, ay), (bx, by) in itertools.pairwise(path):
        for n in range(1, 200):
            x, y = ax + (bx - ax) * n / 200, ay + (by - ay) * n / 200
            if any(_in(x, y, box) for box in boxes):
                return True
    return False


@given(one=SORTS, other=SORTS, turns=st.tuples(TURNS, TURNS), off=PLACES, data=st.data())
@settings(max_examples=60, deadline=None)
def test_the_corner_is_off_both_bodies_where_one_of_the_two_is(one, other, turns, off, data):
    plan = done(
        Plan(),
        place(KINDS[one], 300, 300, turns[0]),
        place(KINDS[other], 300 + 97 * off[0], 300 + 83 * off[1], turns[1]),
    )
    here = around(plan)
    names = [data.draw(st.sampled_from([t.name for t in KINDS[k].terminals])) for k in (one, other)]
    start, end = terminal(here, "p1", names[0]), terminal(here, "p2", names[1])
    _, previews = run(
        pull_from(here, TerminalRef("p1", names[0]), start),
        at(here, "move", *end, landing=True),
        key("flip", *end)._replace(hit=at(here, "move", *end, landing=True).hit),
    )
    landed, flipped = previews[1:3]
    assume(landed.landing == TerminalRef("p2", names[1]) and len(landed.line) == 3)
    assert landed.line[1] != flipped.line[1] and len(flipped.line) == 3
    if crosses(plan, landed.line, ("p1", "p2")):
        assert crosses(plan, flipped.line, ("p1", "p2"))
