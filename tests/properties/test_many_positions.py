"""Many sets of positions side by side read what each reads alone."""

import itertools
import random

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from support.networks import draw, kinds, lamp_street, resistor
from support.random_networks import networks

from wiring.circuit.many_positions import solve_positions
from wiring.circuit.solve import solve
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

SOME = settings(max_examples=60, suppress_health_check=list(HealthCheck))


def every_set(plan: Plan, most: int, seed: int = 0) -> list[Positions]:
    known = kinds()
    names = {p.id: [n.name for n in known[p.kind].positions] for p in plan.parts.values()}
    names = {part: given for part, given in names.items() if given}
    if np.prod([float(len(n)) for n in names.values()]) <= most:
        return [dict(zip(names, one, strict=True)) for one in itertools.product(*names.values())]
    pick = random.Random(seed)
    return [{part: pick.choice(given) for part, given in names.items()} for _ in range(most)]


def check(plan: Plan, sets: list[Positions]) -> None:
    read = solve_positions(plan, kinds(), sets)
    for row, positions in enumerate(sets):
        alone = solve(plan, kinds(), positions)
        for column, wire in enumerate(read.wires):
            if wire in alone.wires:
                assert read.wire_a[row, column] == pytest.approx(
                    alone.wires[wire].current_a, rel=1e-6, abs=1e-7
                )
        for column, supply in enumerate(read.supplies):
            assert read.found[row, column] == (supply in alone.supplies)
            if supply in alone.supplies:
                one = alone.supplies[supply]
                assert read.supply_v[row, column] == pytest.approx(one.volts_v, rel=1e-6, abs=1e-6)
                assert read.supply_a[row, column] == pytest.approx(one.current_a, rel=1e-6, abs=1e-6)
                assert read.limited[row, column] == one.limited


@SOME
@given(networks(largest=7))
def test_any_plan_in_many_positions(plan: Plan) -> None:
    check(plan, every_set(plan, 9))


def test_switches_along_a_street() -> None:
    street = lamp_street(6)
    switched = draw({"S1": "toggle-on-off-2p", "S2": "toggle-on-on", "E9": "led-red", "F9": "fuse"}, [
        ("X2:1", "S1:13"), ("S1:14", "E9:A"), ("X2:2", "S1:23"), ("S1:24", "E9:K"),
        ("X4:1", "S2:11"), ("S2:12", "F9:1"), ("F9:2", "X6:1"), ("S2:14", "X5:1"),
    ], 0.4)  # fmt: skip
    wires = {**street.wires, **{f"s{name}": wire for name, wire in switched.wires.items()}}
    wires = {
        name: type(wire)(**{**{f: getattr(wire, f) for f in wire.__struct_fields__}, "id": name})
        for name, wire in wires.items()
    }
    plan = street.with_changes(parts={**street.parts, **switched.parts}, wires=wires)
    check(plan, every_set(plan, 64))


def test_an_ac_supply_with_open_ends_keeps_its_volts() -> None:
    plan = draw({"G1": "supply-ac", "S1": "toggle-on-off-2p"}, [("G1:~1", "S1:14"), ("S1:14", "S1:23")])
    check(plan, every_set(plan, 4))
    assert solve_positions(plan, kinds(), [{}]).supply_v.min() > 16.0


def test_no_sets_and_one_set() -> None:
    plan = lamp_street(2)
    assert solve_positions(plan, kinds(), []).wire_a.shape == (0, len(plan.wires))
    check(plan, [{}])


@pytest.mark.parametrize("style", ["holds current", "folds back", "shuts off"])
def test_a_supply_that_some_sets_overload(style: str) -> None:
    supply = ("supply-regulated", {"on_overload": style, "limit_a": 0.5})
    parts = {"G1": supply, "S1": "toggle-on-off", "S2": "toggle-on-off"}
    plan = draw({**parts, "R1": resistor(30.0), "R2": resistor(30.0)}, [
        ("G1:+", "S1:13"), ("S1:14", "R1:1"), ("R1:2", "G1:-"),
        ("G1:+", "S2:13"), ("S2:14", "R2:1"), ("R2:2", "G1:-"),
    ], 0.5)  # fmt: skip
    sets = every_set(plan, 16)
    check(plan, sets)
    assert solve_positions(plan, kinds(), sets).limited.any()
