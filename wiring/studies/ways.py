"""The ways from one terminal to all others that are reached, as they were found."""

from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Floats, Ints
from wiring.plan.names import TerminalRef, WireId
from wiring.studies.nets import NO_WIRE, Net

FAR = 1 << 40  # loads on the way to a terminal that is not reached


class Way(NamedTuple):
    """How one terminal is reached."""

    loads: int  # loads passed on the way; a way past fewer of them is the one that feeds
    cost: float
    back: tuple[TerminalRef, str] | None  # where it came from, and the wire ("" for none)


class Labels(NamedTuple):
    """Of each terminal: loads passed, cost and steps; what is not reached has FAR loads and steps."""

    loads: Ints
    cost: Floats
    steps: Ints


class Ways(Mapping[TerminalRef, Way]):
    """The way to each terminal that is reached. Never written to."""

    def __init__(self, net: Net, costs: Floats, labels: Labels, back: Ints) -> None:
        """Take what was found: costs of wires by their place in the net, of each terminal the row back."""
        self.net, self.costs, self.labels, self.back = net, costs, labels, back

    @cached_property
    def over(self) -> NDArray[np.bool_]:
        """Of each wire of the net, whether it begins or ends at what is reached."""
        found = np.zeros(len(self.net.wire_names) + 1, dtype=np.bool_)  # the last is for what is no wire
        found[self.net.wire[self.labels.loads[self.net.tail] < FAR]] = True
        return found[:-1]

    def at(self, places: Ints) -> tuple[Ints, Floats]:
        """Return the loads passed to terminals by their places in the net, and the costs; -1 is nowhere."""
        nowhere = places < 0
        return (
            np.where(nowhere, FAR, self.labels.loads[places]),
            np.where(nowhere, np.inf, self.labels.cost[places]),
        )

    @cached_property
    def _rows(self) -> tuple[list[int], list[float], list[int]]:
        return self.labels.loads.tolist(), self.labels.cost.tolist(), self.back.tolist()

    def reached(self, ref: TerminalRef) -> tuple[int, float] | None:
        """Return the loads passed to a terminal and what the way costs; None where there is none."""
        place = self.net.number.get(ref, -1)
        if place < 0 or self.labels.loads[place] >= FAR:
            return None
        return int(self.labels.loads[place]), float(self.labels.cost[place])

    def wires_to(self, ref: TerminalRef) -> list[WireId]:
        """Return the wires of the way to a terminal, from there back to the start; KeyError if none."""
        net, at, wires = self.net, self._place(ref), list[int]()
        head, back = net.lists[0], self._rows[2]
        while (row := back[at]) >= 0:
            wires.append(row)
            at = head[row]
        return [net.wire_names[wire] for wire in net.wire[wires].tolist() if wire != NO_WIRE]

    def _place(self, ref: TerminalRef) -> int:
        place = self.net.number.get(ref, -1)
        if place < 0 or self.labels.loads[place] >= FAR:
            raise KeyError(ref)
        return place

    def __contains__(self, ref: object) -> bool:
        place = self.net.number.get(ref, -1)  # type: ignore[call-overload]
        return bool(place >= 0 and self.labels.loads[place] < FAR)

    def __getitem__(self, ref: TerminalRef) -> Way:
        place, net, (loads, cost, back) = self._place(ref), self.net, self._rows
        row = back[place]
        if row < 0:
            return Way(loads[place], cost[place], None)
        wire = "" if net.wire[row] == NO_WIRE else net.wire_names[net.wire[row]]
        return Way(loads[place], cost[place], (net.refs[net.head[row]], wire))

    def __iter__(self) -> Iterator[TerminalRef]:
        return (self.net.refs[place] for place in np.flatnonzero(self.labels.loads < FAR).tolist())

    def __len__(self) -> int:
        return int(np.count_nonzero(self.labels.loads < FAR))


def wires_back(ways: Ways, ref: TerminalRef) -> list[WireId]:
    """Return the wires of the way to a terminal, from there back to the start."""
    return ways.wires_to(ref)
