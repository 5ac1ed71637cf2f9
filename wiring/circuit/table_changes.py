"""What has changed between two tables of a plan: records taken out, put in, and replaced in their place."""

from collections.abc import Mapping
from typing import Generic, NamedTuple, TypeVar

STRETCH = 256  # records compared at once, which is quick where they are the same objects
T = TypeVar("T")


class Replaced(NamedTuple, Generic[T]):
    """A record that is another object now, and its row in the old table."""

    row: int
    was: T
    now: T


class TableChange(NamedTuple, Generic[T]):
    """Rows are those of the old table; what is put in stands before a row of it."""

    gone: tuple[int, ...]
    put_in: tuple[tuple[int, T], ...]
    replaced: tuple[Replaced[T], ...]

    @property
    def size(self) -> int:
        """How many records it touches."""
        return len(self.gone) + len(self.put_in) + len(self.replaced)


def table_change(old: Mapping[str, T], new: Mapping[str, T], most: int) -> TableChange[T] | None:
    """Return the change; None where records stand in another order, or more than `most` have changed."""
    if old is new:
        return TableChange((), (), ())
    was, now, was_ids, now_ids = list(old.values()), list(new.values()), list(old), list(new)
    gone: list[int] = []
    put_in: list[tuple[int, T]] = []
    replaced: list[Replaced[T]] = []
    i = j = 0
    while i < len(was) or j < len(now):
        if len(gone) + len(put_in) + len(replaced) > most:
            return None
        here, there = was[i : i + STRETCH], now[j : j + STRETCH]
        if here == there:
            i, j = i + len(here), j + len(there)
            continue
        same = 0
        for one, other in zip(here, there, strict=False):
            if one is not other:
                break
            same += 1
        i, j = i + same, j + same
        if i < len(was) and j < len(now) and was_ids[i] == now_ids[j]:
            replaced.append(Replaced(i, was[i], now[j]))
            i, j = i + 1, j + 1
        elif i < len(was) and was_ids[i] not in new:
            gone.append(i)
            i += 1
        elif j < len(now) and now_ids[j] not in old:
            put_in.append((i, now[j]))
            j += 1
        else:
            return None
    if len(gone) + len(put_in) + len(replaced) > most:
        return None
    return TableChange(tuple(gone), tuple(put_in), tuple(replaced))
