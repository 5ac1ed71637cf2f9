"""Fuses too large for their wire and switches too small for their load: from where on, and how grave."""

import pytest
from support.findings import found, rules, situation
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


@pytest.mark.parametrize(
    ("amps", "rank"), [(0.98, None), (1.05, Rank.WEAK), (1.95, Rank.WEAK), (2.05, Rank.DANGER)]
)
def test_a_contact_is_told_of_from_its_rating_on_and_is_a_danger_from_twice_that(amps, rank):
    load = ("constant-current-light", {"set_a": amps, "min_v": 3.0})
    switch = ("toggle-on-off", {"rated_a": 1.0})
    plan = draw(
        {"G": stiff(12.0), "S": switch, "E": load}, [("G:+", "S:13"), ("S:14", "E:+"), ("E:-", "G:-")]
    )
    told = [f.rank for f in situation(plan, {"S": "on"}).findings if f.rule == "contact-current"]
    assert told == ([] if rank is None else [rank])
