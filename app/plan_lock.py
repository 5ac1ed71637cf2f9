"""Keeps a second window from writing over a plan that is open in a first one."""

import hashlib
import os
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QLockFile


class PlanLock:
    """Holds at most one plan's lock; locks lie in a folder of their own, so none is left beside a plan.

    A lock whose program has died counts for nothing.
    """

    def __init__(self, folder: Callable[[], Path]) -> None:
        self._folder = folder
        self._lock: QLockFile | None = None
        self._name = ""

    def take(self, path: Path) -> bool:
        """Hold that plan from now on and let go of the one before; False when another window has it."""
        name = _name(path)
        if self._lock is not None and name == self._name:
            return True
        try:
            folder = self._folder()
            folder.mkdir(parents=True, exist_ok=True)
        except OSError:
            return True  # where no lock can be kept, nobody is locked out
        lock = QLockFile(str(folder / name))
        lock.setStaleLockTime(0)
        if not lock.tryLock(0) and lock.error() is QLockFile.LockError.LockFailedError:
            return False
        self.let_go()
        self._lock, self._name = lock, name
        return True

    def let_go(self) -> None:
        """Hold nothing any more."""
        if self._lock is not None:
            self._lock.unlock()
        self._lock, self._name = None, ""


def _name(path: Path) -> str:
    whole = os.path.realpath(path)
    return hashlib.sha256(whole.encode("utf-8", "surrogateescape")).hexdigest()[:24] + ".lock"
