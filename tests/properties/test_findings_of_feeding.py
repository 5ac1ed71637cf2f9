"""Each rule about supplies, fuses, wires and batteries speaks where it should and else is silent."""

from datetime import date

import pytest
from support.findings import found, rules, situation
from support.networks import draw, kinds, resistor, stiff

from wiring.findings.finding import Rank

LAMP = "lamp-12v"
THIN, LONG = {"size": "28 AWG"}, {"length_m": 10.0, "size": "26 AWG"}


def lamp(rated_a):
    return LAMP, {"rated_a": rated_a}


def across(supply, load, **fields):
    """One load on one supply."""
    plus, minus = ("~1", "~2") if supply == "supply-ac" or supply[0] == "supply-ac" else ("+", "-")
    ends = ("A", "K") if "led" in str(load) else ("1", "2")
    return draw(
        {"G1": supply, "E1": load},
        [(f"G1:{plus}", f"E1:{ends[0]}", fields), (f"G1:{minus}", f"E1:{ends[1]}", fields)],
    )


def fused(rating_a, supply="supply-regulated", size="22 AWG", load=None):
    return draw(
        {"G1": supply, "F1": ("fuse", {"rating_a": rating_a}), "E1": load or resistor(100)},
        [("G1:+", "F1:1"), ("F1:2", "E1:1", {"size": size}), ("E1:2", "G1:-", {"size": size})],
    )


def supplies(first, second, *wires):
    return draw({"G1": first, "G2": second, "E1": LAMP}, [("G1:+", "E1:1"), ("G1:-", "E1:2"), *wires])


BOTH = (("G1:+", "G2:+"), ("G1:-", "G2:-"))
HOLDS = {"volts": 12, "limit_a": 1.0, "ohms": 0.05, "on_overload": "holds current"}
SHUTS = {**HOLDS, "on_overload": "shuts off"}
STRONG = ("supply-regulated", {"limit_a": 20.0})

CASES = {
    "supply-in-limit": (
        across(("supply-regulated", HOLDS), resistor(6)),
        across(("supply-regulated", HOLDS), resistor(60)),
    ),
    "supply-shut-off": (
        across(("supply-regulated", SHUTS), resistor(6)),
        across(("supply-regulated", SHUTS), resistor(60)),
    ),
    "supply-overload": (
        across("supply-unregulated", resistor(8)),
        across("supply-unregulated", resistor(80)),
    ),
    "supply-nearly-full": (
        across(("supply-regulated", HOLDS), resistor(13)),
        across(("supply-regulated", HOLDS), resistor(60)),
    ),
    "supply-shorted": (
        draw({"G1": "supply-regulated", "X1": "terminal-strip-4"}, [("G1:+", "X1:1"), ("X1:1", "G1:-")]),
        across("supply-regulated", LAMP),
    ),
    "wire-drop": (
        across("supply-regulated", lamp(0.5), **LONG),
        across("supply-regulated", lamp(0.05), **LONG),
    ),
    "wire-current": (across(stiff(12), resistor(4), **THIN), across(stiff(12), resistor(400), **THIN)),
    "fuse-missing": (across(STRONG, LAMP), across("supply-regulated", LAMP)),
    "fuse-too-large": (fused(10.0, STRONG), fused(2.0, STRONG)),
    "fuse-blows": (fused(0.1, load=resistor(60)), fused(0.5, load=resistor(60))),
    "fuse-tight": (fused(0.2, load=resistor(65)), fused(0.5, load=resistor(65))),
    "fuse-never-blows": (fused(2.0), fused(0.5)),
    "mixed-volts": (supplies(stiff(12), stiff(5), *BOTH), supplies(stiff(12), stiff(5), BOTH[1])),
    "supplies-parallel": (
        supplies(stiff(12, 0.1), stiff(12, 0.1), *BOTH),
        supplies(stiff(12), stiff(12), BOTH[1]),
    ),
    "supplies-opposed": (
        supplies(stiff(12, 0.1, 2.0), stiff(12, 0.1, 2.0), ("G1:+", "G2:-"), ("G1:-", "G2:+")),
        supplies(stiff(12), stiff(12), ("G1:-", "G2:+")),
    ),
    "transformers-tied": (
        draw(
            {"G1": "supply-ac", "G2": "supply-ac", "E1": "lamp-16v"},
            [("G1:~1", "E1:1"), ("G1:~2", "E1:2"), ("G2:~1", "E1:1"), ("G2:~2", "E1:2")],
        ),
        draw(
            {"G1": "supply-ac", "G2": "supply-ac", "E1": "lamp-16v"},
            [("G1:~1", "E1:1"), ("G1:~2", "E1:2"), ("G2:~2", "E1:2")],
        ),
    ),
    "ac-on-dc": (
        draw(
            {"G1": "supply-ac", "G2": stiff(12, 0.1), "E1": LAMP},
            [("G1:~1", "E1:1"), ("G1:~2", "E1:2"), ("G2:+", "E1:1"), ("G2:-", "E1:2")],
        ),
        across("supply-ac", "lamp-16v"),
    ),
    "ac-meets-dc": (
        draw(
            {"G1": "supply-ac", "G2": "supply-regulated", "E1": "lamp-16v", "E2": LAMP},
            [("G1:~1", "E1:1"), ("G1:~2", "E1:2"), ("G2:+", "E2:1"), ("G2:-", "E2:2"), ("E1:2", "E2:2")],
        ),
        draw(
            {"G1": "supply-ac", "G2": "supply-regulated", "E1": "lamp-16v", "E2": LAMP},
            [("G1:~1", "E1:1"), ("G1:~2", "E1:2"), ("G2:+", "E2:1"), ("G2:-", "E2:2")],
        ),
    ),
    "volts-to-touch": (across(stiff(72), resistor(1000)), across(stiff(24), resistor(1000))),
    "volts-for-scenery": (across(stiff(24), resistor(1000)), across(stiff(12), resistor(1000))),
    "safety-mains-adapter": (across("supply-regulated", LAMP), across("battery-alkaline", LAMP)),
    "safety-lithium-cells": (across("battery-li-ion", LAMP), across("battery-alkaline", LAMP)),
    "safety-lead-acid": (across("battery-lead-acid", LAMP), across("battery-alkaline", LAMP)),
    "battery-load": (across("battery-9v", resistor(30)), across("battery-9v", resistor(620))),
    "battery-small": (across("battery-9v", resistor(100)), across("battery-9v", resistor(1000))),
    "battery-due": (
        across(("battery-9v", {"fitted": "2026-01-10"}), resistor(620)),
        across(("battery-9v", {"fitted": "2026-05-30"}), resistor(620)),
    ),
    "contact-current": (
        draw(
            {"G1": STRONG, "S1": "slide-on-on", "R1": resistor(10)},
            [("G1:+", "S1:11"), ("S1:14", "R1:1"), ("R1:2", "G1:-")],
        ),
        draw(
            {"G1": STRONG, "S1": "slide-on-on", "R1": resistor(100)},
            [("G1:+", "S1:11"), ("S1:14", "R1:1"), ("R1:2", "G1:-")],
        ),
    ),
}
TODAY = date(2026, 6, 1)


@pytest.mark.parametrize("rule", CASES)
def test_the_rule_speaks(rule):
    assert rule in rules(CASES[rule][0], today=TODAY)


@pytest.mark.parametrize("rule", CASES)
def test_the_rule_is_silent(rule):
    assert rule not in rules(CASES[rule][1], today=TODAY)


@pytest.mark.parametrize("length_m", [12.0, 18.0, 25.0])
@pytest.mark.parametrize(
    "load",
    [
        lamp(0.5),
        ("led-warm-white", {"in_parallel": 30}),
        ("building-filament", {"in_parallel": 8}),
        ("led-strip-warm-white", {"length": 1.0}),
        ("stall-motor", {"stalled_a": 0.4}),
    ],
    ids=lambda load: load[0],
)
def test_the_size_that_is_advised_for_a_long_run_would_do(load, length_m):
    first, second = (t.name for t in kinds()[load[0]].terminals[:2])

    def run(size):
        fields = {"length_m": length_m, "size": size}
        wires = [("G1:+", f"E1:{first}", fields), ("G1:-", f"E1:{second}", fields)]
        return draw({"G1": "supply-regulated", "E1": load}, wires)

    drop = found(run("28 AWG"), "wire-drop")
    assert drop.wires == ("w1", "w2")
    size = drop.mend.split("Use ")[1].split(" for")[0]
    assert "wire-drop" not in rules(run(size))


def test_the_fuse_that_is_advised_raises_no_finding():
    missing = found(across(STRONG, LAMP), "fuse-missing")
    rating = 0.5
    assert "500 mA" in missing.mend
    assert not {r for r in rules(fused(rating, STRONG)) if r.startswith("fuse")}


def test_a_fuse_in_the_return_guards_as_well():
    plan = draw(
        {"G1": STRONG, "F1": ("fuse", {"rating_a": 1.0}), "E1": LAMP},
        [("G1:+", "E1:1"), ("E1:2", "F1:1"), ("F1:2", "G1:-")],
    )
    assert "fuse-missing" not in rules(plan)


def test_twenty_lamps_with_the_same_trouble_are_one_finding():
    names = [f"E{i}" for i in range(20)]
    wires = [w for n in names for w in ((f"{n}:1", "X1:1"), (f"{n}:2", "X2:1"))]
    feed = [("G1:+", "X1:1", LONG), ("G1:-", "X2:1", LONG)]
    plan = draw(
        {"G1": stiff(12), "X1": "terminal-strip-4", "X2": "terminal-strip-4", **dict.fromkeys(names, LAMP)},
        feed + wires,
    )
    drop = found(plan, "wire-drop")
    assert set(drop.parts) == set(names)
    assert "15 more" in drop.what


def test_thin_wire_on_a_usual_adapter_is_no_danger():
    # 28 AWG on 2 A: well over the cautious limit for bundles, far from melting.
    ranks = {f.rule: f.rank for f in situation(across("supply-regulated", LAMP, **THIN)).findings}
    assert ranks["fuse-missing"] is Rank.NOTE
    assert "wire-current" not in ranks


def test_a_short_that_would_melt_the_wire_is_a_danger():
    ranks = {f.rule: f.rank for f in situation(across(STRONG, LAMP, **THIN)).findings}
    assert ranks["fuse-missing"] is Rank.DANGER


def test_supplies_in_a_ring_are_not_told_to_be_larger():
    assert "supply-in-limit" not in rules(CASES["supplies-opposed"][0])


@pytest.mark.parametrize("rule", ["supply-shut-off", "supply-in-limit"])
def test_a_supply_past_its_limit_is_told_how_large_it_should_be(rule):
    # Ohm’s law by hand: 12 V over 6 Ω and the supply’s own 0.05 Ω, with a fifth in hand.
    mend = found(CASES[rule][0], rule).mend
    wanted_a = float(mend.split("at least ")[1].split(" A")[0])
    assert wanted_a == pytest.approx(12 / 6.05 / 0.8, rel=0.02)


def test_a_bare_led_is_given_its_resistor_before_a_larger_supply():
    plan = draw(
        {"G1": ("supply-regulated", SHUTS), "E1": "led-red-bare"}, [("G1:+", "E1:A"), ("E1:K", "G1:-")]
    )
    mend = found(plan, "supply-shut-off").mend
    assert "resistor to -E1 first" in mend and "at least" not in mend
