"""Which wires share a way, so that each gets a lane of its own."""

from collections import defaultdict
from collections.abc import Hashable, Sequence

from app.canvas.wire_paths import fanned
from app.canvas.wireway_lanes import IN_WAY_MM, WIDEST_MM, Leg, fanned_legs
from wiring.plan.names import WireId
from wiring.plan.places import Point


class SharedWays:
    """Raw paths of wires, grouped by what they have in common."""

    def __init__(self) -> None:
        self._raw: dict[WireId, tuple[Point, ...]] = {}
        self._legs: dict[WireId, tuple[Leg, ...]] = {}
        self._ways_of: dict[WireId, tuple[Hashable, ...]] = {}
        self._sharing: dict[Hashable, set[WireId]] = defaultdict(set)

    def join(self, wire_id: WireId, raw: tuple[Point, ...], legs: Sequence[Leg] = ()) -> frozenset[WireId]:
        """Take a wire in; the answer is every wire whose lane may be another one now.

        `legs` name the wireways its straight pieces lie in: in a wireway a wire keeps one lane.
        """
        self._raw[wire_id] = raw
        self._legs[wire_id] = tuple(legs)
        held = tuple(dict.fromkeys(leg.way for leg in legs if leg.way))
        self._ways_of[wire_id] = held or _ways(raw)
        changed: set[WireId] = {wire_id}
        for way in self._ways_of[wire_id]:
            self._sharing[way].add(wire_id)
            changed |= self._sharing[way]
        return frozenset(changed)

    def leave(self, wire_id: WireId) -> frozenset[WireId]:
        """Let a wire go; the answer is every wire that has more room now."""
        changed: set[WireId] = set()
        self._raw.pop(wire_id, None)
        self._legs.pop(wire_id, None)
        for way in dict.fromkeys(self._ways_of.pop(wire_id, ())):
            sharing = self._sharing[way]
            sharing.discard(wire_id)
            changed |= sharing
            if not sharing:
                del self._sharing[way]
        return frozenset(changed)

    def raw(self, wire_id: WireId) -> tuple[Point, ...]:
        """Return the path a wire was taken in with; empty when it is not known."""
        return self._raw.get(wire_id, ())

    def held(self, wire_id: WireId) -> frozenset[int]:
        """Return which straight pieces of a wire lie in a wireway, and so have a lane already."""
        return frozenset(i for i, leg in enumerate(self._legs.get(wire_id, ())) if leg.way)

    def path(self, wire_id: WireId) -> tuple[Point, ...]:
        """Return where a wire runs in its lanes; empty when it is not known."""
        raw = self._raw.get(wire_id, ())
        legs = self._legs.get(wire_id, ())
        if any(leg.way for leg in legs):
            return fanned_legs(raw, [self._offset_mm(wire_id, leg) for leg in legs])
        return fanned(raw, [_lane(self._sharing[way], wire_id) for way in self._ways_of.get(wire_id, ())])

    def _offset_mm(self, wire_id: WireId, leg: Leg) -> float | None:
        if not leg.way:
            return None
        others = max(len(self._sharing[leg.way]) - 1, 1)
        return _lane(self._sharing[leg.way], wire_id) * leg.side * min(IN_WAY_MM, WIDEST_MM / others)


def _ways(raw: Sequence[Point]) -> tuple[Hashable, ...]:
    """Return what a wire may share with others: both its ends when straight, else each of its bends."""
    if len(raw) < 2:
        return ()
    rounded = [(round(x, 1), round(y, 1)) for x, y in raw]
    if len(raw) == 2:
        return (frozenset(rounded),)
    return tuple(rounded[1:-1])


def _lane(members: set[WireId], wire_id: WireId) -> float:
    """Return the signed distance in lanes from the middle of a way."""
    order = sorted(members, key=lambda i: (len(i), i))
    return order.index(wire_id) - (len(order) - 1) / 2
