"""The user's own battery types: read from the folder ``cells``, and offered where their like are."""

from collections.abc import Iterable, Mapping
from pathlib import Path

import msgspec

from wiring.catalogue.cell_file import CellFile, read_cells
from wiring.catalogue.kind import Kind
from wiring.standards.cell_type import CellType
from wiring.standards.cells import CELLS, cell_rows, use_own_cells

FOLDER = "cells"


def load_own_cells(user_folder: Path) -> CellFile:
    """Return the types of a catalogue folder's ``cells/*.toml`` and let CELLS hold them."""
    found: dict[str, CellType] = {}
    complaints: list[str] = []
    for path in toml_files(user_folder / FOLDER):
        try:
            content = path.read_bytes()
        except OSError as error:
            complaints.append(f"{path.name}: the file cannot be opened ({error.strerror or error}).")
            continue
        file = read_cells(path.name, content, cell_rows())
        complaints += file.complaints
        for cell in file.cells:
            if cell.key in found:
                complaints.append(f"{path.name}: another file has “{cell.key}” too; this one is used.")
            found[cell.key] = cell
    use_own_cells(found.values())
    return CellFile(tuple(found.values()), tuple(complaints))


def with_own_cells(kinds: Mapping[str, Kind], own: Iterable[CellType]) -> dict[str, Kind]:
    """Return the kinds, batteries offering own types of the same chemistry and number of cells too."""
    own = tuple(own)
    return {key: _offering(kind, own) if kind.behaviour == "battery" else kind for key, kind in kinds.items()}


def _offering(kind: Kind, own: tuple[CellType, ...]) -> Kind:
    choices = kind.setting("cell").choices
    alike = {(CELLS[c].chemistry, CELLS[c].cells_in_series) for c in choices if c in CELLS}
    new = [c.key for c in own if c.key not in choices and (c.chemistry, c.cells_in_series) in alike]
    if not new:
        return kind
    settings = tuple(
        msgspec.structs.replace(s, choices=(*choices, *new)) if s.name == "cell" else s for s in kind.settings
    )
    return msgspec.structs.replace(kind, settings=settings)


def toml_files(folder: Path) -> list[Path]:
    """Return the TOML files of a folder by name; none when it cannot be read."""
    try:
        return sorted(p for p in folder.glob("*.toml") if p.is_file())
    except OSError:
        return []
