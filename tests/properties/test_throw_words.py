"""How well a motor throws, in words: closed forms for the figures, one sentence for each case."""

import pytest
from support.networks import draw, kinds, stiff

from tests.properties.test_pulses_findings import unit
from wiring.studies.throws.enough import ENERGY_SHARE, PEAK_SHARE
from wiring.studies.throws.words import Throw, throw_of, throw_words


def on_supply(volts, wire_m=0.0):
    parts = {"G": stiff(volts), "S": "push-to-make", "T": "push-to-make", "M": "twin-coil"}
    wires = [("G:+", "S:13"), ("S:14", "M:N"), ("G:+", "T:13"), ("T:14", "M:R"),
             ("M:C", "G:-", {"length_m": wire_m, "size": "24 AWG"})]  # fmt: skip
    return draw(parts, wires)


def test_straight_on_a_stiff_supply_it_is_ohms_law():
    """Volts over ohms at the peak; the margin is the lesser of peak and heat over what a throw needs."""
    values = kinds()["twin-coil"].values({})
    throw = throw_of(on_supply(values["rated_v"]), kinds(), {}, "M")
    assert throw.peak_a == pytest.approx(values["rated_v"] / values["coil_ohm"], rel=0.01)
    assert throw.margin == pytest.approx(1.0 / PEAK_SHARE, rel=0.02)
    assert throw.margin < 1.0 / ENERGY_SHARE and throw.throws
    assert throw_words(throw).startswith("Throws well: the weaker coil gets 1.4 times what a throw needs")


def test_the_weaker_coil_counts():
    plan = on_supply(16.0)
    wire = next(w for w in plan.wires.values() if w.end.terminal == "R")
    longer = type(wire)(**{f: getattr(wire, f) for f in wire.__struct_fields__} | {"length_m": 60.0})
    worse = throw_of(plan.with_changes(wires={**plan.wires, wire.id: longer}), kinds(), {}, "M")
    assert worse.margin < throw_of(plan, kinds(), {}, "M").margin


def test_a_unit_tells_when_it_is_full_again_and_how_many_share_the_press():
    throw = throw_of(unit(motors=2), kinds(), {}, "M1")
    assert throw.source == "C1" and throw.together == 2 and throw.refill_s > 0.1
    assert not throw.throws
    words = throw_words(throw)
    assert words.startswith("Does not throw safely") and "with 2 coils on one press" in words


def test_a_motor_that_nothing_feeds_says_so():
    throw = throw_of(draw({"M": "twin-coil"}, []), kinds(), {}, "M")
    assert not throw.throws
    assert throw_words(throw) == "No button or switch puts -M on a supply or a discharge unit."


@pytest.mark.parametrize(
    ("margin", "begins"), [(2.0, "Throws well"), (1.1, "Throws with little in hand"), (0.6, "Does not throw")]
)
def test_each_margin_has_its_sentence(margin, begins):
    words = throw_words(Throw("M", "G", margin, 1.5, 1.0))
    assert words.startswith(begins) and words.endswith("1.5 A at the peak.")
