"""Plans on disk: written beside the old file, read back, and only then put in its place."""

import contextlib
import errno
import os
import re
import secrets
import stat
import time
from pathlib import Path

from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.format import LARGEST_BYTES
from wiring.files.refusals import NotReadable, NotSaved
from wiring.plan.plan import Plan
from wiring.plan.sentences import after_colon

SCRAP = re.compile(r"[0-9a-f]{12}\.tmp")
SCRAP_AGE_SEC = 3600.0  # younger ones may belong to a save that is still going on
ANY_WRITE = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH
REASONS = {
    errno.EACCES: "you may not write in its folder",
    errno.EPERM: "you may not write in its folder",
    errno.EROFS: "its folder can only be read",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is full",
    errno.ENOENT: "its folder does not exist",
    errno.ENOTDIR: "its folder does not exist",
    errno.EISDIR: "a folder has that name",
    errno.ENAMETOOLONG: "the name is too long",
}
REMEDIES = {
    errno.ENOSPC: "make room or choose another folder",
    errno.EDQUOT: "make room or choose another folder",
    errno.EISDIR: "choose another name",
    errno.ENAMETOOLONG: "choose a shorter one",
}


def load(path: Path | str) -> Plan:
    """Return the plan of a file; NotReadable names the file and says why it cannot be opened."""
    path = Path(path)
    try:
        return decode(_bytes(path))
    except NotReadable as reason:
        raise NotReadable(f"{path.name or path} cannot be opened: {after_colon(str(reason))}") from None


def _bytes(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            if not stat.S_ISREG(os.fstat(file.fileno()).st_mode):
                raise NotReadable("It is not a file with a plan; choose one that ends in .underboard.")
            return file.read(LARGEST_BYTES + 1)
    except FileNotFoundError:
        raise NotReadable("There is no such file; check its name and folder.") from None
    except IsADirectoryError:
        raise NotReadable("It is a folder; choose a file that ends in .underboard.") from None
    except PermissionError:
        raise NotReadable("You may not read it; ask its owner or change its rights.") from None
    except (OSError, ValueError) as error:
        raise NotReadable(f"The disk refused to read it ({why(error)}).") from None


def save(plan: Plan, path: Path | str) -> None:
    """Write a plan so that at every moment either the old file or the whole new one stands at the path.

    Keeps the file's mode bits and follows a symbolic link to the file it points at. NotSaved says why it
    could not be done; the old file is then untouched.
    """
    path = Path(path)
    try:
        data = encode(plan)
        same = decode(data) == plan
    except ValueError:
        raise NotSaved(f"{path.name} was not saved, because the plan holds a number without end.") from None
    except NotReadable as reason:
        raise NotSaved(
            f"{path.name} was not saved, because it could not be opened again: {after_colon(str(reason))}"
        ) from None
    if not same:
        raise NotSaved(f"{path.name} was not saved, because it would not read back as it is now.")
    write_whole(data, path)


def write_whole(data: bytes, path: Path) -> None:
    """Put bytes at a path in one step; NotSaved when that fails."""
    try:
        replace_whole(data, path)
    except (OSError, ValueError) as error:
        remedy = REMEDIES.get(getattr(error, "errno", None) or 0, "choose another folder or name")
        raise NotSaved(f"{path.name} was not saved, because {why(error)}; {remedy}.") from None


def replace_whole(data: bytes, path: Path) -> None:
    """Put bytes at a path in one step; what the system says when that fails (OSError or ValueError)."""
    beside: Path | None = None
    try:
        target = Path(os.path.realpath(path))
        if target.is_dir():
            raise IsADirectoryError(errno.EISDIR, "is a directory")
        mode = stat.S_IMODE(target.stat().st_mode) if target.exists() else None
        if mode is not None and not (mode & ANY_WRITE and os.access(target, os.W_OK)):
            raise OSError("it is marked as read only")  # a rename would not ask
        name = target.with_name(f".{target.name[:100]}.{secrets.token_hex(6)}.tmp")
        with name.open("xb") as file:
            beside = name
            if mode is not None:
                name.chmod(mode)
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if beside.read_bytes() != data:
            raise OSError(errno.EIO, "what was written reads back differently")
        beside.replace(target)
        beside = None
        _sync_folder(target.parent)
        _sweep(target)
    finally:
        if beside is not None:
            with contextlib.suppress(OSError):
                beside.unlink()


def _sweep(target: Path) -> None:
    """Take away what saves of the same file left beside it when the program was killed long ago."""
    start, now = f".{target.name[:100]}.", time.time()
    with contextlib.suppress(OSError):
        for entry in list(os.scandir(target.parent)):
            ours = entry.name.startswith(start) and SCRAP.fullmatch(entry.name[len(start) :])
            if ours and now - entry.stat(follow_symlinks=False).st_mtime > SCRAP_AGE_SEC:
                Path(entry).unlink(missing_ok=True)


def _sync_folder(folder: Path) -> None:
    """Let the new name reach the disk too, where the system can do that."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def why(error: Exception) -> str:
    """Return what the system said, in the words that come after "because"."""
    if isinstance(error, OSError) and error.errno in REASONS:
        return REASONS[error.errno]
    return str(getattr(error, "strerror", None) or error or "the disk refused").lower()
