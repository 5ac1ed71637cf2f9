"""The run of wire from a supply to each load and back, and the volts lost on it."""

import heapq
from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.studies.joints import Joints, Link, ends
from wiring.studies.roles import LOADS, SOURCE_ENDS, THROUGH

_WAYS = Link.WIRE | Link.CLOSED | Link.FUSE | Link.RESISTOR | Link.DIODE | Link.LOAD


class Run(NamedTuple):
    """Wires from a supply to a load and back; the volts lost on them, and their share of the supply's."""

    load: PartId
    supply: PartId
    wires: tuple[WireId, ...]
    drop_v: float
    share: float


class _Way(NamedTuple):
    loads: int  # loads passed on the way; a way past fewer of them is the one that feeds
    drop_v: float
    back: tuple[TerminalRef, str] | None  # where it came from, and the wire ("" for none)


_Ways = dict[TerminalRef, _Way]


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
                    if one in plus and other in minus:
                        loads = plus[one].loads + minus[other].loads
                        drop = plus[one].drop_v + minus[other].drop_v
                        if best is None or (loads, drop) < best[:2]:
                            best = (loads, drop, source, one, other)
        if best is not None:
            found[part.id] = _run(part.id, best, sources, figures)
    return found


_Source = tuple[PartId, _Ways, _Ways]


def _ways_from_sources(
    plan: Plan, kinds: Mapping[str, Kind], figures: Figures, joints: Joints
) -> tuple[_Source, ...]:
    found: list[_Source] = []
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None and kind.behaviour in SOURCE_ENDS and part.id in figures.supplies:
            plus, minus = ends(part.id, SOURCE_ENDS[kind.behaviour])
            found.append((part.id, _ways(joints, plus, figures), _ways(joints, minus, figures)))
    return tuple(found)


def _ways(joints: Joints, start: TerminalRef, figures: Figures) -> _Ways:
    """Dijkstra over loads passed first, volts lost second."""
    done: _Ways = {}
    heap: list[tuple[int, float, TerminalRef, tuple[TerminalRef, str] | None]] = [(0, 0.0, start, None)]
    while heap:
        loads, drop, here, back = heapq.heappop(heap)
        if here in done:
            continue
        done[here] = _Way(loads, drop, back)
        for to, link, via in joints.edges.get(here, ()):
            if to in done or not link & _WAYS:
                continue
            if link == Link.WIRE:
                figure = figures.wires.get(via)
                lost = abs(figure.drop_v) if figure is not None else 0.0
                heapq.heappush(heap, (loads, drop + lost, to, (here, via)))
            else:
                heapq.heappush(heap, (loads + (link == Link.LOAD), drop, to, (here, "")))
    return done


def _run(
    load: PartId,
    best: tuple[int, float, PartId, TerminalRef, TerminalRef],
    sources: tuple[_Source, ...],
    figures: Figures,
) -> Run:
    _, drop, supply, one, other = best
    plus, minus = next((p, m) for s, p, m in sources if s == supply)
    wires = (*reversed(_wires_back(plus, one)), *_wires_back(minus, other))
    volts = abs(figures.supplies[supply].volts_v)
    return Run(load, supply, wires, drop, drop / volts if volts > 0 else 0.0)


def _wires_back(ways: _Ways, ref: TerminalRef) -> list[WireId]:
    wires: list[WireId] = []
    back = ways[ref].back
    while back is not None:
        if back[1]:
            wires.append(back[1])
        back = ways[back[0]].back
    return wires
