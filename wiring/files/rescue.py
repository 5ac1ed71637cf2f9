"""Rescue copies: the plan as it was a moment ago, kept apart from its file in case the program dies.

A rescue copy is one file: a first line of JSON that says which plan it is of and when it was written, then
the plan as :mod:`wiring.files.format` describes it. Drop it after a good save or a clean close only.
"""

import hashlib
import json
import os
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable, NotSaved
from wiring.files.store import replace_whole, why
from wiring.plan.plan import Plan

FORMAT = "underboard rescue copy"
SUFFIX = ".rescue"


class Rescue(NamedTuple):
    """A rescue copy that lies on the disk."""

    file: Path
    path: Path | None  # of the plan; None when it had never been saved
    written: datetime
    title: str


def rescue_folder() -> Path:
    """Return the folder where this user's rescue copies lie."""
    import platformdirs

    return Path(platformdirs.user_state_dir("underboard", appauthor=False)) / "rescue"


def write_rescue(plan: Plan, path: Path | None, *, token: str = "", folder: Path | None = None) -> Path:
    """Write the rescue copy of a plan, over the one before, and return where it lies; NotSaved if it fails.

    A plan that was never saved has no path; `token`, a text of the caller's choice, keeps two such apart.
    """
    where = folder or rescue_folder()
    header = {
        "format": FORMAT,
        "path": str(_absolute(path)) if path else "",
        "written": datetime.now(UTC).isoformat(timespec="seconds"),
        "title": plan.title,
    }
    file = where / _name(path, token)
    try:
        data = encode(plan)
    except ValueError:
        raise NotSaved("No rescue copy was written, because the plan holds a number without end.") from None
    try:
        where.mkdir(parents=True, exist_ok=True)
        replace_whole(json.dumps(header).encode() + b"\n" + data, file)
    except (OSError, ValueError) as error:
        raise NotSaved(
            f"No rescue copy of your work can be kept in {where}, because {why(error)}; save it often."
        ) from None
    return file


def find_rescues(path: Path | None = None, *, folder: Path | None = None) -> tuple[Rescue, ...]:
    """Return the rescue copies there are, newest first; with a path, only that plan's.

    A file that is no whole rescue copy is passed over and left where it lies.
    """
    where = folder or rescue_folder()
    wanted = _absolute(path) if path else None
    try:
        files = sorted(where.glob(f"*{SUFFIX}"))
    except OSError:
        return ()
    found = [rescue for file in files if (rescue := _header(file))]
    kept = [r for r in found if wanted is None or r.path == wanted]
    return tuple(sorted(kept, key=lambda r: r.written, reverse=True))


def read_rescue(rescue: Rescue) -> Plan:
    """Return the plan of a rescue copy; NotReadable when it is damaged."""
    try:
        data = rescue.file.read_bytes()
    except OSError:
        raise NotReadable("The rescue copy is gone or may not be read.") from None
    return decode(data.partition(b"\n")[2])


def drop_rescue(path: Path | None, *, token: str = "", folder: Path | None = None) -> None:
    """Take the rescue copy of a plan away, if there is one."""
    _unlink((folder or rescue_folder()) / _name(path, token))


def drop_found(rescue: Rescue) -> None:
    """Take a rescue copy away that :func:`find_rescues` gave."""
    _unlink(rescue.file)


def _unlink(file: Path) -> None:
    try:
        file.unlink(missing_ok=True)
    except OSError:
        raise NotSaved(f"The rescue copy {file} could not be taken away; delete it by hand.") from None


def _absolute(path: Path) -> Path:
    return Path(os.path.realpath(path))


def _name(path: Path | None, token: str) -> str:
    key = str(_absolute(path)) if path else f"unsaved {token}"
    return hashlib.sha256(key.encode("utf-8", "surrogateescape")).hexdigest()[:24] + SUFFIX


def _header(file: Path) -> Rescue | None:
    try:
        with file.open("rb") as stream:
            header = json.loads(stream.readline(65_536))
        if header["format"] != FORMAT:
            return None
        path = Path(header["path"]) if header["path"] else None
        return Rescue(file, path, datetime.fromisoformat(header["written"]), str(header["title"]))
    except (OSError, ValueError, KeyError, TypeError):
        return None
