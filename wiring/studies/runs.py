"""The run of wire from a supply to each load and back, and the volts lost on it."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.studies.joints import Joints, Link, ends
from wiring.studies.roles import LOADS, SOURCE_ENDS, THROUGH
from wiring.studies.ways import Ways, ways_from, wires_back

_WAYS = Link.WIRE | Link.CLOSED | Link.FUSE | Link.RESISTOR | Link.DIODE | Link.LOAD


class Run(NamedTuple):
    """Wires from a supply to a load and back; the volts lost on them, and their share of the supply's."""

    load: PartId
    supply: PartId
    wires: tuple[WireId, ...]
    drop_v: float
    share: float


def runs_of(plan: Plan, kinds: Mapping[str, Kind], figures: Figures, joints: Joints) -> dict[PartId, Run]:
    """Return the run of each load that draws current, from the supply that feeds it most directly.

    On a mesh every way round loses the same volts (Kirchhoff), so one way stands for all.
    """
    sources = _ways_from_sources(plan, kinds, figures, joints)
    found: dict[PartId, Run] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        reading = figures.parts.get(part.id)
        if kind is None or reading is None or kind.behaviour not in LOADS or abs(reading.current_a) < 1e-5:
            continue
        best: tuple[int, float, PartId, TerminalRef, TerminalRef] | None = None
        for source, plus, minus in sources:
            for pair in THROUGH[kind.behaviour]:
                a, b = ends(part.id, pair)
                for one, other in ((a, b), (b, a)):
                    out, home = plus.reached(one), minus.reached(other)
                    if out is not None and home is not None:
                        loads, drop = out[0] + home[0], out[1] + home[1]
                        if best is None or (loads, drop) < best[:2]:
                            best = (loads, drop, source, one, other)
        if best is not None:
            found[part.id] = _run(part.id, best, sources, figures)
    return found


_Source = tuple[PartId, Ways, Ways]


def _ways_from_sources(
    plan: Plan, kinds: Mapping[str, Kind], figures: Figures, joints: Joints
) -> tuple[_Source, ...]:
    costs = {wire: abs(figure.drop_v) for wire, figure in figures.wires.items()}
    found: list[_Source] = []
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None and kind.behaviour in SOURCE_ENDS and part.id in figures.supplies:
            plus, minus = ends(part.id, SOURCE_ENDS[kind.behaviour])
            out, home = (ways_from(joints, end, _WAYS, costs) for end in (plus, minus))
            found.append((part.id, out, home))
    return tuple(found)


def _run(
    load: PartId,
    best: tuple[int, float, PartId, TerminalRef, TerminalRef],
    sources: tuple[_Source, ...],
    figures: Figures,
) -> Run:
    _, drop, supply, one, other = best
    plus, minus = next((p, m) for s, p, m in sources if s == supply)
    wires = (*reversed(wires_back(plus, one)), *wires_back(minus, other))
    volts = abs(figures.supplies[supply].volts_v)
    return Run(load, supply, wires, drop, drop / volts if volts > 0 else 0.0)
