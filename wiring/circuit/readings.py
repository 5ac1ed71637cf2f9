"""Figures of parts and wires, worked out from the reading's arrays when one is asked for."""

from collections.abc import Callable, Iterator, Mapping
from typing import TypeVar

T = TypeVar("T")


class Readings(Mapping[str, T]):
    """Figures by id, in the plan's order; each is made once."""

    def __init__(self, ids: Mapping[str, object], left_out: frozenset[str], make: Callable[[str], T]) -> None:
        """Take all ids in their order, those that have no figure, and how a figure is made."""
        self._ids, self._left_out, self._make = ids, left_out, make
        self._made: dict[str, T] = {}

    def __getitem__(self, name: str) -> T:
        made = self._made.get(name)
        if made is None:
            if name in self._left_out or name not in self._ids:
                raise KeyError(name)
            made = self._made[name] = self._make(name)
        return made

    def __contains__(self, name: object) -> bool:
        return name in self._ids and name not in self._left_out

    def __iter__(self) -> Iterator[str]:
        if not self._left_out:
            return iter(self._ids)
        return (name for name in self._ids if name not in self._left_out)

    def __len__(self) -> int:
        return len(self._ids) - len(self._left_out)
