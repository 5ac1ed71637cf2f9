"""What each fuse guards, which wires no fuse guards, and which fuse would."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.wire import Wire
from wiring.standards.fuses import rating_up
from wiring.studies.joints import LASTING, STIFF, Joints, Link
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
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
    always = kept(_wires_behind, fuses, sources, joints.net(_PAST_NO_FUSE | Link.DIODE))
    fed = [ref for ref, found in always.items() if found is None]
    now = kept(_wires_behind, fuses, sources, joints.net(STIFF & ~Link.FUSE | Link.DIODE)) if fed else {}
    if all(now[ref] is None for ref in fed):
        return kept(_guarded, fuses, always, wires)
    return _guarded(fuses, {**always, **{ref: now[ref] for ref in fed}}, wires)


_Behind = Mapping[TerminalRef, frozenset[WireId] | None]


def _wires_behind(fuses: Sequence[Ends], sources: Sequence[Ends], net: Net) -> _Behind:
    """Return the wires that hang on each end of the fuses; None where a supply hangs there too."""
    fed = {net.group_of(ref) for source in sources for ref in source[1:]}
    found: dict[TerminalRef, frozenset[WireId] | None] = {}
    for fuse in fuses:
        for ref in fuse[1:]:
            group = net.group_of(ref)
            found[ref] = None if group in fed - {-1} else net.wires_of(group)
    return found


def _guarded(
    fuses: Sequence[Ends], behind: _Behind, wires: Mapping[WireId, Wire]
) -> Mapping[PartId, Guarded]:
    found: dict[PartId, Guarded] = {}
    for fuse, one, other in fuses:
        mine = (behind[one] or frozenset()) | (behind[other] or frozenset())
        thinnest = min(mine, key=lambda w: (limit_a(wires[w].size), w), default=None)
        found[fuse] = Guarded(mine, thinnest, limit_a(wires[thinnest].size) if thinnest else 0.0)
    return found


def all_unguarded(
    sources: Sequence[Ends], loads: Sequence[Ends], joints: Joints
) -> Mapping[PartId, Unguarded]:
    """Return what each supply feeds with no fuse in either lead, whatever the switches stand at.

    The tables of ends must be the same objects as long as they hold the same.
    """
    past = Link.RESISTOR | Link.DIODE
    return kept(_unguarded, sources, loads, joints.net(_PAST_NO_FUSE), joints.net(_PAST_NO_FUSE | past))


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
