"""One thread beside the window that answers questions about the plan; only the newest question waits."""

import logging
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QObject, QThreadPool, Signal

from wiring.plan.names import PartId
from wiring.plan.plan import Plan

if TYPE_CHECKING:
    from wiring.circuit.figures import Figures
    from wiring.findings.situation import Situation

_LOG = logging.getLogger(__name__)


class Question(NamedTuple):
    """A state of the plan about which everything is to be worked out."""

    ticket: int
    revision: int
    plan: Plan
    positions: Mapping[PartId, str]
    outlooks: bool
    figures: "Figures | None" = None  # when they are known already


class Told(QObject):
    """Carries an answer from a worker thread to the window's."""

    done = Signal(object, object)  # Question, Situation or None


class Lane:
    """One question at a time; a newer one replaces the one that waits."""

    def __init__(self, ask: Callable[[Question], "Situation"], told: Told) -> None:
        self._ask = ask
        self._told = told
        self._busy = False
        self._waiting: Question | None = None
        self._pool = QThreadPool()
        self._pool.setMaxThreadCount(1)

    def put(self, question: Question) -> None:
        """Begin with a question, or keep it for when the one under way is answered."""
        if self._busy:
            self._waiting = question
            return
        self._busy = True
        self._pool.start(lambda: self._work(question))  # never a QRunnable, see app.making

    def free(self) -> None:
        """Go on with what waits: an answer has arrived."""
        self._busy = False
        waiting, self._waiting = self._waiting, None
        if waiting is not None:
            self.put(waiting)

    def clear(self) -> None:
        """Forget what waits."""
        self._waiting = None

    def wait(self) -> None:
        """Return once nothing is under way."""
        self._pool.waitForDone()

    def _work(self, question: Question) -> None:
        self._told.done.emit(question, tried(self._ask, question))


def tried(ask: Callable[[Question], "Situation"], question: Question) -> "Situation | None":
    """Return the answer; None when there is none, which the log explains."""
    try:
        return ask(question)
    except Exception:  # whatever happens here must reach the log, not end the thread
        _LOG.exception("the figures could not be worked out")
        return None
