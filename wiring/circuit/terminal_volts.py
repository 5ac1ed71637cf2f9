"""Volts by terminal, read from an array when one is asked for."""

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Floats, Ints
from wiring.plan.names import TerminalRef


class TerminalVolts(Mapping[TerminalRef, float]):
    """Volts of the terminals that something feeds, in the plan's order."""

    def __init__(
        self, refs: Sequence[TerminalRef], node_of: Ints, nodes: Floats, known: NDArray[np.bool_]
    ) -> None:
        """Take all terminals, the node of each, and of each node its volts and whether they are known."""
        self.refs, self.node_of, self.nodes, self.known = refs, node_of, nodes, known

    @cached_property
    def _volts(self) -> dict[TerminalRef, float]:
        volts = self.nodes[self.node_of].tolist()
        known = self.known[self.node_of].tolist()
        return {ref: volt for ref, volt, is_known in zip(self.refs, volts, known, strict=True) if is_known}

    def __getitem__(self, ref: TerminalRef) -> float:
        if "_volts" in self.__dict__:
            return self._volts[ref]
        # One is asked for, as on a part's card: writing all of them out first would be felt.
        try:
            node = self.node_of[self.refs.index(ref)]
        except ValueError:
            raise KeyError(ref) from None
        if not self.known[node]:
            raise KeyError(ref)
        return float(self.nodes[node])

    def __iter__(self) -> Iterator[TerminalRef]:
        return iter(self._volts)

    def __len__(self) -> int:
        return len(self._volts)
