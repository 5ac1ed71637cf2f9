"""Each rule about discharge units, cold lamps and servos speaks where it should and else is silent."""

import re
import time
from functools import partial

import msgspec
import pytest
from support.findings import found, rules, situation
from support.mending import findings, mended, sound
from support.networks import draw, resistor, stiff

from tests.contracts.test_findings_wording import JARGON, LONGEST
from wiring.findings.words import amps
from wiring.standards.fuses import RATINGS_A
from wiring.studies.wire_limits import warm_a

HEAVY = {"coil_ohm": 4.0}


def unit(
    motors=1,
    wire_m=0.5,
    size="22 AWG",
    coil=HEAVY,
    supply=None,
    button="push-to-make",
    position="on",
    **settings,
):
    """A unit, one button and so many coils side by side on it."""
    run = {"length_m": wire_m, "size": size}
    parts = {
        "G1": supply or stiff(20.0),
        "C1": ("discharge-unit", settings),
        "S1": (button, {}, position if button != "push-to-make" else ""),
        "X1": BLOCK,
        "X2": BLOCK,
    }
    wires = [
        ("G1:+", "C1:+"),
        ("G1:-", "C1:-"),
        ("C1:O", "S1:13", run),
        ("S1:14", "X1:1", run),
        ("X2:1", "C1:-", run),
    ]
    for number in range(1, motors + 1):
        parts[f"M{number}"] = ("twin-coil", coil)
        wires += [(f"X1:{number + 1}", f"M{number}:N"), (f"M{number}:C", f"X2:{number + 1}")]
    return draw(parts, wires)


BLOCK = "distribution-block-12"


def lamps(count, fuse=None, supply=None, kind="lamp-12v"):
    parts = {"G1": supply or stiff(12.0), "F1": ("fuse", fuse or {}), "X1": BLOCK, "X2": BLOCK}
    wires = [("G1:+", "F1:1"), ("F1:2", "X1:1"), ("G1:-", "X2:1")]
    for number in range(1, count + 1):
        parts[f"E{number}"] = kind
        wires += [(f"X1:{number + 1}", f"E{number}:1"), (f"X2:{number + 1}", f"E{number}:2")]
    return draw(parts, wires)


def shutting(limit_a):
    return "supply-regulated", {"volts": 12.0, "limit_a": limit_a, "ohms": 0.05, "on_overload": "shuts off"}


def stores(farads, fuse, supply=("supply-ac", {"open_v": 18.0, "rated_v": 16.0, "rated_a": 1.0})):
    ends = ("~1", "~2") if supply[0] == "supply-ac" else ("+", "-")
    parts = {"G1": supply, "F1": ("fuse", fuse), "T1": ("smoothed-rectifier", {"capacitance": farads})}
    wires = [(f"G1:{ends[0]}", "F1:1"), ("F1:2", "T1:~1"), (f"G1:{ends[1]}", "T1:~2")]
    return draw(parts | {"R1": resistor(200.0)}, [*wires, ("T1:+", "R1:1"), ("T1:-", "R1:2")])


HOLDING = (
    "supply-regulated",
    {"volts": 12.0, "limit_a": 3.0, "ohms": 0.05, "on_overload": "holds current"},
)


def servos(count, limit_a):
    supply = "supply-regulated", {"volts": 5.0, "limit_a": limit_a, "ohms": 0.05}
    parts = {"G1": supply, "X1": BLOCK, "X2": BLOCK}
    wires = [("G1:+", "X1:1"), ("G1:-", "X2:1")]
    for number in range(1, count + 1):
        parts[f"M{number}"] = "servo"
        wires += [(f"X1:{number + 1}", f"M{number}:+"), (f"X2:{number + 1}", f"M{number}:-")]
    return draw(parts, wires)


# What earns the finding, and what is like it but does not.
CASES = {
    "throw-weak": (unit(wire_m=8.0, size="28 AWG"), unit(wire_m=8.0, size="14 AWG")),
    "unit-too-small": (unit(motors=2), unit(motors=2, capacitance=0.018)),
    "unit-drained": (unit(button="toggle-on-off"), unit(button="toggle-on-off", position="off")),
    "unit-slow": (unit(capacitance=0.044), unit(capacitance=0.044, charge_ohm=47.0)),
    "cold-lamps-fuse": (lamps(10, {"rating_a": 0.8}), lamps(10, {"rating_a": 0.8, "speed": "slow"})),
    "cold-lamps-supply": (
        lamps(10, {"rating_a": 5.0}, shutting(2.0)),
        lamps(10, {"rating_a": 5.0}, shutting(8.0)),
    ),
    "store-rush-fuse": (
        stores(0.0022, {"rating_a": 1.0}),
        stores(0.0022, {"rating_a": 1.0, "speed": "slow"}),
    ),
    "store-rush-supply": (
        stores(0.0022, {"rating_a": 10.0}, shutting(3.0)),
        stores(0.0022, {"rating_a": 10.0}, HOLDING),
    ),
    "servos-moving": (servos(8, 1.0), servos(8, 5.0)),
    "servos-stalled": (servos(4, 1.0), servos(4, 3.0)),
}
MINE = set(CASES)


@pytest.mark.parametrize("rule", CASES)
def test_the_rule_speaks_once_and_only_where_it_should(rule):
    bad, good = CASES[rule]
    assert rules(bad)[rule] == 1
    assert rules(good)[rule] == 0


@pytest.mark.parametrize("rule", CASES)
def test_its_sentences_are_short_whole_and_plain(rule):
    finding = found(CASES[rule][0], rule)
    for sentence in (finding.what, finding.why, finding.mend):
        assert sentence.endswith(".") and len(sentence) < LONGEST
        assert sentence[0].isupper() or sentence[0] == "-"
        assert "  " not in sentence and ".." not in sentence and not JARGON.search(sentence)
    assert any(f"-{part}" in finding.what for part in finding.parts)


def test_the_size_that_is_named_makes_it_throw():
    finding = found(unit(wire_m=8.0, size="28 AWG"), "throw-weak")
    size = finding.mend.split(" for ")[0].removeprefix("Use ")
    assert rules(unit(wire_m=8.0, size=size))["throw-weak"] == 0
    assert {"w3", "w4", "w5"} <= set(finding.wires)


def test_the_capacitor_that_is_named_is_large_enough():
    finding = found(unit(motors=2), "unit-too-small")
    assert "-M1 and -M2" in finding.what
    assert "a unit of 10000 µF" in finding.mend
    assert rules(unit(motors=2, capacitance=0.01))["unit-too-small"] == 0


def test_the_fuse_that_is_named_holds():
    finding = found(CASES["cold-lamps-fuse"][0], "cold-lamps-fuse")
    assert "slow fuse of 800 mA" in finding.mend
    assert (
        rules(lamps(10, {"rating_a": 0.4, "speed": "slow"}))["cold-lamps-fuse"] == 0
    )  # blows for good: not ours


@pytest.mark.parametrize(
    ("rule", "made", "rating_a", "begins"),
    [
        ("cold-lamps-fuse", partial(lamps, 10), 0.8, "Use a slow fuse of"),
        ("store-rush-fuse", partial(stores, 0.0022), 1.0, "Use a slow fuse of"),
        ("store-rush-fuse", partial(stores, 0.022), 1.0, "Use a slow fuse of"),
        ("store-rush-fuse", partial(stores, 10.0), 1.0, "Use smaller capacitors, or put a resistor"),
    ],
)
def test_the_slow_fuse_that_is_named_bears_the_rush(rule, made, rating_a, begins):
    mend = found(made({"rating_a": rating_a}), rule).mend
    assert mend.startswith(begins)
    named = re.search(r"slow fuse of ([0-9.]+) (m?)A", mend)
    if named is not None:
        slow_a = float(named[1]) / (1000 if named[2] else 1)
        assert slow_a >= rating_a
        assert rules(made({"rating_a": slow_a, "speed": "slow"}))[rule] == 0
        assert rules(made({"rating_a": slow_a}))[rule] > 0  # a quick one of the same does not


def of_size(plan, size):
    return plan.with_changes(wires={i: msgspec.structs.replace(w, size=size) for i, w in plan.wires.items()})


@pytest.mark.parametrize("size", ["18 AWG", "26 AWG", "28 AWG", "30 AWG"])
def test_a_larger_slow_fuse_is_offered_only_where_the_thinnest_wire_behind_it_bears_it(size):
    plan = sound(of_size(stores(0.022, {"rating_a": 0.8}), size))
    finding = found(plan, "store-rush-fuse")
    if finding.act is None:
        assert f"({size}) bears" in finding.mend and "too little for the slow fuse of" in finding.mend
        slow_a = min(r for r in RATINGS_A if f"slow fuse of {amps(plan, r)} that" in finding.mend)
        assert slow_a > warm_a(size)
        return
    values = dict(finding.act.values)
    assert values["speed"] == "slow" and 0.8 < values["rating_a"] <= warm_a(size)
    said = {f.rule for f in findings(mended(plan, finding))}
    assert not {"store-rush-fuse", "fuse-too-large", "fuse-blows"} & said


def test_held_buttons_do_not_hide_a_weak_unit():
    plan = unit(motors=2)
    assert rules(plan, {"S1": "pressed"})["unit-too-small"] == 1


def test_a_coil_behind_a_unit_is_no_coil_on_the_supply():
    """What a supply gives straight is another rule's; the unit charges slowly and never overloads it."""
    plan = unit(supply=("supply-regulated", {"volts": 20.0, "limit_a": 0.5}))
    assert not {"pulse-weak", "pulse-over-limit", "coil-held"} & set(rules(plan))


def test_a_unit_the_wrong_way_round_or_on_ac_is_found():
    swapped = draw(
        {"G1": stiff(20.0), "C1": "discharge-unit"}, [("G1:+", "C1:-"), ("G1:-", "C1:+"), ("C1:O", "C1:O")]
    )
    assert rules(swapped)["wrong-polarity"] == 1
    on_ac = draw({"G1": "supply-ac", "C1": "discharge-unit"}, [("G1:~1", "C1:+"), ("G1:~2", "C1:-")])
    assert rules(on_ac)["dc-part-on-ac"] == 1


@pytest.mark.parametrize(
    "settings", [{"capacitance": 0.0}, {"charge_ohm": -1.0}, {"capacitance": "lots"}, {"open_v": -3.0}]
)
def test_settings_that_cannot_be_never_raise(settings):
    situation(unit(**settings))


def test_a_unit_that_nothing_feeds_says_nothing_about_throws():
    plan = draw(
        {"C1": "discharge-unit", "M1": "twin-coil", "R1": resistor(1.0)}, [("C1:O", "M1:N"), ("M1:C", "C1:-")]
    )
    assert not MINE & set(rules(plan))


def test_twenty_turnouts_on_one_unit_are_checked_quickly():
    parts = {"G1": stiff(20.0), "C1": "discharge-unit"}
    wires = [("G1:+", "C1:+"), ("G1:-", "C1:-")]
    for number in range(1, 21):
        parts |= {f"S{number}": "push-to-make", f"M{number}": ("twin-coil", HEAVY)}
        wires += [
            ("C1:O", f"S{number}:13"),
            (f"S{number}:14", f"M{number}:N"),
            (f"M{number}:C", "C1:-", {"length_m": 9.0, "size": "28 AWG"}),
        ]
    plan = draw(parts, wires)
    situation(plan)
    started = time.process_time()
    assert rules(plan)["throw-weak"] == 1
    assert time.process_time() - started < 2.0
