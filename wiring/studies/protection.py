"""What each fuse guards, which wires no fuse guards, and which fuse would."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.standards.fuses import rating_up
from wiring.studies.joints import LASTING, STIFF, Joints, Link, ends
from wiring.studies.roles import LOADS, SOURCE_ENDS, THROUGH
from wiring.studies.wire_limits import limit_a

HEADROOM = 1.25  # an IEC fuse carries its rating for ever, a UL one three quarters: something between
EASY = 2.0  # times the normal current: what blows in a short and never without; common practice, no source
EASY_A = 0.5  # smaller fuses have much resistance of their own
_PAST_NO_FUSE = (LASTING | Link.MOMENTARY) & ~Link.FUSE


class Guarded(NamedTuple):
    """Wires behind a fuse up to the next fuse, load or supply, and the thinnest one's current limit."""

    wires: frozenset[WireId]
    thinnest: WireId | None
    limit_a: float


class Unguarded(NamedTuple):
    """Loads a supply feeds past no fuse, and the wires that lead to them."""

    loads: tuple[PartId, ...]
    wires: frozenset[WireId]


def rating_for(normal_a: float, wire_limit_a: float) -> float | None:
    """Return a fuse rating that carries the current with ease, or with headroom, and guards the wire.

    None when the wire is too thin for any such fuse.
    """
    for wished_a in (max(EASY * normal_a, EASY_A), HEADROOM * normal_a):
        rating = rating_up(wished_a)
        if rating is not None and rating <= wire_limit_a:
            return rating
    return None


def guarded_by(plan: Plan, kinds: Mapping[str, Kind], joints: Joints, fuse: PartId) -> Guarded:
    """Return the wires a fuse guards: those on its side away from the supplies.

    All lasting switch positions count, unless a reversing switch would lead round to the supply that way.
    """
    sources = _source_terminals(plan, kinds)
    wires: frozenset[WireId] = frozenset()
    for end in ends(fuse, ("1", "2")):
        for through in (_PAST_NO_FUSE | Link.DIODE, STIFF & ~Link.FUSE | Link.DIODE):
            reach = joints.reach((end,), through)
            if not reach.terminals & sources:
                wires |= reach.wires
                break
    thinnest = min(wires, key=lambda w: (limit_a(plan.wires[w].size), w), default=None)
    most_a = limit_a(plan.wires[thinnest].size) if thinnest else 0.0
    return Guarded(wires, thinnest, most_a)


def unguarded(plan: Plan, kinds: Mapping[str, Kind], joints: Joints, source: Part) -> Unguarded:
    """Return what a supply feeds with no fuse in either lead, whatever the switches stand at."""
    plus, minus = ends(source.id, SOURCE_ENDS[kinds[source.kind].behaviour])
    out = joints.reach((plus,), _PAST_NO_FUSE)
    home = joints.reach((minus,), _PAST_NO_FUSE)
    past = Link.RESISTOR | Link.DIODE
    wide_out = joints.reach(out.terminals, _PAST_NO_FUSE | past).terminals
    wide_home = joints.reach(home.terminals, _PAST_NO_FUSE | past).terminals
    loads = tuple(
        part.id
        for part in plan.parts.values()
        if part.kind in kinds and _bridges(part, kinds[part.kind], wide_out, wide_home)
    )
    return Unguarded(loads, out.wires | home.wires if loads else frozenset())


def _bridges(part: Part, kind: Kind, out: frozenset[TerminalRef], home: frozenset[TerminalRef]) -> bool:
    if kind.behaviour not in LOADS:
        return False
    for pair in THROUGH[kind.behaviour]:
        a, b = ends(part.id, pair)
        if (a in out and b in home) or (b in out and a in home):
            return True
    return False


def _source_terminals(plan: Plan, kinds: Mapping[str, Kind]) -> frozenset[TerminalRef]:
    return frozenset(
        ref
        for part in plan.parts.values()
        if part.kind in kinds and kinds[part.kind].behaviour in SOURCE_ENDS
        for ref in ends(part.id, SOURCE_ENDS[kinds[part.kind].behaviour])
    )
