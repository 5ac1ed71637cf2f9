"""Read a file of the user's own battery types; what is wrong in it is said, what is right in it is kept.

A file of the folder ``cells`` in the catalogue folder is TOML: one ``[[cell]]`` per type. ::

    [[cell]]
    key = "AA of the brand in the drawer"
    like = "alkaline AA"          # takes from it what is not said here
    title = "Drawer AA"
    rated_ah = 2.4                # printed on it; scales capacity and resistance
    discharges = [                # of its data sheet: the type is fitted to them
      { amps = 0.1, to_v = 0.9, hours = 22 },
      { ohms = 3.9, to_v = 0.8, hours = 6.1, on_h = 1, every_h = 24 },
    ]

Any field of :class:`wiring.standards.cell_type.CellType` may stand in its place of a table instead.
"""

from collections.abc import Mapping
from typing import Any, NamedTuple

import msgspec

from wiring.catalogue.bad_kind import BadKind
from wiring.catalogue.cell_fit import Discharge, checked, fitted
from wiring.catalogue.file_lines import line_of
from wiring.catalogue.kind_file import on_one_line, rows_of, text_of, who
from wiring.standards.cell_type import BadCell, CellType, cell_of

Raw = Mapping[str, Any]
MEETS = 0.15  # worst error of the fit that still counts as meeting the data sheet
MOST_DISCHARGES = 40
SCALED = ("capacity_ah", "r0_ohm")


class CellFile(NamedTuple):
    """What one file holds: its types, and what could not be used."""

    cells: tuple[CellType, ...]
    complaints: tuple[str, ...]


def read_cells(name: str, content: bytes, known: Mapping[str, Raw]) -> CellFile:
    """Read the content of a file of battery types; `known` are the rows of types they may be like."""
    try:
        text = text_of(content)
        rows = rows_of(text, "cell")
    except BadKind as error:
        return CellFile((), (f"{name}: {on_one_line(error.reason)}.",))
    cells: dict[str, CellType] = {}
    whole: dict[str, Raw] = {}
    complaints: list[str] = []
    for number, row in enumerate(rows):
        try:
            full = _merged(row, {**known, **whole}, name)
            cell, worst = _made(full, row.get("discharges"))
            if cell.key in cells:
                raise BadCell("this key stands in the file twice; give the second another key", "key")
        except BadCell as error:
            line = line_of(text, number, "", error.key, "cell")
            words = on_one_line(f"{who(row)}{error.reason}")
            complaints.append(f"{name}, line {line}: {words}, so the battery type is left out.")
            continue
        cells[cell.key], whole[cell.key] = cell, full
        if worst > MEETS:
            line = line_of(text, number, "", "discharges", "cell")
            complaints.append(
                f"{name}, line {line}: {who(row)}the discharges are met within {worst:.0%} only, so "
                "forecasts with it are rough; check the numbers or give it another “like”."
            )
    return CellFile(tuple(cells.values()), tuple(complaints))


def _merged(row: Raw, known: Mapping[str, Raw], file: str) -> Raw:
    """Return a row with what it takes from the one it is like; a printed capacity scales what is not said."""
    own = {k: v for k, v in row.items() if k not in ("like", "discharges")}
    like = row.get("like")
    if like is None:
        return {"source": f"as {file} gives it", **own}
    base = known.get(like) if isinstance(like, str) else None
    if base is None:
        raise BadCell(f"there is no battery type “{str(like)[:40]}” for it to be like", "like")
    full = {**base, "source": f"as {file} gives it, else as {like}", **own}
    rated = own.get("rated_ah")
    if isinstance(rated, int | float) and not isinstance(rated, bool) and rated > 0:
        scale = rated / base["rated_ah"]
        for key, factor in zip(SCALED, (scale, 1 / scale), strict=True):
            if key not in own:
                full[key] = base[key] * factor
    return full


def _made(full: Raw, discharges: object) -> tuple[CellType, float]:
    cell = cell_of(full)
    if discharges is None:
        return cell, 0.0
    try:
        rows = msgspec.convert(discharges, tuple[Discharge, ...])
    except msgspec.ValidationError:
        words = "each discharge holds hours, to_v, and amps or ohms, as numbers; on_h and every_h if it rests"
        raise BadCell(words, "discharges") from None
    if not 0 < len(rows) <= MOST_DISCHARGES:
        raise BadCell(f"give one to {MOST_DISCHARGES} discharges, or none", "discharges")
    checked(rows, cell)
    return fitted(cell, rows)
