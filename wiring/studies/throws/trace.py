"""The way from a coil to what feeds it: a discharge unit or a supply, and the buttons to press for it."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.best_ways import ways_from
from wiring.studies.joints import LASTING, STIFF, Joints, Link
from wiring.studies.roles import SOURCE_ENDS
from wiring.studies.ways import Ways, wires_back

FEEDS: Mapping[str, tuple[str, str]] = {"discharge_unit": ("O", "-"), **SOURCE_ENDS}
COIL_ENDS = ("N", "R")
_PRESSING = Link.MOMENTARY | Link.DIODE
# First as the switches stand and with a button; only where that leads nowhere, with switches thrown too.
_REACHES = (STIFF | _PRESSING, LASTING | _PRESSING)


class Trace(NamedTuple):
    """How one coil of a motor is fed."""

    motor: PartId
    end: str  # "N" or "R"
    source: PartId
    is_unit: bool
    presses: Mapping[PartId, str]  # switches and the position each must be held or thrown in
    wires: tuple[WireId, ...]  # from the source to the coil and back


class Sources(NamedTuple):
    """All discharge units and supplies of a plan with the ways from both their ends, units first."""

    ways: tuple[tuple[Part, bool, Ways, Ways], ...]


def sources_of(
    plan: Plan, kinds: Mapping[str, Kind], joints: Joints, costs: Mapping[WireId, float]
) -> tuple[Sources, ...]:
    """Return the sources with their ways as the switches stand, then with switches thrown."""
    feeds = [(p, kinds[p.kind].behaviour) for p in plan.parts.values() if p.kind in kinds]
    feeds = sorted((f for f in feeds if f[1] in FEEDS), key=lambda f: f[1] != "discharge_unit")
    return tuple(
        Sources(
            tuple(
                (
                    part,
                    behaviour == "discharge_unit",
                    *_both(joints, part.id, FEEDS[behaviour], through, costs),
                )
                for part, behaviour in feeds
            )
        )
        for through in _REACHES
    )


def trace(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    reaches: Iterable[Sources],
    motor: PartId,
    end: str,
) -> Trace | None:
    """Return how a coil is fed, a unit before a supply, no switch thrown if it can be; None if not."""
    outer, middle = TerminalRef(motor, end), TerminalRef(motor, "C")
    for sources in reaches:
        for part, is_unit, plus, minus in sources.ways:
            for one, other in ((plus, minus), (minus, plus)):
                if outer in one and middle in other:
                    presses: dict[PartId, str] = {}
                    for ways, ref in ((one, outer), (other, middle)):
                        _press(plan, kinds, positions, ways, ref, presses)
                    wires = (*reversed(wires_back(one, outer)), *wires_back(other, middle))
                    return Trace(motor, end, part.id, is_unit, presses, wires)
    return None


def _both(
    joints: Joints, part: PartId, pair: tuple[str, str], through: int, costs: Mapping[WireId, float]
) -> tuple[Ways, Ways]:
    plus, minus = (ways_from(joints, TerminalRef(part, name), through, costs) for name in pair)
    return plus, minus


def _press(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    ways: Ways,
    ref: TerminalRef,
    presses: dict[PartId, str],
) -> None:
    """Note every switch whose contact the way goes through, where it does not stand so already."""
    back = ways[ref].back
    while back is not None:
        before, wire = back
        if not wire and before.part == ref.part:
            part = plan.parts[ref.part]
            kind = kinds[part.kind]
            pair = {before.terminal, ref.terminal}
            closing = [p for p in kind.positions if any({*c} == pair for c in p.closes)]
            stands = positions.get(part.id, "")
            if closing and all(p.name != stands for p in closing):
                held = [p for p in closing if p.momentary] or closing
                presses[part.id] = held[0].name
        ref, back = before, ways[before].back
