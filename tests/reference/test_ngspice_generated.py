"""Sixty-four generated layouts against ngspice: streets, rings, one or two supplies, mixed loads."""

import random
from pathlib import Path
from typing import Any

import pytest
from support.networks import Given, draw
from support.ngspice import needs_ngspice, run

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.spice import netlist, node_names
from wiring.circuit.states import settle
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

pytestmark = [pytest.mark.ngspice, needs_ngspice]
LOADS: tuple[tuple[str, str, str], ...] = (
    ("led-red", "A", "K"), ("led-white", "A", "K"), ("led-warm-white-bare", "A", "K"), ("lamp-12v", "1", "2"),
    ("building-filament", "1", "2"), ("flasher", "+", "-"), ("constant-current-light", "+", "-"),
    ("sound-module", "+", "-"), ("led-strip-warm-white", "+", "-"), ("stall-motor", "M1", "M2"),
    ("resistor", "1", "2"), ("diode", "A", "K"), ("servo", "+", "-"),
)  # fmt: skip
SUPPLIES: tuple[Given, ...] = (
    "battery-alkaline", "battery-9v", "battery-nimh", "supply-unregulated", "supply-regulated",
    ("supply-regulated", {"on_overload": "holds current", "limit_a": 0.3}),
    ("supply-regulated", {"on_overload": "folds back", "limit_a": 0.5}),
)  # fmt: skip


def layout(seed: int) -> Plan:
    """A pair of buses of 3 to 18 places, sometimes closed to a ring or fed twice; loads anywhere on it."""
    pick = random.Random(seed)
    places = pick.randint(3, 18)
    parts: dict[str, Given] = {"G1": pick.choice(SUPPLIES)}
    wires: list[tuple[Any, ...]] = []
    for rail in "PN":
        for place in range(places):
            parts[f"{rail}{place}"] = "distribution-block-6"
        pairs = [(place, place + 1) for place in range(places - 1)]
        if seed % 3 == 0:
            pairs.append((places - 1, 0))
        if seed % 5 == 0:
            pairs.append((pick.randrange(places), pick.randrange(places)))
        for one, other in pairs:
            size = {"length_m": pick.uniform(0.2, 4.0), "size": pick.choice(("16 AWG", "22 AWG", "0.5 mm²"))}
            wires.append((f"{rail}{one}:1", f"{rail}{other}:2", size))
    wires += [("G1:+", "P0:3"), ("G1:-", "N0:3")]
    if seed % 4 == 0:
        parts["G2"] = pick.choice(SUPPLIES)
        wires += [("G2:+", f"P{places - 1}:3", {"length_m": 1.0}), ("G2:-", f"N{places - 1}:3")]
    for number in range(pick.randint(2, 20)):
        kind, plus, minus = pick.choice(LOADS)
        parts[f"L{number}"] = kind
        ends = [f"P{pick.randrange(places)}:4", f"N{pick.randrange(places)}:4"]
        if pick.random() < 0.1:
            ends.reverse()
        drop = {"length_m": pick.uniform(0.1, 1.5), "size": "24 AWG"}
        wires += [(ends[0], f"L{number}:{plus}", drop), (ends[1], f"L{number}:{minus}", drop)]
    return draw(parts, wires, 0.3)


@pytest.mark.parametrize("seed", range(64))
def test_every_node_is_that_of_ngspice(seed: int, tmp_path: Path) -> None:
    plan, kinds = layout(seed), builtin_kinds()
    settled = settle(plan, kinds, in_use(plan, kinds), None)
    assert not settled.reading.failed.any()
    theirs = run(netlist(settled), tmp_path)
    for node, called in node_names(settled).items():
        ours = settled.reading.nodes[node]
        assert theirs[called] == pytest.approx(ours, rel=1e-6, abs=1e-6), called
