"""Runs the one active gesture: feeds it pointers, shows its previews, carries out what it returns."""

from collections.abc import Callable

from app.canvas.gestures.pointer import Act, Around, Do, Gesture, Pick, Pointer, Preview
from app.selection import Selection
from app.session import Session
from wiring.edits.edit import EditRefused
from wiring.plan.changes import changes_between

NOTHING = Preview()
Begin = Callable[[Around, Preview], Gesture | None]  # given the last preview; None puts the tool away


class Acting:
    """At most one gesture at a time; a tool begins its gesture again after each act."""

    def __init__(
        self, session: Session, selection: Selection, around: Callable[[], Around], told: Callable[[], None]
    ) -> None:
        self._session, self._selection = session, selection
        self._around, self._told = around, told
        self._gesture: Gesture | None = None
        self._begin: Begin | None = None
        self._held: tuple[str, str] | None = None  # a button held down, and where it goes back to
        self.tool = "select"
        self.preview = NOTHING

    @property
    def runs(self) -> bool:
        """Whether a gesture is under way."""
        return self._gesture is not None

    def take(self, tool: str, begin: Begin | None) -> None:
        """Take a tool in hand; "select" has no gesture of its own until something is pressed."""
        self._stop()
        self.tool, self._begin = tool, begin
        self._begin_again()
        self._told()

    def begin(self, gesture: Gesture) -> None:
        """Start a gesture that a press has led to."""
        self._stop()
        self._gesture = gesture
        self._step(lambda: next(gesture))

    def send(self, pointer: Pointer) -> None:
        """Give the gesture one more event."""
        gesture = self._gesture
        if gesture is not None:
            self._step(lambda: gesture.send(pointer))

    def cancel(self) -> bool:
        """Leave what is under way without a trace, then the tool; False when there was nothing to leave."""
        shown = self.preview
        begun = (shown.line, shown.plan, shown.held, shown.band, shown.frame, shown.outline, shown.bar)
        started = any(begun)
        if self._gesture is None:
            return False
        self._stop()
        if started and self._begin is not None:
            self._begin_again()
        else:
            self.tool, self._begin = "select", None
        self._told()
        return True

    def interrupt(self) -> None:
        """Leave what is under way because the plan or the focus changed; the tool stays in hand."""
        self._stop()
        self._begin_again()
        self._told()

    def carry_out(self, act: Act) -> None:
        """Do what a gesture has returned."""
        if isinstance(act, Pick):
            self._selection.select(act.ids, act.ground)
        elif isinstance(act, Do):
            self._do(act)
        else:
            self._session.throw(act.part, act.position)
            self._selection.select((act.part,))

    def _do(self, act: Do) -> None:
        before = self._session.plan
        if not self._session.do(act.edit) or not act.pick_new:
            return
        changes = changes_between(before, self._session.plan)
        self._selection.select(changes.parts.added or changes.wires.added)

    def _step(self, advance: Callable[[], Preview]) -> None:
        try:
            self.preview = advance()
        except EditRefused as refusal:  # a preview that cannot be: a part beyond the end of the world, say
            self._stop()
            self._session.refused.emit(str(refusal))
            self._begin_again()
        except StopIteration as done:
            self._gesture = None
            act: Act | None = done.value
            last, self.preview = self.preview, NOTHING
            self._held = None  # its own act puts it back
            if act is not None:
                self.carry_out(act)
            self._begin_again(last)
        else:
            self._hold(self.preview)
        self._told()

    def _hold(self, preview: Preview) -> None:
        if preview.held is not None and self._held is None:
            part, position = preview.held
            self._held = part, self._session.positions.get(part, "")
            self._session.throw(part, position)

    def _begin_again(self, last: Preview = NOTHING) -> None:
        if self._begin is not None and self._gesture is None:
            self._gesture = self._begin(self._around(), last)
            if self._gesture is not None:
                self.preview = next(self._gesture)
            else:
                self.tool, self._begin = "select", None

    def _stop(self) -> None:
        if self._gesture is not None:
            self._gesture.close()
        self._gesture, self.preview = None, NOTHING
        held, self._held = self._held, None
        if held is not None:
            self._session.throw(*held)
