"""The values acts put into a plan, held to published formulas and rows."""

import math
from itertools import pairwise

import pytest
from support.findings import found, rules, situation
from support.mending import mended, sound
from support.networks import draw, kinds, resistor, stiff

from wiring.standards.current_ratings import R10, next_rating_up
from wiring.standards.fuses import RATINGS_A
from wiring.studies.settings import number
from wiring.studies.wire_limits import limit_a, warm_a

BARE = sorted(k for k, kind in kinds().items() if k.endswith("-bare"))
LASTING = 0.6  # of a resistor's rating, as wiring.studies.resistor_choice has it


def next_e24(ohms):
    eseries = pytest.importorskip("eseries", reason="the eseries package is the outside check here")
    return eseries.find_greater_than_or_equal(eseries.ESeries.E24, ohms)


@pytest.mark.parametrize("supply_v", [5.0, 9.0, 12.0, 15.0])
@pytest.mark.parametrize("key", BARE)
def test_the_resistor_put_in_is_that_of_the_textbook(key, supply_v):
    # R = (Vs - Vf) / I, rounded up to IEC 60063's E24: any textbook of electronics.
    plan = sound(draw({"G1": stiff(supply_v), "E1": key}, [("G1:+", "E1:A"), ("E1:K", "G1:-")]))
    led, kind = plan.parts["E1"], kinds()[key]
    forward_v, wished_a = number(led, kind, "forward_v"), number(led, kind, "forward_a")
    finding = found(plan, "led-without-resistor")
    assert finding.act.number("resistance") == pytest.approx(next_e24((supply_v - forward_v) / wished_a))
    new = mended(plan, finding)
    figures = situation(new).figures
    (made,) = [p for i, p in new.parts.items() if i not in plan.parts]
    assert made.settings["resistance"] == finding.act.number("resistance")
    # The next value up is at most a tenth larger, so the LED gets no more than wished and little less.
    assert 0.85 * wished_a < figures.parts["E1"].current_a < 1.02 * wished_a
    assert figures.parts[made.id].power_w <= LASTING * made.settings["rated_power"] * 1.03


@pytest.mark.parametrize("ohms", [47.0, 100.0, 150.0])
@pytest.mark.parametrize("in_series", [1, 3])
def test_a_resistor_that_is_too_small_is_set_to_that_of_the_textbook(ohms, in_series):
    leds = {f"E{n}": "led-red-bare" for n in range(1, in_series + 1)}
    names = list(leds)
    chain = [(f"{a}:K", f"{b}:A") for a, b in pairwise(names)]
    wires = [("G1:+", "R1:1"), ("R1:2", "E1:A"), *chain, (f"{names[-1]}:K", "G1:-")]
    plan = sound(draw({"G1": stiff(12.0), "R1": resistor(ohms), **leds}, wires))
    kind = kinds()["led-red-bare"]
    forward_v, wished_a = kind.setting("forward_v").default, kind.setting("forward_a").default
    finding = found(plan, "led-current")
    assert finding.act.parts == ("R1",)
    assert finding.act.number("resistance") == pytest.approx(
        next_e24((12.0 - in_series * forward_v) / wished_a), rel=1e-6
    )
    new = mended(plan, finding)
    assert not {"led-current", "resistor-power"} & set(rules(new))


def test_no_value_is_named_for_a_resistor_that_leds_of_two_sorts_share():
    wires = [("G1:+", "R1:1"), ("R1:2", "E1:A"), ("R1:2", "E2:A"), ("E1:K", "G1:-"), ("E2:K", "G1:-")]
    plan = draw({"G1": stiff(12.0), "R1": resistor(47), "E1": "led-red-bare", "E2": "led-white-bare"}, wires)
    finding = found(plan, "led-current")
    assert finding.act is None and finding.mend.startswith("Use a larger series resistor, or ")


@pytest.mark.parametrize("size", ["28 AWG", "24 AWG", "20 AWG"])
@pytest.mark.parametrize("load_a", [0.03, 0.2, 0.4])
def test_the_fuse_put_in_guards_its_wire_and_carries_its_load(size, load_a):
    wires = [("G1:+", "E1:1", {"size": size}), ("E1:2", "G1:-", {"size": size})]
    supply, lamp = ("supply-regulated", {"limit_a": 20.0}), ("lamp-12v", {"rated_a": load_a})
    plan = sound(draw({"G1": supply, "E1": lamp}, wires))
    finding = found(plan, "fuse-missing")
    rating_a = finding.act.number("rating_a")
    new = mended(plan, finding)
    # A fuse must open before its wire gets hot, and an IEC 60127 one must not run at its rating all evening.
    assert rating_a in RATINGS_A and 1.25 * load_a * 0.97 <= rating_a <= warm_a(size)
    assert not {r for r in rules(new) if r.startswith("fuse")}
    lead = next(w for i, w in new.wires.items() if i not in plan.wires)
    assert (lead.start, lead.size) == (("G1", "+"), size)


@pytest.mark.parametrize("on_overload", ["holds current", "shuts off"])
@pytest.mark.parametrize("load_a", [1.1, 1.7, 3.0])
def test_a_supply_is_set_to_what_its_load_asks_with_a_fifth_in_hand(load_a, on_overload):
    supply = "supply-regulated", {"volts": 12.0, "limit_a": 1.0, "ohms": 0.001, "on_overload": on_overload}
    parts = {
        "G1": supply,
        "F1": ("fuse", {"rating_a": 5.0, "cold_ohm": 0.001}),
        "R1": resistor(12.0 / load_a),
    }
    wide = {"size": "14 AWG"}
    plan = sound(draw(parts, [("G1:+", "F1:1", wide), ("F1:2", "R1:1", wide), ("R1:2", "G1:-", wide)]))
    (finding,) = [f for f in situation(plan).findings if f.rule in ("supply-in-limit", "supply-shut-off")]
    rated_a = finding.act.number("limit_a")
    # Ohm's law, a fifth in hand, and the next rated current of IEC 60059: no more than a quarter above.
    assert load_a / 0.8 * 0.99 <= rated_a <= load_a / 0.8 * 1.26
    new = mended(plan, finding)
    assert situation(new).figures.supplies["G1"].current_a == pytest.approx(load_a, rel=0.01)
    assert not {r for r in rules(new) if r.startswith("supply")}


def test_no_larger_supply_is_planned_where_no_fuse_would_save_the_wire():
    wires = [("G1:+", "E1:1", {"size": "28 AWG"}), ("E1:2", "G1:-", {"size": "28 AWG"})]
    supply = "supply-regulated", {"limit_a": 0.2, "on_overload": "holds current"}
    plan = sound(draw({"G1": supply, "E1": ("lamp-12v", {"rated_a": 1.2})}, wires))
    finding = found(plan, "supply-in-limit")
    assert "at least" in finding.mend and finding.act is None


@pytest.mark.parametrize("size", ["28 AWG", "26 AWG", "22 AWG"])
def test_the_size_set_carries_the_current_by_the_published_table(size):
    wires = [("G1:+", "R1:1", {"size": size}), ("R1:2", "G1:-", {"size": size})]
    plan = sound(draw({"G1": stiff(12.0), "R1": resistor(12.0 / (1.5 * limit_a(size)))}, wires))
    new = mended(plan, found(plan, "wire-current"))
    current_a = abs(situation(new).figures.wires["w1"].current_a)
    assert {w.size for w in new.wires.values()} != {size}
    assert all(current_a <= limit_a(w.size) for w in new.wires.values())


def test_rated_currents_are_the_row_of_preferred_numbers():
    # ISO 3, R10: ten steps to a decade, rounded to what is easy to say, within 1.3 %.
    for step, rating in enumerate(R10):
        assert rating == pytest.approx(10 ** (step / 10), rel=0.013)


@pytest.mark.parametrize(
    ("asked", "rated"), [(0.9, 1.0), (1.0, 1.0), (1.01, 1.25), (0.051, 0.063), (8.4, 10.0)]
)
def test_the_next_rated_current_is_not_below(asked, rated):
    assert next_rating_up(asked) == pytest.approx(rated)


@pytest.mark.parametrize("nothing", [0.0, -1.0, math.nan, math.inf])
def test_nothing_is_rated_for_what_is_no_current(nothing):
    with pytest.raises(ValueError, match="nothing is made"):
        next_rating_up(nothing)
