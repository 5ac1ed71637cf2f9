"""Wireways: drawn, bent, taken away; wires led along them, their lengths, and the bundles they make."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS, done

from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.lay_along import lay_along
from wiring.edits.place_part import place
from wiring.edits.set_wire import set_wire
from wiring.edits.wireways import add_wireway, move_corner, remove_wireway, set_wireway
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable
from wiring.plan.lengths import cut_length_m, drawn_length_m
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.soundness import unsound
from wiring.routing.along_wireways import routes
from wiring.routing.bundles import bundles
from wiring.standards.conductors import insulated_diameter_mm

LAMP = KINDS["lamp-12v"]


def under_the_board() -> Plan:
    """Return two lamps 1 m apart and a beam 200 mm below them with a branch to a third one."""
    return done(
        Plan(),
        place(LAMP, 0, 0),
        place(LAMP, 1000, 0),
        place(LAMP, 500, 800),
        connect(TerminalRef("p1", "2"), TerminalRef("p2", "1")),
        connect(TerminalRef("p1", "1"), TerminalRef("p3", "1")),
        add_wireway([(-100, 200), (1100, 200)], "Beam", drop_mm=60.0),
        add_wireway([(500, 200), (500, 700)], "Joist", drop_mm=40.0),
    )


def routed(plan) -> Plan:
    return lay_along(routes(plan, KINDS, plan.wires)).apply(plan)


def test_a_wire_goes_down_to_the_beam_along_it_and_up_again():
    plan = routed(under_the_board())
    wire = plan.wires["w4"]
    assert wire.bends == ((8, 200), (992, 200)) and wire.along == ("y6",)
    drawn = 0.2 + 0.984 + 0.2
    assert drawn_length_m(plan, KINDS, wire) == pytest.approx(drawn)
    assert cut_length_m(plan, KINDS, wire) == pytest.approx(drawn + 2 * 0.060 + 2 * 0.1)


def test_it_turns_off_where_wireways_meet_and_has_the_drop_of_each_end():
    plan = routed(under_the_board())
    wire = plan.wires["w5"]
    assert wire.bends == ((-8, 200), (500, 200), (500, 700)) and wire.along == ("y6", "y7")
    drawn = drawn_length_m(plan, KINDS, wire)
    assert cut_length_m(plan, KINDS, wire) == pytest.approx(drawn + 0.060 + 0.040 + 0.2)


def test_a_measured_length_wins():
    plan = set_wire(["w4"], length_m=1.75).apply(under_the_board())
    assert cut_length_m(routed(plan), KINDS, routed(plan).wires["w4"]) == 1.75


def test_neighbours_are_not_wired_by_way_of_a_far_beam():
    plan = done(
        Plan(),
        place(LAMP, 0, 0),
        place(LAMP, 100, 0),
        connect(TerminalRef("p1", "2"), TerminalRef("p2", "1")),
        add_wireway([(-100, 300), (1100, 300)]),
    )
    assert routes(plan, KINDS, plan.wires) == {}


def test_wireways_that_do_not_meet_lead_nowhere():
    plan = under_the_board()
    plan = move_corner("y7", 0, 500, 260).apply(plan)
    assert set(routes(plan, KINDS, plan.wires)) == {"w4"}


def test_crossing_wireways_are_joined_where_they_cross():
    plan = move_corner("y7", 0, 500, 150).apply(under_the_board())
    assert routes(plan, KINDS, ["w5"])["w5"].bends == ((-8, 200), (500, 200), (500, 700))


@given(st.lists(st.tuples(st.integers(-5, 12), st.integers(-5, 9)), min_size=2, max_size=7, unique=True))
@settings(max_examples=60, deadline=None)
def test_a_route_is_as_long_as_its_way_and_never_shorter_than_straight(corners):
    plan = add_wireway([(x * 100.0, y * 100.0) for x, y in corners]).apply(under_the_board())
    for wire_id, route in routes(plan, KINDS, plan.wires).items():
        there = lay_along({wire_id: route}).apply(plan)
        wire = there.wires[wire_id]
        straight = drawn_length_m(plan, KINDS, plan.wires[wire_id])
        assert drawn_length_m(there, KINDS, wire) >= straight - 1e-6
        assert unsound(there, KINDS) == () and set(wire.along) <= set(plan.wireways)


def test_the_bundle_tells_fill_and_the_hole_it_needs():
    plan = routed(under_the_board())
    beam, joist = bundles(plan)
    d = insulated_diameter_mm("22 AWG")
    assert beam.wires == ("w4", "w5") and joist.wires == ("w5",)
    assert beam.fill == pytest.approx(2 * d**2 / 20**2) and beam.fits
    assert beam.hole_mm >= math.sqrt(2 * d**2 / 0.31) > beam.hole_mm - 2
    tight = set_wireway("y6", hole_mm=2.0).apply(plan)
    assert not bundles(tight)[0].fits


def test_a_wireway_that_goes_takes_its_drops_with_it_and_leaves_the_wires():
    plan = remove_wireway("y6").apply(routed(under_the_board()))
    assert plan.wires["w4"].along == () and plan.wires["w5"].along == ("y7",)
    assert plan.wires["w4"].bends == ((8, 200), (992, 200))
    assert unsound(plan, KINDS) == ()


def test_the_file_keeps_wireways_and_says_what_is_wrong_with_one():
    plan = routed(under_the_board())
    assert decode(encode(plan)) == plan
    assert encode(done(Plan(), place(LAMP, 0, 0))).count(b"wireways") == 0
    with pytest.raises(NotReadable, match="Beam needs at least two corners"):
        decode(encode(plan).replace(b'"points": [[-100, 200], [1100, 200]]', b'"points": [[-100, 200]]'))
    with pytest.raises(NotReadable, match="led along the wireway y9"):
        decode(encode(plan).replace(b'"along": ["y6"]', b'"along": ["y9"]'))


@pytest.mark.parametrize(
    ("edit", "words"),
    [
        (add_wireway([(0, 0)]), "at least two corners"),
        (add_wireway([(0, 0), (1, 1)], hole_mm=-1.0), "hole of wireway"),
        (set_wireway("y6", name=" "), "needs a name"),
        (move_corner("y6", 9, 0, 0), "no such corner"),
        (remove_wireway("y99"), "no wireway y99"),
    ],
)
def test_refusals(edit, words):
    with pytest.raises(EditRefused, match=words):
        edit.apply(under_the_board())
