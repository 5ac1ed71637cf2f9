"""What a plan's branches are as arrays."""

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from itertools import accumulate, chain
from typing import NamedTuple, overload

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.compiled import CompiledPart
from wiring.circuit.figures import Problem
from wiring.circuit.kept import Kept
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.part_table import PartTable
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan


class Refs(Sequence[TerminalRef]):
    """All terminals, part after part, then loose wire ends; written out when one is asked for."""

    def __init__(self, parts: Mapping[PartId, CompiledPart], loose: tuple[TerminalRef, ...]) -> None:
        self._parts, self._loose = parts, loose

    @cached_property
    def _all(self) -> tuple[TerminalRef, ...]:
        return (*chain.from_iterable(c.refs for c in self._parts.values()), *self._loose)

    @cached_property
    def _first(self) -> dict[PartId, int]:
        counts = accumulate((len(c.kind.terminals) for c in self._parts.values()), initial=0)
        return dict(zip(self._parts, counts, strict=False))

    def index(self, value: object, start: int = 0, stop: int | None = None) -> int:
        """Return the place of a terminal without writing all of them out; ValueError when there is none."""
        part, terminal = value if isinstance(value, TerminalRef) else ("", "")
        if start == 0 and stop is None and part in self._first:
            names = [t.name for t in self._parts[part].kind.terminals]
            if terminal in names:
                return self._first[part] + names.index(terminal)
        return self._all.index(value, start, len(self._all) if stop is None else stop)

    def __len__(self) -> int:
        return len(self._all)

    def __iter__(self) -> Iterator[TerminalRef]:
        return iter(self._all)

    @overload
    def __getitem__(self, place: int) -> TerminalRef: ...
    @overload
    def __getitem__(self, place: slice) -> tuple[TerminalRef, ...]: ...
    def __getitem__(self, place: int | slice) -> TerminalRef | tuple[TerminalRef, ...]:
        return self._all[place]


class Assembly(NamedTuple):
    """Branch arrays of a plan in one set of positions; wires come first, then the parts. Never written to."""

    plan: Plan
    parts: Mapping[PartId, CompiledPart]
    table: PartTable
    first_terminal: Mapping[PartId, int]  # where each part's terminals begin
    spans: Mapping[PartId, range]  # each part's branches
    wires: Mapping[WireId, int]  # each wire's branch
    refs: Sequence[TerminalRef]
    node_of: Ints  # of each terminal
    laws: Ints
    a: Ints
    b: Ints
    values: Floats
    roles: tuple[str, ...]
    owners: tuple[str, ...]  # wire or part of each branch
    sources: Ints
    alternating: NDArray[np.bool_]
    conducting: NDArray[np.bool_]  # wires, closed contacts and whole fuses
    troubles: tuple[Problem, ...]
    kept: Kept  # what is worked out from these arrays

    @property
    def node_count(self) -> int:
        """One more than the highest node number."""
        return int(self.node_of.max(initial=-1)) + 1
