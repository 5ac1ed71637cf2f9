"""A growing table of numbers with a key per row, so that culling and hit tests run over whole columns."""

from collections.abc import Hashable, Iterable, Mapping, Sequence
from typing import Generic, TypeVar

import numpy as np
from numpy.typing import NDArray

Key = TypeVar("Key", bound=Hashable)
Floats = NDArray[np.float64]

MANY_DEAD = 64  # below this, squeezing out dropped rows is not worth its time


class Table(Generic[Key]):
    """Rows in the order they came; a dropped row holds NaN, so every comparison with it is false."""

    def __init__(self, columns: int) -> None:
        self._values: Floats = np.full((16, columns), np.nan)
        self._keys: list[Key | None] = []
        self._row: dict[Key, int] = {}
        self._names: NDArray[np.object_] | None = None  # the keys as an array, while they are the same

    def __contains__(self, key: object) -> bool:
        return key in self._row

    def __len__(self) -> int:
        return len(self._row)

    @property
    def values(self) -> Floats:
        """All rows, dropped ones as NaN; read only by custom."""
        return self._values[: len(self._keys)]

    def get(self, key: Key) -> Floats:
        """Return the row of a key; KeyError if there is none."""
        row: Floats = self._values[self._row[key]]
        return row

    def rows(self, keys: Iterable[Key]) -> Floats:
        """Return the rows of many keys, one a row; KeyError if one is not there."""
        return self._values[[self._row[key] for key in keys]]

    def put(self, key: Key, row: Sequence[float]) -> None:
        """Write the row of a key, new or known."""
        self.put_all({key: row})

    def put_all(self, rows: Mapping[Key, Sequence[float]]) -> None:
        """Write the rows of keys, new or known, all at once."""
        if not rows:
            return
        for key in rows:
            if key not in self._row:
                self._names = None
                self._row[key] = len(self._keys)
                self._keys.append(key)
        while len(self._values) < len(self._keys):
            self._values = np.vstack((self._values, np.full_like(self._values, np.nan)))
        self._values[[self._row[key] for key in rows]] = list(rows.values())

    def drop(self, key: Key) -> None:
        """Forget a key; nothing happens when it is not there."""
        index = self._row.pop(key, None)
        if index is None:
            return
        self._values[index] = np.nan
        self._names = None
        self._keys[index] = None
        dead = len(self._keys) - len(self._row)
        if dead > MANY_DEAD and dead > len(self._row):
            self._squeeze()

    def keys(self) -> list[Key]:
        """Return the keys that are there, in row order."""
        return [k for k in self._keys if k is not None]

    def keys_at(self, rows: Iterable[int]) -> list[Key]:
        """Return the keys of rows, leaving out dropped ones."""
        return [k for k in (self._keys[r] for r in rows) if k is not None]

    def keys_where(self, mask: NDArray[np.bool_]) -> list[Key]:
        """Return the keys of the rows where a mask over `values` is true, in row order; no dropped ones."""
        if self._names is None:
            self._names = np.fromiter(self._keys, object, len(self._keys))
        keys: list[Key] = self._names[mask & ~np.isnan(self.values[:, 0])].tolist()
        return keys

    def _squeeze(self) -> None:
        living = [i for i, k in enumerate(self._keys) if k is not None]
        self._values[: len(living)] = self._values[living]
        self._values[len(living) :] = np.nan
        self._keys, self._names = [self._keys[i] for i in living], None
        self._row = {k: i for i, k in enumerate(self._keys) if k is not None}
