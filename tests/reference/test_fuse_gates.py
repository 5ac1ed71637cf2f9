"""How fast fuses must and must not open, against the gates of IEC 60127-2, and what a plan is told.

Sheet 2 (F, quick-acting) from a maker's data sheet of 5 × 20 mm fuses, two editions; sheet 3 (T, time-lag)
from another maker's.
"""

import math

import pytest
from support.findings import rules
from support.networks import draw, resistor

from wiring.standards.fuses import RATINGS_A, holds_for_s, opens_within_s, rating_up

# Speed, rating A, times the rating, holds at least s, has opened after s; 125 mA to 6.3 A and 32 to 100 mA.
GATES = [
    ("fast", 1.0, 1.5, 3600, math.inf), ("fast", 1.0, 2.1, 0, 1800), ("fast", 1.0, 2.75, 0.05, 2),
    ("fast", 1.0, 4, 0.01, 0.3), ("fast", 1.0, 10, 0, 0.02), ("fast", 0.063, 2.75, 0.01, 0.5),
    ("fast", 0.063, 4, 0.003, 0.1), ("slow", 1.0, 1.5, 3600, math.inf), ("slow", 1.0, 2.1, 0, 120),
    ("slow", 1.0, 2.75, 0.6, 10), ("slow", 1.0, 4, 0.15, 3), ("slow", 1.0, 10, 0.02, 0.3),
    ("slow", 0.1, 2.75, 0.2, 10), ("slow", 0.1, 4, 0.04, 3), ("slow", 0.1, 10, 0.01, 0.3),
]  # fmt: skip


@pytest.mark.parametrize(("speed", "rating_a", "multiple", "not_before_s", "not_after_s"), GATES)
def test_fuses_have_the_gates_of_their_standard(speed, rating_a, multiple, not_before_s, not_after_s):
    at_a = multiple * rating_a
    assert opens_within_s(rating_a, at_a, speed) == not_after_s
    assert opens_within_s(rating_a, at_a * 0.999, speed) > not_after_s or math.isinf(not_after_s)
    assert holds_for_s(rating_a, at_a, speed) >= not_before_s
    if not_before_s:
        assert holds_for_s(rating_a, at_a, speed) == not_before_s
        assert holds_for_s(rating_a, at_a * 1.001, speed) < not_before_s


def test_gates_of_large_fuses_are_those_the_maker_goes_on_with():
    """The sheet of F fuses has 8 and 10 A: half an hour at 1.5 times, 10 to 400 ms at 4, 40 ms at 10."""
    assert holds_for_s(10.0, 15.0, "fast") == 1800
    assert opens_within_s(8.0, 32.0, "fast") == 0.4 and opens_within_s(8.0, 80.0, "fast") == 0.04
    assert opens_within_s(40.0, 400.0, "fast") == 0.04
    with pytest.raises(KeyError):
        opens_within_s(1.0, 2.0, "medium")


@pytest.mark.parametrize("rating_a", [0.25, 1.0, 3.15])
@pytest.mark.parametrize(("multiple", "told"), [(1.9, 1), (2.2, 0)])
def test_a_plan_is_told_of_a_fuse_that_its_supply_cannot_blow(rating_a, multiple, told):
    """Below 2.1 times its rating the standard promises no opening; the product takes 2.0 for it, as UL does.

    UL 248-14 has 200 % within two minutes, a fuse maker's selection guide.
    """
    supply = ("supply-regulated", {"volts": 12.0, "limit_a": multiple * rating_a})
    parts = {"G": supply, "F": ("fuse", {"rating_a": rating_a}), "R": resistor(1000.0)}
    wires = [("G:+", "F:1"), ("F:2", "R:1"), ("R:2", "G:-")]
    assert rules(draw(parts, wires))["fuse-never-blows"] == told


def test_the_next_rating_up_carries_the_current():
    assert rating_up(0.9) == 1.0 and rating_up(1.0) == 1.0 and rating_up(11.0) is None
    assert list(RATINGS_A) == sorted(set(RATINGS_A))
