"""The file beside a plan that remembers its last printed set: ``quay.printed.json`` for quay.underboard."""

from pathlib import Path

import msgspec

from wiring.files.store import write_whole
from wiring.sheets.printed_set import PrintedSet

SUFFIX = ".printed.json"
LARGEST_BYTES = 50_000_000
_FORMAT, _VERSION = "underboard printed set", 1


class _File(msgspec.Struct, frozen=True):
    format: str
    version: int
    set: PrintedSet


def printed_path(plan: Path) -> Path:
    """Return where the last printed set of a plan is remembered."""
    return plan.with_suffix(SUFFIX)


def read_printed(plan: Path) -> PrintedSet | None:
    """Return the last printed set of a plan, None when none was remembered.

    ValueError with a plain sentence when the file beside the plan is damaged.
    """
    path = printed_path(plan)
    try:
        if path.stat().st_size > LARGEST_BYTES:
            raise ValueError(f"{path.name} is too large to be the record of a printed set; remove it.")
        file = msgspec.json.decode(path.read_bytes(), type=_File)
    except FileNotFoundError:
        return None
    except (msgspec.MsgspecError, OSError, RecursionError):
        file = None
    if file is None or file.format != _FORMAT or file.version != _VERSION:
        raise ValueError(
            f"{path.name}, what was printed last, cannot be read; remove it and print a whole set."
        )
    return file.set


def write_printed(printed: PrintedSet, plan: Path) -> Path:
    """Remember a set as the last printed one of a plan; return the file. NotSaved when that fails."""
    path = printed_path(plan)
    write_whole(msgspec.json.encode(_File(_FORMAT, _VERSION, printed)), path)
    return path
