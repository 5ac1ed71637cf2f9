"""Makes something slow beside the window, drawings or sheets: the newest wish wins, older results go."""

import logging
from collections.abc import Callable

from PySide6.QtCore import QObject, QThreadPool, Signal

_LOG = logging.getLogger(__name__)


class Making(QObject):
    """One piece of work at a time; `at_once` works in the calling thread, for tests and pictures."""

    made = Signal(object)  # what the work returned, None when it failed
    _done = Signal(int, object)

    def __init__(self, parent: QObject, *, at_once: bool = False) -> None:
        super().__init__(parent)
        self._at_once = at_once
        self._ticket = 0
        self._busy = False
        self._waiting: Callable[[], object] | None = None
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._done.connect(self._arrived)

    @property
    def busy(self) -> bool:
        """Whether something is being made."""
        return self._busy

    def ask(self, work: Callable[[], object]) -> None:
        """Ask for one piece of work; what was asked before and has not begun is forgotten."""
        self._ticket += 1
        if self._at_once:
            self.made.emit(_result(work))
            return
        self._waiting = work
        self._begin()

    def close(self) -> None:
        """Forget what waits, and wait for what is under way."""
        self._ticket += 1
        self._waiting = None
        self._pool.waitForDone()

    def _begin(self) -> None:
        if self._busy or self._waiting is None:
            return
        work, ticket = self._waiting, self._ticket
        self._waiting, self._busy = None, True
        # A function, never a QRunnable: Qt deletes that, but its Python half stays and answers for what comes
        # to lie at the same address, a menu’s action for example.
        self._pool.start(lambda: self._done.emit(ticket, _result(work)))

    def _arrived(self, ticket: int, result: object) -> None:
        self._busy = False
        if ticket == self._ticket:
            self.made.emit(result)
        self._begin()


def _result(work: Callable[[], object]) -> object:
    try:
        return work()
    except Exception:  # it must reach the log and the page, not end the thread
        _LOG.exception("what was asked for could not be made")
        return None
