"""The bound for circuits with too many positions is never beneath what solving all of them finds."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.networks import draw, kinds, resistor, stiff

from wiring.circuit.behaviours.feeding import fresh_battery
from wiring.plan.plan import Plan
from wiring.studies.positions.worst import worst_case

LOADS = (
    "led-white",
    "lamp-12v",
    "resistor",
    "sound-module",
    "constant-current-light",
    "stall-motor",
    "flasher",
)
SWITCHES = ("toggle-on-off", "push-to-make", "toggle-on-on", "push-to-break")


def tangle(seed: int) -> Plan:
    """A supply, a few hubs, loads and switches anywhere among them: now and then a switch that shorts."""
    pick = random.Random(seed)
    parts = {"G": pick.choice(("supply-regulated", "supply-unregulated", "battery-alkaline", stiff(12.0)))}
    hubs = [f"X{n}:1" for n in range(pick.randint(2, 5))]
    parts |= {hub.split(":")[0]: "distribution-block-6" for hub in hubs}
    wires = [("G:+", hubs[0], {"length_m": 2.0}), ("G:-", hubs[1], {"length_m": 2.0})]
    for n in range(pick.randint(2, 4)):
        key = parts[f"S{n}"] = pick.choice(SWITCHES)
        wires += [(f"S{n}:{t.name}", pick.choice(hubs)) for t in kinds()[key].terminals]
    for n in range(pick.randint(2, 5)):
        key = parts[f"L{n}"] = pick.choice(LOADS)
        one, other = (t.name for t in kinds()[key].terminals[:2])
        wires += [(f"L{n}:{one}", pick.choice(hubs)), (f"L{n}:{other}", pick.choice(hubs))]
    return draw(parts, wires, 0.5)


@given(st.integers(0, 100_000))
@settings(max_examples=40, deadline=None)
def test_no_set_exceeds_the_bound(seed: int) -> None:
    plan = tangle(seed)
    whole, bounded = (worst_case(plan, kinds(), {}, most_sets=most) for most in (10_000, 1))
    assert whole.exact
    for exact, proved in ((whole.wires, bounded.wires), (whole.supplies, bounded.supplies)):
        for name, worst in exact.items():
            assert worst.amps <= proved[name].at_most_a * (1 + 1e-6) + 1e-8, name
            assert proved[name].amps <= worst.amps * (1 + 1e-6) + 1e-8, name


def turnouts(number: int) -> Plan:
    """Stall motors, each reversed by a switch of two poles of its own."""
    parts = {"G": stiff(12.0)}
    wires = []
    for rail, end in (("P", "+"), ("N", "-")):
        parts |= {f"{rail}{n}": "distribution-block-6" for n in range(number)}
        wires += [(f"G:{end}", f"{rail}0:1")] + [
            (f"{rail}{n}:2", f"{rail}{n + 1}:1") for n in range(number - 1)
        ]
    for n in range(number):
        parts[f"M{n}"], parts[f"S{n}"] = "stall-motor", "toggle-on-on-2p"
        wires += [(f"P{n}:3", f"S{n}:14"), (f"N{n}:3", f"S{n}:24"), (f"S{n}:14", f"S{n}:22"),
                  (f"S{n}:24", f"S{n}:12"), (f"S{n}:11", f"M{n}:M1"), (f"S{n}:21", f"M{n}:M2")]  # fmt: skip
    return draw(parts, wires, 0.3)


@pytest.mark.parametrize("number", [5, 20])
def test_many_reversed_motors_are_bounded_closely(number: int) -> None:
    """Two to the twentieth sets times who moves: what is met lies within a per cent of what is proved."""
    motor = kinds()["stall-motor"].values({})
    found = worst_case(turnouts(number), kinds(), {}, most_sets=32)
    supply = found.supplies["G"]
    most = number * motor["stalled_a"] + max(motor["running_a"] - motor["stalled_a"], 0.0)
    assert supply.at_most_a == pytest.approx(most, rel=1e-9)
    assert 0.99 * supply.at_most_a < supply.amps <= supply.at_most_a
    own = next(w.id for w in turnouts(number).wires.values() if w.end.part == "M0" and w.end.terminal == "M1")
    assert found.wires[own].at_most_a == pytest.approx(max(motor["stalled_a"], motor["running_a"]), rel=1e-9)


def test_where_a_switch_may_short_the_supply_its_limit_is_the_bound() -> None:
    """The plateau of a limit rises by a hundredth over the supply's volts."""
    parts = {
        "G": ("supply-regulated", {"limit_a": 1.5, "on_overload": "holds current"}),
        "S": "toggle-on-off",
        "R": resistor(10),
    }
    plan = draw(parts, [("G:+", "S:13"), ("S:14", "G:-"), ("G:+", "R:1"), ("R:2", "G:-")])
    found = worst_case(plan, kinds(), {}, most_sets=1)
    assert found.supplies["G"].at_most_a == pytest.approx(1.5, rel=0.011)
    shorted = worst_case(plan, kinds(), {}).supplies["G"]
    assert shorted.exact and shorted.amps == pytest.approx(1.5, rel=0.011)


def test_a_battery_that_may_be_shorted_gives_what_its_own_ohms_let_through() -> None:
    parts = {"G": "battery-lead-acid", "S": "toggle-on-off", "R": resistor(10)}
    plan = draw(parts, [("G:+", "S:13"), ("S:14", "G:-"), ("G:+", "R:1"), ("R:2", "G:-")])
    emf_v, ohms = fresh_battery(kinds()["battery-lead-acid"].values({}))
    assert worst_case(plan, kinds(), {}, most_sets=1).supplies["G"].at_most_a == pytest.approx(emf_v / ohms)
