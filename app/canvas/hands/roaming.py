"""The keyboard's own place on the plan: which thing it reached last, and which corner of it it holds."""

from collections.abc import Callable

from app.canvas.hands.grips import grip_moved, grips
from app.canvas.hands.walking import PLURALS, onward, other_sort, sort_of
from app.selection import Selection
from app.session import Session
from wiring.plan.places import Point

NO_GRIP = "It has no corners or ends to take hold of."


class Roaming:
    """Goes from thing to thing and selects them; every step is told in words too."""

    def __init__(self, session: Session, selection: Selection, say: Callable[[str], None]) -> None:
        self._session, self._selection, self._say_it = session, selection, say
        self._here = self._told = ""
        self._goes = False  # what is selected now is selected by a step of its own
        self._grip = -1
        selection.changed.connect(lambda _ids: self._let_go())

    @property
    def chosen(self) -> frozenset[str]:
        """All that is selected."""
        return self._selection.ids | self._selection.grounds

    @property
    def held(self) -> Point | None:
        """Where the corner lies that is held; None when none is."""
        places = grips(self._session.plan, self._only()) if self._grip >= 0 else ()
        return places[self._grip] if 0 <= self._grip < len(places) else None

    def go(self, step: int, *, adds: bool = False) -> bool:
        """Select the next thing of the same sort; False past the last one, so that the focus moves on."""
        one = onward(self._session.plan, self.chosen, self._here, step)
        if one:
            self._pick(self.chosen | {one} if adds else frozenset((one,)))
            self._here = one
        return bool(one)

    def go_to_sort(self, step: int) -> None:
        """Select the first thing of another sort, and say what Tab goes through from here."""
        plan = self._session.plan
        one = other_sort(plan, self.chosen, self._here, step)
        if not one:
            self._say("There is nothing on the plan yet.")
            return
        self._pick(frozenset((one,)))
        self._here = one
        self._say(
            f"Tab goes through the {PLURALS[sort_of(plan, one)].removeprefix('the ')}. N: the next sort."
        )

    def leave_out(self) -> None:
        """Take the thing that was reached last out of the selection; the way goes on from it."""
        if self._here in self.chosen:
            here = self._here
            self._pick(self.chosen - {here})
            self._here = here

    def take_grip(self, step: int) -> None:
        """Take hold of the next corner, end or bend of the one thing that is selected."""
        places = grips(self._session.plan, self._only())
        if not places:
            self._say(NO_GRIP)
            return
        first = 0 if step > 0 else -1
        self._grip = (self._grip + step if self._grip >= 0 else first) % len(places)
        number = f"Corner {self._grip + 1} of {len(places)}"
        self._say(f"{number}: arrows move it. G: the next. Enter or Esc: let go.")

    def let_go(self) -> bool:
        """Let go of the corner; False when none was held."""
        was, self._grip = self._grip, -1
        return was >= 0

    def shift_grip(self, dx_mm: float, dy_mm: float) -> bool:
        """Shift the corner that is held; False when none is."""
        if self.held is None:
            return False
        session = self._session
        edit = grip_moved(session.plan, self._only(), self._grip, (dx_mm, dy_mm), session.kinds)
        if edit is not None:
            session.do(edit, joins_last=True)
        return True

    def _only(self) -> str:
        chosen = self.chosen
        return next(iter(chosen)) if len(chosen) == 1 else ""

    def _pick(self, chosen: frozenset[str]) -> None:
        plan = self._session.plan
        ids = frozenset(i for i in chosen if i in plan.parts or i in plan.wires)
        self._goes = True
        self._selection.select(ids, chosen - ids)
        self._goes = False

    def _say(self, words: str) -> None:
        self._told = words
        self._say_it(words)

    def _let_go(self) -> None:
        self._grip, self._here = -1, ""
        if self._told and not self._goes:
            self._say("")  # the hand has gone elsewhere: what was told of the keys' way holds no more
