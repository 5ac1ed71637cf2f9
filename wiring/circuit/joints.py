"""Which points are one: a union-find over any names."""

from collections.abc import Hashable
from typing import Generic, TypeVar

T = TypeVar("T", bound=Hashable)


class Joints(Generic[T]):
    """Sets of names that have been joined; a name nobody joined is alone."""

    def __init__(self) -> None:
        self._above: dict[T, T] = {}

    def root(self, name: T) -> T:
        """Return the name that stands for the whole set."""
        above = self._above
        top = above.setdefault(name, name)
        while above[top] != top:
            top = above[top]
        while above[name] != top:
            above[name], name = top, above[name]
        return top

    def join(self, one: T, other: T) -> None:
        """Make two sets one."""
        first, second = self.root(one), self.root(other)
        if first != second:
            self._above[second] = first
