"""What a battery's circuit takes at each voltage, the battery itself replaced by an ideal source."""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.gathering import Columns, columns, part_figure
from wiring.circuit.islands import Island
from wiring.circuit.linear import Floats
from wiring.circuit.network import Network
from wiring.circuit.newton import newton_lanes
from wiring.circuit.reading import resting
from wiring.circuit.states import Settled, settle
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

IDEAL_OHMS = 1e-7


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
    if _decides_for_itself(settled, parts, idle=source not in island.core):
        points = [_whole(plan, kinds, positions, battery, float(v)) for v in volts]
    else:
        points = _sweep(assembly, island, source, volts)
    dark = columns(resting(assembly))
    lamps = {p: np.zeros_like(volts) for p in parts if _light(assembly, dark, p) is not None}
    amps, found = np.zeros_like(volts), np.zeros(volts.shape, dtype=np.bool_)
    for row, (given, read) in enumerate(points):
        if read is None:
            continue
        amps[row], found[row] = given, True
        for part, light in lamps.items():
            light[row] = _light(assembly, read, part) or 0.0
    return LoadLine(volts, amps, lamps, found, parts)


def _decides_for_itself(settled: Settled, parts: tuple[PartId, ...], idle: bool) -> bool:
    """Whether relays, limits, AC, or others that feed beside an idle battery make it more than a sweep."""
    compiled = [settled.assembly.parts[part] for part in parts]
    if idle and sum(c.behaviour.feeds for c in compiled) > 1:
        return True
    return any(c.kind.behaviour in ("relay", "supply_ac", "supply_regulated", "converter") for c in compiled)


def _whole(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, battery: PartId, volts: float
) -> tuple[float, Columns | None]:
    settled = settle(plan, kinds, positions, None, {battery: (volts, IDEAL_OHMS, np.inf, 1.0)})
    source = settled.assembly.spans[battery][0]
    if settled.reading.failed[source] or settled.assembly.a[source] == settled.assembly.b[source]:
        return 0.0, None
    return -float(settled.reading.mean_amps[source]), columns(settled.reading)


def _sweep(
    assembly: Assembly, island: Island, source: int, volts: Floats
) -> list[tuple[float, Columns | None]]:
    """Solve the battery's island with both its terminals held, at all voltages side by side."""
    if source not in island.core:
        idle = source not in island.loops
        return [(0.0, columns(resting(assembly)) if idle else None) for _ in volts]
    core = island.core[island.core != source]
    plus, minus = int(assembly.a[source]), int(assembly.b[source])
    free = island.core_nodes[(island.core_nodes != plus) & (island.core_nodes != minus)]
    place = np.empty(assembly.node_count, dtype=np.intp)
    place[np.append(free, [minus, plus])] = np.arange(len(free) + 2)
    a, b = place[assembly.a[core]], place[assembly.b[core]]
    laws, values = assembly.laws[core], assembly.values[core]
    lanes = [Network(laws, a, b, values, len(free), np.array([0.0, volt])) for volt in volts]
    points: list[tuple[float, Columns | None]] = []
    for solved in newton_lanes(lanes):
        if not solved.converged:
            points.append((0.0, None))
            continue
        reading = resting(assembly)
        reading.volts[core] = solved.volts
        reading.amps[core] = reading.mean_amps[core] = solved.amps
        out = solved.amps[assembly.a[core] == plus].sum() - solved.amps[assembly.b[core] == plus].sum()
        points.append((float(out), columns(reading)))
    return points


def _light(assembly: Assembly, read: Columns, part: PartId) -> float | None:
    span = assembly.spans[part]
    if not span:
        return None
    return part_figure(assembly, read, assembly.parts[part], span, on_ac=False).light
