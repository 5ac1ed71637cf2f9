"""Works out beside the window what will most likely be asked next, before it is.

A switch is thrown when the button comes up; a hand holds it down for a tenth of a second before, and by then
it is known what the plan will read.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from app.lane import Lane, Question, Told

if TYPE_CHECKING:
    from wiring.findings.situation import Situation


class Foresight(QObject):
    """One question at a time; what was foreseen last is kept until something else is."""

    came = Signal()  # what was begun with is there, or could not be worked out

    def __init__(self, ask: Callable[[Question], "Situation"], parent: QObject) -> None:
        super().__init__(parent)
        self._ask = ask
        self._under_way: Question | None = None
        self._known: tuple[Question, Situation] | None = None
        self._told = Told(self)
        self._told.done.connect(self._arrived)
        self._lane = Lane(self._asked, self._told)

    def begin(self, question: Question) -> None:
        """Begin with what may be asked next, unless it is known or under way."""
        if self.is_under_way(question) or self.answer(question, waits=False) is not None:
            return
        self._known, self._under_way = None, question
        self._lane.put(question)

    def forget(self) -> None:
        """Nothing of it is to come any more."""
        self._known = self._under_way = None
        self._lane.clear()

    def is_under_way(self, question: Question) -> bool:
        """Whether that is being worked out."""
        return self._under_way is not None and _is_same(self._under_way, question)

    def answer(self, question: Question, *, waits: bool) -> "Situation | None":
        """Return what was foreseen of a question, None where it was another; `waits` until it is there."""
        if waits and self.is_under_way(question):
            self._lane.wait()
        known = self._known
        return known[1] if known is not None and _is_same(known[0], question) else None

    def wait(self) -> None:
        """Return once nothing is under way."""
        self._lane.wait()

    def _asked(self, question: Question) -> "Situation":
        """Beside the window: put the answer where it is found even before it is told."""
        situation = self._ask(question)
        self._known = question, situation
        return situation

    def _arrived(self, question: Question, situation: "Situation | None") -> None:
        self._lane.free()
        if self._under_way is question:
            self._under_way = None
        self.came.emit()


def _is_same(one: Question, other: Question) -> bool:
    """Whether two questions are about one state of the plan."""
    return one.revision == other.revision and one.plan is other.plan and one.positions == other.positions
