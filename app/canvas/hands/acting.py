"""Runs the one active gesture: feeds it pointers, shows its previews, has done what it returns."""

from collections.abc import Callable, Generator
from typing import Generic, Protocol, TypeVar

from app.canvas.gestures.pointer import Act, Around, Pointer, Preview
from app.session import Session
from wiring.edits.edit import EditRefused


class Shown(Protocol):
    """What every preview has, on the plan and on the bench."""

    @property
    def held(self) -> tuple[str, str] | None:
        """A push button held down, and its position meanwhile."""

    @property
    def begun(self) -> bool:
        """Whether something is drawn already, so that leaving it keeps the tool in hand."""


A = TypeVar("A")  # what a gesture may look at
P = TypeVar("P")  # what it is told
V = TypeVar("V", bound=Shown)  # what it shows
T = TypeVar("T")  # what it returns


class Acting(Generic[A, P, V, T]):
    """At most one gesture at a time; a tool begins its gesture again after each act.

    What is looked at, what is shown while nothing runs and how acts are carried out is passed in: only in
    these the plan and the panel bench differ.
    """

    def __init__(
        self,
        session: Session,
        nothing: V,
        around: Callable[[], A],
        carry_out: Callable[[T], None],
        told: Callable[[], None],
    ) -> None:
        self._session, self._nothing = session, nothing
        self._around, self.carry_out, self._told = around, carry_out, told
        self._gesture: Generator[V, P, T | None] | None = None
        self._begin: Callable[[A, V], Generator[V, P, T | None] | None] | None = None
        self._held: tuple[str, str] | None = None  # a button held down, and where it goes back to
        self.tool = "select"
        self.preview = nothing

    @property
    def runs(self) -> bool:
        """Whether a gesture is under way."""
        return self._gesture is not None

    @property
    def goes_back(self) -> tuple[str, str] | None:
        """A push button that is held down, and the position it goes back to."""
        return self._held

    def take(self, tool: str, begin: Callable[[A, V], Generator[V, P, T | None] | None] | None) -> None:
        """Take a tool in hand; "select" has no gesture of its own until something is pressed.

        `begin` is given the last preview; when it returns None the tool is put away.
        """
        self._stop()
        self.tool, self._begin = tool, begin
        self._begin_again(self._nothing)
        self._told()

    def begin(self, gesture: Generator[V, P, T | None]) -> None:
        """Start a gesture that a press has led to."""
        self._stop()
        self._gesture = gesture
        self._step(lambda: next(gesture))

    def send(self, pointer: P) -> None:
        """Give the gesture one more event."""
        gesture = self._gesture
        if gesture is not None:
            self._step(lambda: gesture.send(pointer))

    def cancel(self) -> bool:
        """Leave what is under way without a trace, then the tool; False when there was nothing to leave."""
        if self._gesture is None:
            return False
        begun = self.preview.begun
        self._stop()
        if begun and self._begin is not None:
            self._begin_again(self._nothing)
        else:
            self.tool, self._begin = "select", None
        self._told()
        return True

    def interrupt(self) -> None:
        """Leave what is under way because the plan or the focus changed; the tool stays in hand."""
        self._stop()
        self._begin_again(self._nothing)
        self._told()

    def _step(self, advance: Callable[[], V]) -> None:
        try:
            self.preview = advance()
        except EditRefused as refusal:  # a preview that cannot be: a part beyond the end of the world, say
            self._stop()
            self._session.refused.emit(str(refusal))
            self._begin_again(self._nothing)
        except StopIteration as done:
            self._gesture = None
            act: T | None = done.value
            last, self.preview = self.preview, self._nothing
            self._held = None  # its own act puts it back
            if act is not None:
                self.carry_out(act)
            self._begin_again(last)
        else:
            self._hold(self.preview)
        self._told()

    def _hold(self, preview: V) -> None:
        if preview.held is None:
            self._let_go()
        elif self._held is None:
            part, position = preview.held
            self._held = part, self._session.positions.get(part, "")
            self._session.throw(part, position)

    def _begin_again(self, last: V) -> None:
        if self._begin is not None and self._gesture is None:
            self._gesture = self._begin(self._around(), last)
            if self._gesture is not None:
                self.preview = next(self._gesture)
            else:
                self.tool, self._begin = "select", None

    def _stop(self) -> None:
        if self._gesture is not None:
            self._gesture.close()
        self._gesture, self.preview = None, self._nothing
        self._let_go()

    def _let_go(self) -> None:
        held, self._held = self._held, None
        if held is not None:
            self._session.throw(*held)


PlanActing = Acting[Around, Pointer, Preview, Act]
