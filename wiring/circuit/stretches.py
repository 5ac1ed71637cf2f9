"""Rows of a new table as stretches of an old one with fresh rows between: what an edit does to arrays."""

from collections.abc import Sequence
from typing import Any, NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Ints

T = TypeVar("T")
Flags = NDArray[np.bool_]


class Stretch(NamedTuple):
    """Rows `begin` to `end` of the old table, or of the fresh rows."""

    old: bool
    begin: int
    end: int


class Stretches(NamedTuple):
    """A new table, stretch after stretch."""

    rows: tuple[Stretch, ...]
    old: int  # rows there were
    fresh: int  # fresh rows

    def spliced(self, old: NDArray[Any], fresh: NDArray[Any]) -> NDArray[Any]:
        """Return a column of the new table from that of the old one and that of the fresh rows."""
        parts = [(old if s.old else fresh)[s.begin : s.end] for s in self.rows]
        return np.concatenate(parts) if parts else old[:0]

    def filled(self, old: NDArray[Any], value: float) -> NDArray[Any]:
        """Return a column of the new table with one value in all fresh rows."""
        return self.spliced(old, np.full((self.fresh, *old.shape[1:]), value, dtype=old.dtype))

    def joined(self, old: Sequence[T], fresh: Sequence[T]) -> tuple[T, ...]:
        """Return a column that is no array."""
        found: list[T] = []
        for stretch in self.rows:
            found += (old if stretch.old else fresh)[stretch.begin : stretch.end]
        return tuple(found)

    def within(self, old_counts: Ints, fresh_counts: Ints) -> "Stretches":
        """Return the stretches of another table, of which each row here has so many rows."""
        old = np.append(0, np.cumsum(old_counts)).tolist()
        fresh = np.append(0, np.cumsum(fresh_counts)).tolist()
        rows = tuple(
            Stretch(s.old, *((old if s.old else fresh)[at] for at in (s.begin, s.end))) for s in self.rows
        )
        return Stretches(rows, old[-1], fresh[-1])

    def before(self, other: "Stretches") -> "Stretches":
        """Return the stretches of this table with those of another behind it."""
        behind = (
            Stretch(s.old, s.begin + shift, s.end + shift)
            for s in other.rows
            for shift in (self.old if s.old else self.fresh,)
        )
        return Stretches((*self.rows, *behind), self.old + other.old, self.fresh + other.fresh)

    def places(self) -> Ints:
        """Return for each old row its place in the new table; -1 where it is gone."""
        found = np.full(self.old, -1, dtype=np.intp)
        at = 0
        for old, begin, end in self.rows:
            if old:
                found[begin:end] = np.arange(at, at + end - begin)
            at += end - begin
        return found

    def is_fresh(self) -> Flags:
        """Return for each row of the new table whether it is fresh."""
        return self.filled(np.zeros(self.old, dtype=np.bool_), True)


def stretches(old: int, gone: Sequence[int], fresh_at: Sequence[int]) -> Stretches:
    """Return a table of `old` rows without those in `gone` and with a fresh row before each in `fresh_at`.

    Both in ascending order; a fresh row before the row after the last stands at the end.
    """
    rows: list[Stretch] = []
    at = made = left = 0
    for row in sorted({*gone, *fresh_at}):
        if row > at:
            rows.append(Stretch(True, at, row))
            at = row
        begin = made
        while made < len(fresh_at) and fresh_at[made] == row:
            made += 1
        if made > begin:
            rows.append(Stretch(False, begin, made))
        if left < len(gone) and gone[left] == row:
            left += 1
            at = row + 1
    if at < old:
        rows.append(Stretch(True, at, old))
    return Stretches(tuple(rows), old, len(fresh_at))
