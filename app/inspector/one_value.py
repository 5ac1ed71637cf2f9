"""The one value that several things have in common."""

from collections.abc import Iterable
from typing import TypeVar

SEVERAL = "several"  # stands where they differ
T = TypeVar("T")


def one_value(values: Iterable[T]) -> T | None:
    """Return the value if all are equal, None if they differ or there are none; stops at the first other."""
    walk = iter(values)
    for first in walk:
        return first if all(v == first for v in walk) else None
    return None
