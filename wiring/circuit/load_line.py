"""What a battery's circuit takes at each voltage, the battery itself replaced by an ideal source."""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.assembly import Assembly
from wiring.circuit.figures import PartFigure
from wiring.circuit.gathering import part_figure
from wiring.circuit.islands import Island
from wiring.circuit.linear import Floats
from wiring.circuit.network import Network
from wiring.circuit.newton import newton
from wiring.circuit.reading import Reading, resting
from wiring.circuit.states import Settled, settle
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

IDEAL_OHMS = 1e-6
WARM_STEPS = 12


class LoadLine(NamedTuple):
    """Amperes the battery gives at each voltage, and the light of every lamp it feeds, relative to rated."""

    volts: NDArray[np.float64]
    amps: NDArray[np.float64]
    lights: Mapping[PartId, NDArray[np.float64]]
    solved: NDArray[np.bool_]  # False where no steady state was found: amps and lights are 0 there
    parts: tuple[PartId, ...]  # everything in the battery's circuit in these positions, the battery first


def load_line(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, battery: PartId, volts: NDArray[np.float64]
) -> LoadLine:
    """Return the load line of a battery's circuit; other circuits are left out.

    `volts` in V at the battery's terminals, each above 0. KeyError if the plan has no such battery.
    """
    volts = np.asarray(volts, dtype=np.float64)
    settled = settle(plan, kinds, positions, None)
    assembly = settled.assembly
    span = assembly.spans[battery]
    if not span:
        return LoadLine(volts, np.zeros_like(volts), {}, np.zeros(volts.shape, dtype=np.bool_), (battery,))
    source = span[0]
    island = settled.islands.fed[int(settled.islands.of_node[assembly.a[source]])]
    owners = dict.fromkeys(assembly.owners[branch] for branch in island.branches)
    parts = (battery, *(o for o in owners if o in assembly.parts and o != battery))
    if _decides_for_itself(settled, parts):
        points = [_whole(plan, kinds, positions, battery, float(v)) for v in volts]
    else:
        points = list(_sweep(assembly, island, source, volts))
    lamps = {p: np.zeros_like(volts) for p in parts if _shines(assembly, p)}
    amps, found = np.zeros_like(volts), np.zeros(volts.shape, dtype=np.bool_)
    for row, (given, reading) in enumerate(points):
        if reading is None:
            continue
        amps[row], found[row] = given, True
        for part, light in lamps.items():
            light[row] = _figure(assembly, reading, part).light or 0.0
    return LoadLine(volts, amps, lamps, found, parts)


def _decides_for_itself(settled: Settled, parts: tuple[PartId, ...]) -> bool:
    """Whether relays, limited supplies or AC make the circuit more than a sweep of one network."""
    behaviours = {settled.assembly.parts[part].kind.behaviour for part in parts}
    return bool(behaviours & {"relay", "supply_ac", "supply_regulated"})


def _whole(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, battery: PartId, volts: float
) -> tuple[float, Reading | None]:
    settled = settle(plan, kinds, positions, None, {battery: (volts, IDEAL_OHMS, np.inf, 1.0)})
    source = settled.assembly.spans[battery][0]
    if settled.reading.failed[source]:
        return 0.0, None
    return -float(settled.reading.mean_amps[source]), settled.reading


def _sweep(
    assembly: Assembly, island: Island, source: int, volts: Floats
) -> list[tuple[float, Reading | None]]:
    """Solve the battery's island with both its terminals held, each point from the one before."""
    if source not in island.core:
        idle = source not in island.loops
        return [(0.0, resting(assembly) if idle else None) for _ in volts]
    core = island.core[island.core != source]
    plus, minus = int(assembly.a[source]), int(assembly.b[source])
    free = island.core_nodes[(island.core_nodes != plus) & (island.core_nodes != minus)]
    place = np.empty(assembly.node_count, dtype=np.intp)
    place[np.append(free, [minus, plus])] = np.arange(len(free) + 2)
    a, b = place[assembly.a[core]], place[assembly.b[core]]
    points: list[tuple[float, Reading | None]] = []
    shape: Network | None = None
    warm: Floats | None = None
    for volt in volts:
        held = np.array([0.0, volt])
        network = Network(assembly.laws[core], a, b, assembly.values[core], len(free), held)
        network.share_pattern(shape)
        shape = network
        solved = (
            newton(network, warm, WARM_STEPS) if warm is not None and network.monotone else newton(network)
        )
        if not solved.converged:
            solved = newton(network)
        if not solved.converged:
            points.append((0.0, None))
            continue
        warm = solved.x
        reading = resting(assembly)
        reading.volts[core], reading.amps[core] = solved.volts, solved.amps
        reading.mean_amps[core], reading.power[core] = solved.amps, solved.volts * solved.amps
        out = solved.amps[assembly.a[core] == plus].sum() - solved.amps[assembly.b[core] == plus].sum()
        points.append((float(out), reading))
    return points


def _figure(assembly: Assembly, reading: Reading, part: PartId) -> PartFigure:
    return part_figure(assembly, reading, assembly.parts[part], assembly.spans[part], on_ac=False)


def _shines(assembly: Assembly, part: PartId) -> bool:
    return bool(assembly.spans[part]) and _figure(assembly, resting(assembly), part).light is not None
