"""What each fuse guards, which wires no fuse guards, and which fuse would."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.wire import Wire
from wiring.standards.fuses import rating_up
from wiring.studies.joints import LASTING, STIFF, Joints, Link
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.settings import number
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


def carries_a(fuse: Part, kind: Kind) -> float:
    """Return the current a fuse carries without opening: its rating, of a resettable one what it holds at."""
    return number(fuse, kind, "rating_a" if kind.behaviour == "fuse" else "hold_a")


class Ends(NamedTuple):
    """A part and two terminals of it."""

    part: PartId
    one: TerminalRef
    other: TerminalRef


def all_guarded(
    fuses: Sequence[Ends], sources: Sequence[Ends], wires: Mapping[WireId, Wire], joints: Joints
) -> Mapping[PartId, Guarded]:
    """Return the wires each fuse guards: those on its side away from the supplies.

    All lasting switch positions count, unless a reversing switch would lead round to the supply that way.
    The tables of ends must be the same objects as long as they hold the same.
    """
    behind = joints.net(_PAST_NO_FUSE | Link.DIODE)
    fed = kept(_fed, fuses, sources, behind)
    now = joints.net(STIFF & ~Link.FUSE | Link.DIODE)
    apart = fed - kept(_fed, fuses, sources, now) if fed else fed
    guarded = kept(_guarded, fuses, fed, behind, wires)
    plain = joints.net(_PAST_NO_FUSE)
    through = fed - kept(_fed, fuses, sources, plain) if fed else fed
    if not (apart or through):
        return guarded
    limits, more = kept(_limits, wires), dict(guarded)
    held = (
        frozenset(plain.group_of(ref) for source in sources for ref in source[1:]) if through else frozenset()
    )
    for fuse, *both in fuses:
        if through.intersection(both):
            found = [_past_diodes(joints, ref, plain, held) for ref in both if ref in through]
            more[fuse] = _thinnest(guarded[fuse].wires.union(*found), limits)
    for fuse, *both in fuses:
        if apart.intersection(both):
            mine = [now.wires_of(now.group_of(ref)) for ref in both if ref in apart]
            more[fuse] = _thinnest(more[fuse].wires.union(*mine), limits)
    return more


def _past_diodes(joints: Joints, start: TerminalRef, plain: Net, held: frozenset[int]) -> frozenset[WireId]:
    """Return what hangs on a fuse past rectifiers, which lead round to the supply's other leg as well."""
    seen, waiting, wires = {start}, [start], set[WireId]()
    for here in waiting:  # grows while it is walked
        for to, link, via in joints.edges.get(here, ()):
            if link & (_PAST_NO_FUSE | Link.DIODE) and plain.group_of(to) not in held:
                if link == Link.WIRE:
                    wires.add(via)
                if to not in seen:
                    seen.add(to)
                    waiting.append(to)
    return frozenset(wires)


def _fed(fuses: Sequence[Ends], sources: Sequence[Ends], net: Net) -> frozenset[TerminalRef]:
    """Return the ends of fuses on which a supply hangs."""
    fed = {net.group_of(ref) for source in sources for ref in source[1:]} - {-1}
    return frozenset(ref for fuse in fuses for ref in fuse[1:] if net.group_of(ref) in fed)


def _guarded(
    fuses: Sequence[Ends], fed: frozenset[TerminalRef], behind: Net, wires: Mapping[WireId, Wire]
) -> Mapping[PartId, Guarded]:
    """Return what hangs on the ends that no supply feeds."""
    limits, found = kept(_limits, wires), dict[PartId, Guarded]()
    for fuse, *both in fuses:
        mine = [behind.wires_of(behind.group_of(ref)) for ref in both if ref not in fed]
        found[fuse] = _thinnest(frozenset[WireId]().union(*mine), limits)
    return found


_Limits = Mapping[WireId, tuple[float, WireId]]


def _limits(wires: Mapping[WireId, Wire]) -> _Limits:
    """Return for each wire its limit, and its id for those that are as thin."""
    return {wire: (limit_a(record.size), wire) for wire, record in wires.items()}


def _thinnest(wires: frozenset[WireId], limits: _Limits) -> Guarded:
    if not wires:
        return Guarded(wires, None, 0.0)
    most_a, thinnest = min(map(limits.__getitem__, wires))
    return Guarded(wires, thinnest, most_a)


def all_unguarded(
    sources: Sequence[Ends], loads: Sequence[Ends], joints: Joints
) -> Mapping[PartId, Unguarded]:
    """Return what each supply feeds with no fuse in either lead, whatever the switches stand at.

    The tables of ends must be the same objects as long as they hold the same.
    """
    past = Link.RESISTOR | Link.DIODE
    near = joints.net(_PAST_NO_FUSE | Link.DIODE)  # a diode lets a short through, a resistor holds it back
    return kept(_unguarded, sources, loads, near, joints.net(_PAST_NO_FUSE | past))


def _unguarded(
    sources: Sequence[Ends], loads: Sequence[Ends], near: Net, wide: Net
) -> Mapping[PartId, Unguarded]:
    groups = [(load, frozenset((wide.group_of(one), wide.group_of(other)))) for load, one, other in loads]
    found: dict[PartId, Unguarded] = {}
    for source, plus, minus in sources:
        mine = frozenset((wide.group_of(plus), wide.group_of(minus)))
        fed = tuple(dict.fromkeys(load for load, both in groups if both == mine and -1 not in mine))
        wires = near.wires_of(near.group_of(plus)) | near.wires_of(near.group_of(minus))
        found[source] = Unguarded(fed, wires if fed else frozenset())
    return found
