"""Tells when a plan's file is changed by somebody else while it is open."""

import hashlib
from pathlib import Path

from PySide6.QtCore import QFileSystemWatcher, QObject, QTimer, Signal

SETTLE_MS = 300  # a file that is put in place in several steps is looked at once
GONE = ""


class DiskWatch(QObject):
    """Compares what the file holds, not when it was written; each foreign change is told once."""

    differs = Signal(bool)  # whether the file is still there

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._path: Path | None = None
        self._known = GONE  # what this window read or wrote last
        self._told = GONE
        self._watcher = QFileSystemWatcher(self)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(SETTLE_MS)
        self._timer.timeout.connect(self.look)
        self._watcher.fileChanged.connect(lambda _path: self._timer.start())
        self._watcher.directoryChanged.connect(lambda _path: self._timer.start())

    def follow(self, path: Path | None) -> None:
        """Take the file as it is now for known, and watch it; None watches nothing."""
        self._timer.stop()
        watched = [*self._watcher.files(), *self._watcher.directories()]
        if watched:
            self._watcher.removePaths(watched)
        self._path = path.absolute() if path is not None else None
        self._known = self._told = GONE
        if self._path is not None:
            self._known = self._told = _mark(self._path)
            self._arm()

    @property
    def foreign(self) -> bool:
        """Whether the file holds something else now than this window read or wrote last."""
        return self._path is not None and _mark(self._path) not in (self._known, GONE)

    def look(self) -> None:
        """Look at the file now."""
        if self._path is None:
            return
        self._arm()
        found = _mark(self._path)
        if found == self._told:
            return
        self._told = found
        if found != self._known:
            self.differs.emit(found != GONE)

    def _arm(self) -> None:
        """Watch again: a file that was replaced is no longer the one that was watched."""
        assert self._path is not None
        for path in (self._path, self._path.parent):
            name = str(path)
            if name not in (*self._watcher.files(), *self._watcher.directories()) and path.exists():
                self._watcher.addPath(name)


def _mark(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return GONE
