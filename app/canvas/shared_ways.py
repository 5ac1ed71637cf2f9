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
        self._lanes: dict[Hashable, dict[WireId, float]] = {}  # of ways that nobody has joined or left since

    def put(self, wire_id: WireId, raw: tuple[Point, ...], legs: Sequence[Leg] = ()) -> set[WireId]:
        """Take in where a wire runs; the answer is every other wire whose lane may be another one now.

        `legs` name the wireways its straight pieces lie in: in a wireway a wire keeps one lane.
        """
        ways = tuple(dict.fromkeys(leg.way for leg in legs if leg.way)) or _ways(raw)
        changed: set[WireId] = set()
        if self._ways_of.get(wire_id) != ways:
            changed |= self.leave(wire_id)
            self._ways_of[wire_id] = ways
            for way in ways:
                self._sharing[way].add(wire_id)
                self._lanes.pop(way, None)
                changed |= self._sharing[way]
            changed.discard(wire_id)
        self._raw[wire_id] = raw
        self._legs[wire_id] = tuple(legs)
        return changed

    def leave(self, wire_id: WireId) -> frozenset[WireId]:
        """Let a wire go; the answer is every wire that has more room now."""
        changed: set[WireId] = set()
        self._raw.pop(wire_id, None)
        self._legs.pop(wire_id, None)
        for way in dict.fromkeys(self._ways_of.pop(wire_id, ())):
            sharing = self._sharing[way]
            sharing.discard(wire_id)
            self._lanes.pop(way, None)
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
        if legs and any(leg.way for leg in legs):
            return fanned_legs(raw, [self._offset_mm(wire_id, leg) for leg in legs])
        return fanned(raw, [self._lane(way, wire_id) for way in self._ways_of.get(wire_id, ())])

    def _offset_mm(self, wire_id: WireId, leg: Leg) -> float | None:
        if not leg.way:
            return None
        others = max(len(self._sharing[leg.way]) - 1, 1)
        return self._lane(leg.way, wire_id) * leg.side * min(IN_WAY_MM, WIDEST_MM / others)

    def _lane(self, way: Hashable, wire_id: WireId) -> float:
        """Return the signed distance in lanes from the middle of a way."""
        members = self._sharing[way]
        if len(members) == 1:
            return 0.0
        lanes = self._lanes.get(way)
        if lanes is None:
            middle = (len(members) - 1) / 2
            ordered = sorted(members, key=lambda i: (len(i), i))
            lanes = self._lanes[way] = {one: index - middle for index, one in enumerate(ordered)}
        return lanes[wire_id]


def _ways(raw: Sequence[Point]) -> tuple[Hashable, ...]:
    """Return what a wire may share with others: both its ends when straight, else each of its bends."""
    if len(raw) < 2:
        return ()
    if len(raw) == 2:
        return (frozenset((round(x, 1), round(y, 1)) for x, y in raw),)
    return tuple([(round(x, 1), round(y, 1)) for x, y in raw[1:-1]])
