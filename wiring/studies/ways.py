"""The best way from one terminal to every other: past the fewest loads, then at the least cost in wire."""

import heapq
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wiring.plan.names import TerminalRef, WireId
from wiring.studies.joints import Joints, Numbered


class Way(NamedTuple):
    """How one terminal is reached."""

    loads: int  # loads passed on the way; a way past fewer of them is the one that feeds
    cost: float
    back: tuple[TerminalRef, str] | None  # where it came from, and the wire ("" for none)


_Done = dict[int, tuple[int, float, tuple[int, str] | None]]


class Ways(Mapping[TerminalRef, Way]):
    """The way to each terminal that is reached."""

    def __init__(self, numbered: Numbered, done: _Done) -> None:
        """Take the ways by the terminals' numbers."""
        self._numbered, self._done = numbered, done

    def reached(self, ref: TerminalRef) -> tuple[int, float] | None:
        """Return the loads passed to a terminal and what the way costs; None where there is none."""
        found = self._done.get(self._numbered.number.get(ref, -1))
        return None if found is None else found[:2]

    def wires_to(self, ref: TerminalRef) -> list[WireId]:
        """Return the wires of the way to a terminal, from there back to the start; KeyError if none."""
        done, wires = self._done, list[WireId]()
        back = done[self._numbered.number[ref]][2]
        while back is not None:
            if back[1]:
                wires.append(back[1])
            back = done[back[0]][2]
        return wires

    def __contains__(self, ref: object) -> bool:
        return self._numbered.number.get(ref, -1) in self._done  # type: ignore[call-overload]

    def __getitem__(self, ref: TerminalRef) -> Way:
        loads, cost, back = self._done[self._numbered.number[ref]]
        return Way(loads, cost, None if back is None else (self._numbered.refs[back[0]], back[1]))

    def __iter__(self) -> Iterator[TerminalRef]:
        return (self._numbered.refs[n] for n in self._done)

    def __len__(self) -> int:
        return len(self._done)


def ways_from(joints: Joints, start: TerminalRef, through: int, costs: Mapping[WireId, float]) -> Ways:
    """Return the best way to every terminal reached through those links; what is no wire costs nothing.

    A wire without a cost is none: it could not be calculated.

    Dijkstra's algorithm; written out because the order is by loads first, and for speed. Terminals are
    numbered in their order, so that of equal ways the same one is taken in whatever order wires were drawn.
    """
    numbered = joints.numbered(through, start)
    steps = numbered.steps
    done: _Done = {}
    heap: list[tuple[int, float, int, tuple[int, str] | None]] = [(0, 0.0, numbered.number[start], None)]
    push, pop = heapq.heappush, heapq.heappop
    best: dict[int, tuple[int, float]] = {}
    while heap:
        loads, cost, here, back = pop(heap)
        if here in done:
            continue
        done[here] = loads, cost, back
        for to, wire, load in steps[here]:
            if to in done:
                continue
            if wire:
                more = costs.get(wire)
                if more is None:
                    continue
                reached = loads, cost + more
            else:
                reached = loads + load, cost
            if to not in best or reached <= best[to]:
                best[to] = reached
                push(heap, (*reached, to, (here, wire)))
    return Ways(numbered, done)


def wires_back(ways: Ways, ref: TerminalRef) -> list[WireId]:
    """Return the wires of the way to a terminal, from there back to the start."""
    return ways.wires_to(ref)
