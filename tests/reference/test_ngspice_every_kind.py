"""Two hundred generated networks of every kind against ngspice, many in one run of the program.

Every node within 0.1 mV or a hundredth of a per cent. Of those on AC, each a run in time, three are run with
the other tests; set UNDERBOARD_ALL_NETWORKS=1 for all.
"""

import os
from pathlib import Path

import numpy as np
import pytest
from support.every_kind import INLINE, LARGER_PLUGS, ON_AC_ONLY, layout
from support.ngspice import needs_ngspice, run, run_many

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.spice import netlist, node_names
from wiring.circuit.states import Settled, settle
from wiring.plan.plan import Plan

pytestmark = [pytest.mark.ngspice, needs_ngspice]
ALL = bool(os.environ.get("UNDERBOARD_ALL_NETWORKS"))
BATCH, BATCHES = 25, 9
ON_AC = 24
NEAR_V, NEAR = 1e-4, 1e-4


def solved(plan: Plan) -> Settled:
    settled = settle(plan, builtin_kinds(), {}, None)
    assert not settled.reading.failed.any()
    return settled


def compare(settled: Settled, theirs: dict[str, float], prefix: str = "") -> None:
    for node, called in node_names(settled).items():
        ours = float(settled.reading.nodes[node])
        assert theirs[prefix + called] == pytest.approx(ours, rel=NEAR, abs=NEAR_V), called


@pytest.mark.parametrize("batch", range(BATCHES))
def test_operating_points_of_networks_of_every_kind(batch: int, tmp_path: Path) -> None:
    plans = [layout(seed) for seed in range(batch * BATCH, (batch + 1) * BATCH)]
    settled = [solved(plan) for plan in plans]
    for one, theirs in zip(settled, run_many([netlist(s) for s in settled], tmp_path), strict=True):
        compare(one, theirs)


@pytest.mark.parametrize("seed", range(ON_AC if ALL else 3))
def test_rms_of_networks_on_ac(seed: int, tmp_path: Path) -> None:
    settled = solved(layout(seed, 2, ON_AC_ONLY))
    compare(settled, run(netlist(settled), tmp_path), "rms_")


def test_every_kind_is_among_them() -> None:
    seeds = range(BATCH * BATCHES)
    met = {part.kind for seed in seeds for part in layout(seed).parts.values()} | {ON_AC_ONLY}
    assert met == set(builtin_kinds())
    assert {*INLINE, *LARGER_PLUGS} <= met and np.size(seeds) >= 200
