"""All kinds there are: the built-in ones, and the user's own over them."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.catalogue.kind_file import KindFile, read_kinds
from wiring.catalogue.kind_row import Raw
from wiring.catalogue.known_names import PURPOSES
from wiring.catalogue.own_cells import load_own_cells, toml_files, with_own_cells
from wiring.catalogue.user_folder import user_folder as usual_folder

BUILT_IN = Path(__file__).with_name("kinds")


class Shelf(NamedTuple):
    """The kinds by key, what is wrong with the user's files, and which built-in kinds they replace."""

    kinds: Mapping[str, Kind]
    complaints: tuple[str, ...]
    replaced: tuple[str, ...] = ()


def builtin_kinds() -> Mapping[str, Kind]:
    """Return the built-in kinds by key, in tray order; read once."""
    return built_in_file().kinds


def load_shelf(user_folder: Path | None = None) -> Shelf:
    """Return the built-in kinds and those of the ``*.toml`` files of a folder, by name of file.

    A kind of the user with a built-in key takes its place. A file or kind that cannot be used is named in
    `complaints`, one sentence each; the others still load. None means the folder of
    :mod:`wiring.catalogue.user_folder`. Own battery types of its folder ``cells`` come into
    :data:`wiring.standards.cells.CELLS` in place of those of an earlier call.
    """
    built_in = built_in_file()
    kinds, rows = dict(built_in.kinds), dict(built_in.rows)
    replaced: list[str] = []
    origin: dict[str, str] = {}
    folder = usual_folder() if user_folder is None else user_folder
    own = load_own_cells(folder)
    complaints = list(own.complaints)
    for path in toml_files(folder):
        try:
            content = path.read_bytes()
        except OSError as error:
            complaints.append(f"{path.name}: the file cannot be opened ({error.strerror or error}).")
            continue
        found = read_kinds(path.name, content, rows)
        complaints += found.complaints
        for key in found.kinds:
            if key in origin:
                complaints.append(
                    f"{path.name}: it has a kind “{key}” as {origin[key]} does; this one is used."
                )
            elif key in built_in.kinds:
                replaced.append(key)
            origin[key] = path.name
        kinds.update(found.kinds)
        rows.update(found.rows)
    return Shelf(MappingProxyType(with_own_cells(kinds, own.cells)), tuple(complaints), tuple(replaced))


@cache
def built_in_file() -> KindFile:
    """Return the built-in kinds with the rows they were written in, which others can be like."""
    kinds: dict[str, Kind] = {}
    rows: dict[str, Raw] = {}
    for name in PURPOSES:
        found = read_kinds(f"{name}.toml", (BUILT_IN / f"{name}.toml").read_bytes(), rows)
        if found.complaints:
            raise ValueError(found.complaints[0])
        kinds.update(found.kinds)
        rows.update(found.rows)
    return KindFile(MappingProxyType(kinds), MappingProxyType(rows), ())
