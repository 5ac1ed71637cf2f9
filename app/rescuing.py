"""Keeps a rescue copy of unsaved work, at most every two seconds, and offers one that a crash left behind."""

import logging
import os
from collections.abc import Callable
from contextlib import suppress
from functools import partial
from pathlib import Path

from PySide6.QtCore import QLockFile, QObject, QTimer

from app.notices import Notice, Notices
from app.session import Session
from wiring.files.refusals import NotReadable, NotSaved
from wiring.files.rescue import Rescue, drop_found, drop_rescue, find_rescues, read_rescue, write_rescue
from wiring.plan.plan import Plan

THROTTLE_MS = 2000
PUT_AWAY = "put-away"
_LOG = logging.getLogger(__name__)


class Rescuing(QObject):
    """Writes while there is unsaved work; a good save or a clean close takes the copy away, nothing else."""

    def __init__(self, session: Session, folder: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._folder = folder
        self._token = str(os.getpid())
        self._copy: Path | None = None  # the file the copy lies in
        self._copy_of: Path | None = None  # the plan it is of
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(THROTTLE_MS)
        self._timer.timeout.connect(self.write_now)
        self._closed = False
        self._fallen: Plan | None = None  # the plan at the last fault nobody foresaw, until it is saved
        self._told = False  # that no copy can be kept; once is enough
        with suppress(OSError):  # told when the first copy is to be written
            folder.mkdir(parents=True, exist_ok=True)
        self._lock = QLockFile(str(folder / "editor.lock"))
        self._lock.setStaleLockTime(0)
        # A second window must not take the first one's living copy for a left-over.
        self._first = self._lock.tryLock(0)

    def begin(self) -> None:
        """Begin to watch; not before a left-over copy was offered, so that it is never written over."""
        self._session.changed.connect(lambda _change: self._worth_keeping())
        self._session.saved_state.connect(self._state_told)

    def write_now(self) -> None:
        """Write the copy at once if there is unsaved work."""
        self._timer.stop()
        self._write()

    def write_after_fault(self) -> None:
        """Write it at once, from any thread; a close from now on may be the fault's: it leaves the copy."""
        if self._fallen is not self._session.plan:  # a fault that comes back with each frame writes once
            self._fallen = self._session.plan
            self._write()

    def _write(self) -> None:
        session = self._session
        if not session.unsaved:
            return
        try:
            self._copy = write_rescue(session.plan, session.path, token=self._token, folder=self._folder)
        except NotSaved as refusal:
            _LOG.warning("%s", refusal)
            if not self._told:
                session.faulted.emit(str(refusal))
            self._told = True
            return
        self._told = False
        self._copy_of = session.path

    def offer_left_over(self, notices: Notices, take_up: Callable[[Plan, Path | None], None]) -> None:
        """Offer the newest copy that a crash left, in a notice; it stays on the disk until it is saved."""
        if not self._first:
            return
        left = self.left_over()
        if not left or _mark(left[0]) == self._read_put_away():
            return
        newest = left[0]
        when = newest.written.astimezone().strftime("%d %B, %H:%M")
        text = f"“{newest.title}” was not saved when Underboard last stopped; a copy from {when} was kept."
        act = partial(self.take, newest, notices, take_up)
        notices.offer(Notice(text, "weak", "Open the copy", act, partial(self._write_put_away, newest)))

    def left_over(self) -> tuple[Rescue, ...]:
        """Return the copies that are not this window's own, newest first; a second window has none."""
        if not self._first:
            return ()
        return tuple(r for r in find_rescues(folder=self._folder) if r.file != self._copy)

    def close(self) -> None:
        """Take the copy away after a clean close; after a fault it stays and is offered."""
        self._timer.stop()
        if self._fallen is None:
            self._drop()
        self._lock.unlock()
        self._closed = True

    def take(self, left: Rescue, notices: Notices, take_up: Callable[[Plan, Path | None], None]) -> None:
        """Go on with a copy; it stays on the disk until this window has one of its own."""
        try:
            plan = read_rescue(left)
        except NotReadable as refusal:
            notices.say(str(refusal), "weak")
            return
        take_up(plan, left.path)
        self.write_now()
        # It lies in this window's own copy now; the one that was left may go, unless both are one file.
        if self._copy is not None and left.file != self._copy:
            drop_found(left)

    def _read_put_away(self) -> str:
        try:
            return (self._folder / PUT_AWAY).read_text(encoding="utf-8")
        except OSError:
            return ""

    def _write_put_away(self, left: Rescue) -> None:
        """Remember that this very copy was put away, so that it is not offered again by itself."""
        try:
            (self._folder / PUT_AWAY).write_text(_mark(left), encoding="utf-8")
        except OSError as fault:
            _LOG.warning("what was put away cannot be remembered: %s", fault)

    def _worth_keeping(self) -> None:
        if not self._closed and self._session.unsaved and not self._timer.isActive():
            self._timer.start()

    def _state_told(self, unsaved: bool) -> None:
        if not unsaved:
            self._timer.stop()
            self._fallen = None
            self._drop()

    def _drop(self) -> None:
        if self._copy is None:
            return
        try:
            drop_rescue(self._copy_of, token=self._token, folder=self._folder)
        except NotSaved as refusal:
            _LOG.warning("%s", refusal)
        self._copy = None


def _mark(left: Rescue) -> str:
    return f"{left.file.name} {left.written.isoformat()}"
