"""Sets the builder keeps, as files in a folder: a lit building with its resistor and plug, say."""

from pathlib import Path
from typing import NamedTuple

from wiring.edits.edit import EditRefused
from wiring.edits.fragment import Fragment, read_fragment
from wiring.files.store import replace_whole, why

SUFFIX = ".underboard-set"
LONGEST_NAME = 60


class KeptSet(NamedTuple):
    """A set with the text it is placed from; without a fragment when that cannot be read."""

    path: Path
    text: str = ""
    fragment: Fragment | None = None

    @property
    def name(self) -> str:
        """What the builder calls it."""
        return self.path.name.removesuffix(SUFFIX)


def set_paths(folder: Path) -> tuple[Path, ...]:
    """Return the files of the sets, in order of their names."""
    return tuple(sorted(folder.glob(f"*{SUFFIX}"), key=lambda path: path.name.casefold()))


def read_sets(folder: Path) -> tuple[KeptSet, ...]:
    """Return all kept sets, in order of their names."""
    return tuple(map(read_set, set_paths(folder)))


def read_set(path: Path) -> KeptSet:
    """Return the set that a file holds."""
    try:
        text = path.read_text(encoding="utf-8")
        return KeptSet(path, text, read_fragment(text))
    except (OSError, UnicodeDecodeError, EditRefused):
        return KeptSet(path)


def keep(folder: Path, words: str, text: str) -> str:
    """Write a set; return "" or one sentence that says why it could not be kept."""
    name = file_name(words)
    if not name:
        return "A set needs a name of letters or digits."
    if (folder / f"{name}{SUFFIX}").exists():
        return f"There is a set “{name}” already; choose another name."
    try:
        folder.mkdir(parents=True, exist_ok=True)
        replace_whole(text.encode(), folder / f"{name}{SUFFIX}")
    except OSError as fault:
        return f"The set could not be kept in {folder}, because {why(fault)}."
    return ""


def rename_set(path: Path, words: str) -> str:
    """Give a set another name; return "" or why it keeps the old one."""
    name = file_name(words)
    there = path.with_name(f"{name}{SUFFIX}")
    if not name:
        return "A set needs a name of letters or digits."
    if there == path:
        return ""
    if there.exists():
        return f"There is a set “{name}” already; choose another name."
    try:
        path.rename(there)
    except OSError as fault:
        return f"The set could not be renamed, because {why(fault)}."
    return ""


def remove_set(path: Path) -> str:
    """Take a set away; return "" or why it stays."""
    try:
        path.unlink(missing_ok=True)
    except OSError as fault:
        return f"The set could not be taken away, because {why(fault)}."
    return ""


def file_name(words: str) -> str:
    """Return words as a file can be called; "" when nothing is left of them."""
    kept = "".join(c if c.isalnum() or c in " -_" else " " for c in words)
    return " ".join(kept.split())[:LONGEST_NAME].strip()
