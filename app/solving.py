"""Works the figures out beside the window: the newest plan wins, old answers are dropped.

Two questions are asked for each state of the plan. The figures come first and are quick; the battery outlooks
take longer and wait until the builder's hand has rested, so that they never hold up a figure. Where figures
take less than a part of a frame they are worked out on the spot and told as `lit`, so that lamps follow the
hand in the very next frame; what is found in them follows beside the window.
"""

import logging
from collections.abc import Callable, Mapping
from time import thread_time
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QObject, QThreadPool, QTimer, Signal

from app.session import PlanChanged, Session
from wiring.plan.names import PartId
from wiring.plan.plan import Plan

if TYPE_CHECKING:
    from wiring.circuit.figures import Figures
    from wiring.findings.situation import Situation

QUICK_SEC = 0.008  # figures that took no longer are worked out before the next frame is painted
REST_MS = 200  # how long the hand must rest before the outlooks are begun
_LOG = logging.getLogger(__name__)
WENT_WRONG = (
    "The figures of this state of the plan could not be worked out; "
    "the drawing itself is safe, undo the last step to see figures again."
)


class Answer(NamedTuple):
    """What is known about one state of the plan."""

    revision: int
    positions: Mapping[PartId, str]
    situation: "Situation"
    complete: bool = True  # False while the battery outlooks are still being worked out


class Lit(NamedTuple):
    """The figures of one state of the plan, before it is known what is wrong in them."""

    revision: int
    figures: "Figures"


class _Question(NamedTuple):
    ticket: int
    revision: int
    plan: Plan
    positions: Mapping[PartId, str]
    outlooks: bool
    figures: "Figures | None" = None  # when they are known already


class _Told(QObject):
    """Carries an answer from a worker thread to the window's."""

    done = Signal(object, object)  # _Question, Situation or None


class _Lane:
    """One question at a time; a newer one replaces the one that waits."""

    def __init__(self, ask: Callable[[_Question], "Situation"], told: _Told) -> None:
        self._ask = ask
        self._told = told
        self._busy = False
        self._waiting: _Question | None = None
        self._pool = QThreadPool()
        self._pool.setMaxThreadCount(1)

    def put(self, question: _Question) -> None:
        if self._busy:
            self._waiting = question
            return
        self._busy = True
        self._pool.start(lambda: self._work(question))  # never a QRunnable, see app.making

    def free(self) -> None:
        self._busy = False
        waiting, self._waiting = self._waiting, None
        if waiting is not None:
            self.put(waiting)

    def clear(self) -> None:
        self._waiting = None

    def wait(self) -> None:
        self._pool.waitForDone()

    def _work(self, question: _Question) -> None:
        try:
            situation: Situation | None = self._ask(question)
        except Exception:  # whatever happens here must reach the log, not end the thread
            _LOG.exception("the figures could not be worked out")
            situation = None
        self._told.done.emit(question, situation)


class Solving(QObject):
    """Answers the session's plan and positions; `at_once` works in the calling thread, for tests."""

    lit = Signal(object)  # Lit, a moment before the answer
    answered = Signal(object)  # Answer
    working = Signal(bool)
    failed = Signal(str)  # one plain sentence

    def __init__(self, session: Session, *, at_once: bool = False, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._at_once = at_once
        self._ticket = 0
        self._complaint = -1
        self._took_sec: float | None = None  # the last time figures were worked out; None for a new plan
        self.answer: Answer | None = None
        self._told = _Told(self)
        self._told.done.connect(self._arrived)
        self._figures = _Lane(self._examined, self._told)
        self._outlooks = _Lane(self._examined, self._told)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self._begin_outlooks)
        session.changed.connect(self._follow)
        session.thrown.connect(lambda _positions: self.request())

    def request(self) -> None:
        """Ask for the figures of the plan as it is now."""
        self._ticket += 1
        self._rest.stop()
        self._outlooks.clear()
        if self._at_once:
            self._arrived_at_once()
            return
        self.working.emit(True)
        question = self._question(outlooks=False)
        if self._took_sec is not None and self._took_sec <= QUICK_SEC:
            question = self._lit_at_once(question)
        if question.figures is None:
            self._figures.put(question)
        else:  # only once the lamps are painted: Python's threads would slow each other down
            QTimer.singleShot(0, lambda: self._put_if_newest(question))

    def _put_if_newest(self, question: _Question) -> None:
        if question.ticket == self._ticket:
            self._figures.put(question)

    def close(self) -> None:
        """Stop asking and wait for what is under way."""
        self._ticket += 1
        self._rest.stop()
        for lane in (self._figures, self._outlooks):
            lane.clear()
            lane.wait()

    def _question(self, *, outlooks: bool) -> _Question:
        session = self._session
        return _Question(self._ticket, session.revision, session.plan, session.positions, outlooks)

    def _follow(self, change: PlanChanged) -> None:
        if change.cause == "open":
            self._took_sec = None
        self.request()

    def _lit_at_once(self, question: _Question) -> _Question:
        """Return the question with its figures, after telling them."""
        try:
            figures = self._solved(question)
        except Exception:  # the worker will meet it too, and tell
            _LOG.exception("the figures could not be worked out")
            return question
        self.lit.emit(Lit(question.revision, figures))
        return question._replace(figures=figures)

    def _solved(self, question: _Question) -> "Figures":
        from wiring.circuit.solve import solve

        began = thread_time()
        figures = solve(question.plan, self._session.kinds, question.positions)
        self._took_sec = thread_time() - began
        return figures

    def _examined(self, question: _Question) -> "Situation":
        from wiring.findings.situation import examine

        known = self.answer
        figures = question.figures
        if question.outlooks and known is not None and known.revision == question.revision:
            figures = known.situation.figures if dict(known.positions) == dict(question.positions) else None
        if figures is None:
            figures = self._solved(question)
        return examine(
            question.plan,
            self._session.kinds,
            question.positions,
            outlooks=question.outlooks,
            figures=figures,
        )

    def _arrived_at_once(self) -> None:
        question = self._question(outlooks=True)
        try:
            situation: Situation | None = self._examined(question)
        except Exception:
            _LOG.exception("the figures could not be worked out")
            situation = None
        self._tell(question, situation)

    def _arrived(self, question: _Question, situation: "Situation | None") -> None:
        (self._outlooks if question.outlooks else self._figures).free()
        if question.ticket == self._ticket:
            self._tell(question, situation)

    def _tell(self, question: _Question, situation: "Situation | None") -> None:
        if situation is None:
            self.working.emit(False)
            if self._complaint != question.revision:
                self._complaint = question.revision
                self.failed.emit(WENT_WRONG)
            return
        waits = not question.outlooks and self._has_battery(question.plan)
        self.answer = Answer(question.revision, question.positions, situation, complete=not waits)
        self.answered.emit(self.answer)
        if waits:
            self._rest.start()
        else:
            self.working.emit(False)

    def _has_battery(self, plan: Plan) -> bool:
        kinds = self._session.kinds
        return any(p.kind in kinds and kinds[p.kind].behaviour == "battery" for p in plan.parts.values())

    def _begin_outlooks(self) -> None:
        self._outlooks.put(self._question(outlooks=True))
