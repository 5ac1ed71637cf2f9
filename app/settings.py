"""What the editor remembers between two days: look, window, recent plans, folders. Never part of a plan."""

import os
import tempfile
from contextlib import suppress
from functools import cache
from pathlib import Path

from platformdirs import user_config_path, user_state_path
from PySide6.QtCore import QByteArray, QSettings

PROGRAM = "underboard"
RECENT_KEPT = 8


class Remembered:
    """Choices of this person on this machine, in one small text file."""

    def __init__(self, path: Path | None = None) -> None:
        self.keep_in(path or user_config_path(PROGRAM, appauthor=False) / "editor.ini")

    def keep_in(self, path: Path) -> None:
        """Keep the choices in that file from now on."""
        self._store = QSettings(str(path), QSettings.Format.IniFormat)

    @property
    def complaint(self) -> str:
        """One sentence when nothing can be remembered; "" when it can."""
        folder = Path(self._store.fileName()).parent
        if _may_write(folder):
            return ""
        return f"Look, window and recent plans are not remembered, because you may not write in {folder}."

    @property
    def look(self) -> str:
        """The look worn last, "light" or "dark"."""
        return str(self._store.value("look", "light"))

    @look.setter
    def look(self, name: str) -> None:
        self._store.setValue("look", name)

    @property
    def words(self) -> float:
        """How large words are, as chosen; 0 where nobody has chosen."""
        try:
            return float(str(self._store.value("words", "0")))
        except ValueError:
            return 0.0

    @words.setter
    def words(self, chosen: float) -> None:
        self._store.setValue("words", str(chosen))

    @property
    def folder(self) -> Path:
        """Where a plan was opened or saved last."""
        return Path(str(self._store.value("folder", str(Path.home()))))

    @property
    def sets_folder(self) -> Path:
        """Where kept sets of parts lie; it need not exist."""
        return Path(self._store.fileName()).parent / "sets"

    @property
    def recent(self) -> tuple[Path, ...]:
        """Plans opened or saved last, newest first; those that are gone are left out."""
        kept = self._store.value("recent", [])
        names = [kept] if isinstance(kept, str) else list(kept or [])  # type: ignore[call-overload]
        return tuple(path for path in map(Path, names) if path.is_file())

    def remember_plan(self, path: Path) -> None:
        """Put a plan at the head of the recent ones."""
        path = path.resolve()
        others = [p for p in self.recent if p != path]
        self._store.setValue("recent", [str(p) for p in [path, *others][:RECENT_KEPT]])
        self._store.setValue("folder", str(path.parent))

    def text(self, name: str) -> str:
        """Return a text kept under a name; "" when there is none."""
        return str(self._store.value(name, ""))

    def keep_text(self, name: str, text: str) -> None:
        """Keep a text under a name."""
        self._store.setValue(name, text)

    def keep_window(self, geometry: QByteArray, columns: QByteArray) -> None:
        """Remember the window's place and the width of its columns."""
        self._store.setValue("window", geometry)
        self._store.setValue("columns", columns)

    def window(self) -> tuple[QByteArray, QByteArray] | None:
        """Return the window's place and columns as kept; None on a first start."""
        geometry, columns = self._store.value("window"), self._store.value("columns")
        if isinstance(geometry, QByteArray) and isinstance(columns, QByteArray):
            return geometry, columns
        return None


def state_folder() -> Path:
    """Return the folder for logs and rescue copies, made when it is not there.

    Where that may not be written, one among the machine's temporary files serves until the next start.
    """
    folder = user_state_path(PROGRAM, appauthor=False)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError:
        return _scratch_folder()
    return folder if _may_write(folder) else _scratch_folder()


def state_complaint() -> str:
    """Return one sentence when logs and rescue copies cannot lie where they should; "" when they can."""
    folder = user_state_path(PROGRAM, appauthor=False)
    there = state_folder()
    if there == folder:
        return ""
    return f"Rescue copies of unsaved work lie in {there} for now, because you may not write in {folder}."


@cache
def _scratch_folder() -> Path:
    """Make one that nobody else may look into; a folder of that name that is another person's is not used."""
    named = Path(tempfile.gettempdir()) / f"{PROGRAM}-{os.getuid()}"
    with suppress(OSError):
        named.mkdir(mode=0o700, exist_ok=True)
        if not named.is_symlink() and named.stat().st_uid == os.getuid():
            return named
    return Path(tempfile.mkdtemp(prefix=f"{PROGRAM}-"))


def _may_write(folder: Path) -> bool:
    """Whether files may be written in a folder, or in the nearest one above it that is there."""
    there = next((f for f in (folder, *folder.parents) if f.exists()), folder)
    return there.is_dir() and os.access(there, os.W_OK | os.X_OK)
