"""How grave a fuse is that is too large for the wire behind it: heat goes with the square of the current."""

import pytest
from support.findings import found, rules
from support.networks import draw, resistor, stiff

from wiring.findings.finding import Rank
from wiring.plan.plan import Plan

WIRE_A = 2.5  # of 24 AWG in a bundle


def guarded(rating_a: float) -> Plan:
    thin = {"size": "24 AWG", "length_m": 0.5}
    parts = {"G": stiff(12.0, limit_a=50.0), "F": ("fuse", {"rating_a": rating_a}), "R": resistor(100)}
    return draw(parts, [("G:+", "F:1", thin), ("F:2", "R:1", thin), ("R:2", "G:-", thin)])


@pytest.mark.parametrize(
    ("rating_a", "rank", "why"),
    [(4.0, Rank.WEAK, "get hot"), (5.0, Rank.WEAK, "get hot"), (6.3, Rank.DANGER, "burn"),
     (10.0, Rank.DANGER, "burn")],
)  # fmt: skip
def test_beyond_twice_what_the_wire_carries_it_is_a_danger(rating_a, rank, why):
    told = found(guarded(rating_a), "fuse-too-large")
    assert (told.rank is Rank.DANGER) == (rating_a > 2 * WIRE_A)
    assert told.rank is rank and why in told.why


@pytest.mark.parametrize("rating_a", [0.5, 1.0, 2.5])
def test_a_fuse_that_guards_the_wire_is_well(rating_a):
    assert "fuse-too-large" not in rules(guarded(rating_a))
