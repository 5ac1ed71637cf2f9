"""The bound holds with several sources, relays, converters, diodes, AC and smoothing capacitors too."""

import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.networks import draw, kinds, resistor, stiff

from wiring.circuit.solve import solve
from wiring.plan.plan import Plan
from wiring.studies.positions.bound import Bound
from wiring.studies.positions.options import options
from wiring.studies.positions.worst import WorstCase, worst_case

LOADS = ("led-white", "lamp-12v", "resistor", "sound-module", "constant-current-light", "flasher", "relay")
SWITCHES = ("toggle-on-off", "push-to-make", "toggle-on-on")
LEAK_A = 1e-6  # through what blocks; the bound leaves it out
FEEDS = ("supply-regulated", "supply-unregulated", "battery-alkaline", "battery-lead-acid", stiff(9.0))


def tangle(seed: int, *, swings: bool) -> Plan:
    """Two or three sources anywhere among a few hubs, with loads, diodes, a relay and switches among them."""
    pick = random.Random(seed)
    hubs = [f"X{n}:1" for n in range(pick.randint(3, 5))]
    parts = {hub.split(":")[0]: "distribution-block-12" for hub in hubs}
    wires = []

    def put(name: str, kind: object, ends: list[str]) -> None:
        parts[name] = kind
        wires.extend((f"{name}:{end}", pick.choice(hubs)) for end in ends)

    for n in range(pick.randint(0, 1) if swings else pick.randint(1, 3)):
        put(f"G{n}", pick.choice(FEEDS), ["+", "-"])
    if swings:
        put("A0", "supply-ac", ["~1", "~2"])
    for n in range(pick.randint(0, 2)):
        put(f"D{n}", "diode", ["A", "K"])
    if pick.random() < 0.5:
        put("T0", "rectifier", ["~1", "~2", "+", "-"])
    if pick.random() < 0.6 and not swings:
        put("C0", "converter-5v", [t.name for t in kinds()["converter-5v"].terminals])
    for n in range(1 if swings else pick.randint(1, 3)):
        key = pick.choice(SWITCHES)
        put(f"S{n}", key, [t.name for t in kinds()[key].terminals])
    for n in range(pick.randint(2, 5)):
        key = pick.choice(LOADS)
        put(f"L{n}", key, [t.name for t in kinds()[key].terminals[: 5 if key == "relay" else 2]])
    return draw(parts, wires, 0.5)


def check(plan: Plan) -> WorstCase:
    whole, bounded = (worst_case(plan, kinds(), {}, most_sets=most) for most in (10_000, 1))
    tables = (whole.wires, bounded.wires), (whole.supplies, bounded.supplies), (whole.fuses, bounded.fuses)
    for exact, proved in tables:
        for name, worst in exact.items():
            assert worst.amps <= proved[name].at_most_a * (1 + 1e-6) + LEAK_A, name
    return bounded


@given(st.integers(0, 1_000_000))
@settings(max_examples=6, deadline=None)
def test_no_set_of_several_sources_exceeds_the_bound(seed: int) -> None:
    bounded = check(tangle(seed, swings=False))
    assert all(math.isfinite(worst.at_most_a) for worst in bounded.wires.values())


@given(st.integers(0, 1_000_000))
@settings(max_examples=2, deadline=None)
def test_no_set_with_alternating_current_exceeds_the_bound(seed: int) -> None:
    check(tangle(seed, swings=True))


def test_two_supplies_on_one_return_are_bounded_by_what_the_loads_take() -> None:
    """Their volts do not add up where the minuses are joined: 12 V and 5 V reach hardly farther than 12 V."""
    parts = {"G1": stiff(12.0), "G2": stiff(5.0), "X": "distribution-block-12"}
    wires = [("G1:-", "X:1"), ("G2:-", "X:2")]
    for n, supply in enumerate(("G1", "G1", "G2", "G2")):
        parts |= {f"S{n}": "toggle-on-off", f"R{n}": resistor(24.0)}
        wires += [(f"{supply}:+", f"S{n}:13"), (f"S{n}:14", f"R{n}:1"), (f"R{n}:2", f"X:{n + 3}")]
    plan = draw(parts, wires, 0.5)
    found = worst_case(plan, kinds(), {}, most_sets=1)
    assert found.supplies["G1"].at_most_a < 4 * 12.0 / 24.0 * 1.05
    own = next(w.id for w in plan.wires.values() if w.start.part == "S2" and w.start.terminal == "14")
    assert found.wires[own].at_most_a == pytest.approx(12.0 / 24.0, rel=0.05)


def test_a_converter_takes_in_no_more_than_its_limit_over_its_efficiency() -> None:
    """Twenty lamps behind a converter, each switched: two to the twentieth sets."""
    parts = {
        "G": stiff(12.0),
        "C": "converter-5v",
        "X1": "distribution-block-12",
        "X2": "distribution-block-12",
    }
    wires = [("G:+", "C:+"), ("G:-", "C:-"), ("C:O", "X1:1"), ("C:-", "X2:1")]
    for n in range(10):
        parts |= {f"S{n}": "toggle-on-off", f"R{n}": resistor(4.0)}
        wires += [(f"X1:{n + 2}", f"S{n}:13"), (f"S{n}:14", f"R{n}:1"), (f"R{n}:2", f"X2:{n + 2}")]
    values = kinds()["converter-5v"].values({})
    found = worst_case(draw(parts, wires, 0.2), kinds(), {})
    most_in_a = values["volts"] * values["limit_a"] / values["min_v"]
    most_in_a = most_in_a / min(values["efficiency"], values["half_efficiency"]) + values["idle_a"]
    assert not found.supplies["G"].exact
    assert found.supplies["C"].at_most_a == pytest.approx(values["limit_a"], rel=0.04)
    assert found.supplies["G"].amps < found.supplies["G"].at_most_a <= most_in_a * (1 + 1e-9)


def test_smoothed_houses_on_one_transformer_are_bounded() -> None:
    """The charging current comes in short waves: its RMS is more than what the lamps take, and bounded."""
    parts, wires = {"G": "supply-ac"}, []
    for n in range(2):
        parts |= {f"T{n}": "smoothed-rectifier", f"S{n}": "toggle-on-off", f"R{n}": resistor(100.0)}
        wires += [("G:~1", f"T{n}:~1"), ("G:~2", f"T{n}:~2"), (f"T{n}:+", f"S{n}:13")]
        wires += [(f"S{n}:14", f"R{n}:1"), (f"R{n}:2", f"T{n}:-")]
    plan = draw(parts, wires, 0.5)
    lit = solve(plan, kinds(), {"S0": "on", "S1": "on"}).supplies["G"].current_a
    bound = Bound(plan, kinds(), {}, options(plan, kinds(), {}))
    assert lit <= bound.of_supply("G") < 4 * lit


def test_a_changeover_between_two_batteries_never_joins_them() -> None:
    parts = {"G1": "battery-lead-acid", "G2": "battery-lead-acid", "S": "toggle-on-on", "R": resistor(12.0)}
    wires = [("G1:+", "S:12"), ("G2:+", "S:14"), ("S:11", "R:1"), ("R:2", "G1:-"), ("G1:-", "G2:-")]
    found = worst_case(draw(parts, wires, 0.5), kinds(), {}, most_sets=1)
    assert found.supplies["G1"].at_most_a < 1.5
    joined = worst_case(draw(parts, [*wires, ("G1:+", "G2:+")], 0.5), kinds(), {}, most_sets=1)
    assert joined.supplies["G1"].at_most_a > 5.0


def test_fewer_sets_are_tried_where_each_takes_long() -> None:
    """Six switches behind one smoothed rectifier: thrown one by one, put together, and bounded."""
    parts, wires = {"G": "supply-ac", "T": "smoothed-rectifier", "X": "distribution-block-12"}, []
    wires += [("G:~1", "T:~1"), ("G:~2", "T:~2"), ("T:+", "X:1")]
    for n in range(6):
        parts |= {f"S{n}": "toggle-on-off", f"R{n}": resistor(300.0)}
        wires += [(f"X:{n + 2}", f"S{n}:13"), (f"S{n}:14", f"R{n}:1"), (f"R{n}:2", "T:-")]
    found = worst_case(draw(parts, wires, 0.2), kinds(), {})
    assert found.sets_solved < 20
    supply = found.supplies["G"]
    assert not supply.exact and supply.positions == {f"S{n}": "on" for n in range(6)}
    assert supply.amps < supply.at_most_a < 5 * supply.amps
