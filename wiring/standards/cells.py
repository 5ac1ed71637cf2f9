"""All battery types there are: those of ``cell_types.toml`` and the user's own.

Fitted to published discharge tests (alkaline 17 cases, worst 7 %; zinc-carbon 6, worst 15 %; lead-acid 66
points, worst 5 %). Brands differ more than that, hence the grades.
"""

import tomllib
from collections.abc import Iterable, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any

from wiring.standards.cell_type import CellType, Grades, cell_of

__all__ = ["CELLS", "CellType", "Grades", "cell_rows", "use_own_cells"]

FILE = Path(__file__).with_name("cell_types.toml")


def _read() -> dict[str, Mapping[str, Any]]:
    whole: dict[str, Mapping[str, Any]] = {}
    for row in tomllib.loads(FILE.read_text("utf-8"))["cell"]:
        base = whole[row["like"]] if "like" in row else {}
        whole[row["key"]] = {**base, **{k: v for k, v in row.items() if k != "like"}}
    return whole


_ROWS = _read()
_BUILT_IN = {key: cell_of(row) for key, row in _ROWS.items()}
_ALL = dict(_BUILT_IN)

CELLS: Mapping[str, CellType] = MappingProxyType(_ALL)


def cell_rows() -> Mapping[str, Mapping[str, Any]]:
    """Return the rows of the built-in types, for others to be like."""
    return MappingProxyType(_ROWS)


def use_own_cells(cells: Iterable[CellType]) -> None:
    """Let :data:`CELLS` hold the built-in types and these, in place of any own ones it held before.

    One that has the key of a built-in type takes its place.
    """
    wanted = {**_BUILT_IN, **{cell.key: cell for cell in cells}}
    for key in _ALL.keys() - wanted.keys():
        del _ALL[key]
    _ALL.update(wanted)
