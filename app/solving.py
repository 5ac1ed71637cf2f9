"""Works the figures out: on the spot where that takes less than a part of a frame, else beside the window.

Two questions are asked for each state of the plan. Figures and findings come first and are quick; the battery
outlooks take longer and wait until the builder's hand has rested, so that they never hold up a figure. How
long the first ones took last decides where the next are worked out. Where both are quick they are answered on
the spot, so that the very next frame shows everything. Where only the figures are, these are told as `lit`,
so that lamps follow the hand; what is found in them is looked for beside the window once that is painted. The
newest plan wins, old answers are dropped. What a pressed switch will do is worked out before it is let go.
"""

import logging
from collections.abc import Callable, Mapping
from time import thread_time
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QObject, QTimer, Signal

from app.foresight import Foresight
from app.lane import Lane, Question, Told, tried
from app.session import PlanChanged, Session
from wiring.plan.names import PartId
from wiring.plan.plan import Plan

if TYPE_CHECKING:
    from wiring.circuit.figures import Figures
    from wiring.findings.situation import Situation

QUICK_SEC = 0.008  # figures that took no longer are worked out before the next frame is painted
ALL_QUICK_SEC = 0.018  # so is what is found in them, too: painting twice takes as long
UNSEEN_MS = 40  # by then a frame would have been painted: the plan is not in sight
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


class Pace:
    """How long figures and findings took last, in seconds of processor time; infinite for a new plan."""

    def __init__(self) -> None:
        self.figures_sec = self.findings_sec = float("inf")

    @property
    def lights_at_once(self) -> bool:
        """Return whether figures are worked out before the next frame is painted."""
        return self.figures_sec <= QUICK_SEC

    @property
    def answers_at_once(self) -> bool:
        """Return whether what is found in them is, too."""
        return self.lights_at_once and self.figures_sec + self.findings_sec <= ALL_QUICK_SEC


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
        self.pace = Pace()
        self.answer: Answer | None = None
        self._told = Told(self)
        self._told.done.connect(self._arrived)
        self._figures = Lane(self._examined, self._told)
        self._outlooks = Lane(self._examined, self._told)
        self._foresight = Foresight(self._examined, self)
        self._foresight.came.connect(self._foretold)
        self._awaited: Question | None = None  # is what the foresight has under way
        self._lit_first: Question | None = None  # waits until its lamps are painted
        self._unseen = _timer(self, UNSEEN_MS, self._look_for_findings)
        self._rest = _timer(self, REST_MS, self._begin_outlooks)
        session.changed.connect(self._follow)
        session.thrown.connect(lambda _positions: self.request())
        session.foreseen.connect(self._foresee)

    def request(self) -> None:
        """Ask for the figures of the plan as it is now."""
        self._drop()
        if self._at_once:
            question = self._question(outlooks=True)
            self._tell(question, tried(self._examined, question))
            return
        self.working.emit(True)
        question = self._question(outlooks=False)
        foreseen = self._foresight.answer(question, waits=self.pace.answers_at_once)
        if foreseen is not None:
            self._tell(question, foreseen)
        elif self.pace.lights_at_once:
            self._light_up(question)
        elif self._foresight.is_under_way(question):
            self._awaited = question
        else:
            self._figures.put(question)

    def go_on(self) -> None:
        """What was told is painted: now the worker may have its turn."""
        if self._lit_first is not None:  # after the rest of the window: two threads slow each other down
            QTimer.singleShot(0, self._look_for_findings)

    def close(self) -> None:
        """Stop asking and wait for what is under way."""
        self._drop()
        self._foresight.forget()
        for lane in (self._foresight, self._figures, self._outlooks):
            lane.wait()

    def _drop(self) -> None:
        """Forget what was asked."""
        self._ticket += 1
        self._rest.stop()
        self._unseen.stop()
        self._lit_first = self._awaited = None
        for lane in (self._figures, self._outlooks):
            lane.clear()

    def _question(self, *, outlooks: bool) -> Question:
        session = self._session
        return Question(self._ticket, session.revision, session.plan, session.positions, outlooks)

    def _follow(self, change: PlanChanged) -> None:
        if change.cause == "open":
            self.pace = Pace()
        self.request()

    def _foresee(self, positions: Mapping[PartId, str]) -> None:
        """A switch is pressed: work out what there will be to show when it is let go."""
        if not self._at_once:
            self._foresight.begin(self._question(outlooks=False)._replace(positions=positions))

    def _foretold(self) -> None:
        awaited = self._awaited
        if awaited is None or self._foresight.is_under_way(awaited):
            return
        self._awaited, known = None, self._foresight.answer(awaited, waits=False)
        self._tell(awaited, known) if known is not None else self._figures.put(awaited)

    def _light_up(self, question: Question) -> None:
        """Work out the figures at once, and what is found in them when that is quick too."""
        try:
            question = question._replace(figures=self._solved(question))
        except Exception:  # the worker will meet it too, and tell
            _LOG.exception("the figures could not be worked out")
            self._figures.put(question)
            return
        assert question.figures is not None
        if self.pace.answers_at_once:
            self._tell(question, tried(self._examined, question))
            return
        if self._foresight.is_under_way(question):
            self._awaited = question
        else:
            self._lit_first = question
            self._unseen.start()
        self.lit.emit(Lit(question.revision, question.figures))

    def _look_for_findings(self) -> None:
        question, self._lit_first = self._lit_first, None
        self._unseen.stop()
        if question is not None:
            self._figures.put(question)

    def _solved(self, question: Question) -> "Figures":
        from wiring.circuit.solve import solve

        began = thread_time()
        figures = solve(question.plan, self._session.kinds, question.positions)
        self.pace.figures_sec = thread_time() - began
        return figures

    def _examined(self, question: Question) -> "Situation":
        from wiring.findings.situation import examine

        known = self.answer
        figures = question.figures
        if question.outlooks and known is not None and known.revision == question.revision:
            figures = known.situation.figures if dict(known.positions) == dict(question.positions) else None
        if figures is None:
            figures = self._solved(question)
        began = thread_time()
        situation = examine(
            question.plan,
            self._session.kinds,
            question.positions,
            outlooks=question.outlooks,
            figures=figures,
        )
        if not question.outlooks:
            self.pace.findings_sec = thread_time() - began
        return situation

    def _arrived(self, question: Question, situation: "Situation | None") -> None:
        (self._outlooks if question.outlooks else self._figures).free()
        if question.ticket == self._ticket:
            self._tell(question, situation)

    def _tell(self, question: Question, situation: "Situation | None") -> None:
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


def _timer(parent: QObject, wait_ms: int, then: Callable[[], None]) -> QTimer:
    made = QTimer(parent)
    made.setSingleShot(True)
    made.setInterval(wait_ms)
    made.timeout.connect(then)
    return made
