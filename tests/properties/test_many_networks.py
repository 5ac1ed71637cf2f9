"""Two thousand networks drawn by chance, ten side by side in a plan: figures or a finding for each.

A network is named by its seed: `draw(*network_of(seed))` is it alone. UNDERBOARD_NETWORKS=20000 runs more.
"""

import os
from typing import Any

import pytest
from support.networks import Given, draw
from support.random_networks import network_of
from support.solved import check_figures, check_power, check_problems, unsolved

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.figures import Figures
from wiring.circuit.gathering import figures_of
from wiring.circuit.states import Settled, settle
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

NETWORKS = int(os.environ.get("UNDERBOARD_NETWORKS", "2000"))
TOGETHER = 10  # networks a plan
BATCHES = 20
ALONE = 10  # networks a batch that are solved by themselves too


def side_by_side(seeds: range) -> Plan:
    parts: dict[str, Given] = {}
    wires: list[tuple[Any, ...]] = []
    for seed in seeds:
        mine = network_of(seed, f"N{seed}P")
        parts |= mine[0]
        wires += mine[1]
    return draw(parts, wires)


def check(plan: Plan, seeds: range) -> Figures:
    """Every part has figures or is named in a problem; Kirchhoff and Tellegen hold in each network."""
    kinds = builtin_kinds()
    settled = settle(plan, kinds, in_use(plan, kinds), None)
    figures = figures_of(settled)
    check_figures(plan, figures)
    check_problems(plan, figures)
    check_power(plan, figures, whose)
    missing = set(plan.parts) - set(figures.parts) - unsolved(figures)
    assert not missing, f"neither figures nor a finding: {sorted(missing)}"
    check_residuals(settled, seeds)
    return figures


def check_residuals(settled: Settled, seeds: range) -> None:
    """What is left over at any node is at most a millionth of the largest current of its network."""
    plan = settled.assembly.plan
    largest: dict[str, float] = {}
    for owner, amps in zip(settled.assembly.owners, settled.reading.amps.tolist(), strict=True):
        network = network_called(plan, owner)
        largest[network] = max(largest.get(network, 0.0), abs(amps))
    for first in settled.islands.references.tolist():
        island = settled.islands.fed[int(settled.islands.of_node[first])]
        network = network_called(plan, settled.assembly.owners[int(island.branches[0])])
        left = float(settled.reading.residual_a[first])
        assert left <= 1e-6 * largest[network] + 1e-9, f"network {network} of {seeds} leaves {left} A"


def network_called(plan: Plan, owner: str) -> str:
    return whose(plan.wires[owner].start.part if owner in plan.wires else owner)


def whose(part: str) -> str:
    return part[1 : part.index("P")]


@pytest.mark.parametrize("batch", range(BATCHES))
def test_any_network_has_figures_or_a_finding(batch: int) -> None:
    each = NETWORKS // BATCHES
    alone = 0
    for first in range(batch * each, (batch + 1) * each, TOGETHER):
        seeds = range(first, min(first + TOGETHER, (batch + 1) * each))
        together = check(side_by_side(seeds), seeds)
        if alone < ALONE:  # neighbours change nothing
            alone += 2
            for seed in seeds[:2]:
                own = check(side_by_side(range(seed, seed + 1)), range(seed, seed + 1))
                for part, figure in own.parts.items():
                    near = together.parts[part]
                    assert near.current_a == pytest.approx(figure.current_a, rel=1e-5, abs=1e-6), part
                    assert near.volts_v == pytest.approx(figure.volts_v, rel=1e-5, abs=1e-5), part


@pytest.mark.parametrize("seed", [339, 525, 1268, 1584, 2614, 3319])
def test_a_capacitor_into_which_next_to_nothing_flows_comes_to_rest(seed: int) -> None:
    """Smoothed rectifiers whose only current is the leak of what blocks: picoamperes, but a steady state."""
    assert not unsolved(check(side_by_side(range(seed, seed + 1)), range(seed, seed + 1)))
