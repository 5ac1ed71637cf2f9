"""Runs the one active gesture of the bench and carries out what it returns."""

from collections.abc import Callable

from app.bench.bench import Bench, FaceItem
from app.bench.face_pointer import (
    FaceAct,
    FaceAround,
    FaceDo,
    FaceGesture,
    FacePick,
    FacePointer,
    FacePreview,
    FaceWrite,
)
from app.selection import Selection
from app.session import Session
from wiring.edits.edit import EditRefused
from wiring.plan.changes import changes_between

NOTHING = FacePreview()
BeginFace = Callable[[FaceAround], FaceGesture]


class FaceActing:
    """At most one gesture at a time; a tool begins its gesture again after each act."""

    def __init__(
        self,
        session: Session,
        selection: Selection,
        bench: Bench,
        around: Callable[[], FaceAround],
        write: Callable[[FaceWrite], None],
        told: Callable[[], None],
    ) -> None:
        self._session, self._selection, self._bench = session, selection, bench
        self._around, self._write, self._told = around, write, told
        self._gesture: FaceGesture | None = None
        self._begin: BeginFace | None = None
        self.tool = "select"
        self.preview = NOTHING

    @property
    def runs(self) -> bool:
        """Whether a gesture is under way."""
        return self._gesture is not None

    def take(self, tool: str, begin: BeginFace | None) -> None:
        """Take a tool in hand."""
        self._stop()
        self.tool, self._begin = tool, begin
        self._begin_again()
        self._told()

    def start(self, gesture: FaceGesture) -> None:
        """Start a gesture that a press has led to."""
        self._stop()
        self._gesture = gesture
        self._step(lambda: next(gesture))

    def send(self, pointer: FacePointer) -> None:
        """Give the gesture one more event."""
        gesture = self._gesture
        if gesture is not None:
            self._step(lambda: gesture.send(pointer))

    def cancel(self) -> bool:
        """Leave what is under way, then the tool; False when there was nothing to leave."""
        if self._gesture is None:
            return False
        drawn = bool(self.preview.plan or self.preview.band or len(self.preview.outline) > 1)
        self._stop()
        if drawn and self._begin is not None:
            self._begin_again()
        else:
            self.tool, self._begin = "select", None
        self._told()
        return True

    def interrupt(self) -> None:
        """Leave what is under way because the plan changed; the tool stays in hand."""
        self._stop()
        if self._bench.panel:
            self._begin_again()
        self._told()

    def carry_out(self, act: FaceAct) -> None:
        """Do what a gesture has returned."""
        if isinstance(act, FacePick):
            self._bench.choose(act.items)
            self._selection.select(act.parts)
        elif isinstance(act, FaceWrite):
            self._write(act)
        else:
            self.do(act)

    def do(self, act: FaceDo) -> None:
        """Carry out an edit, and choose what it added."""
        before = self._session.plan
        if not self._session.do(act.edit) or not act.pick_new:
            return
        added = changes_between(before, self._session.plan).parts.added
        if added:
            self._bench.choose(())
            self._selection.select(added)
            return
        old, new = before.panels[self._bench.panel], self._session.plan.panels[self._bench.panel]
        items = {FaceItem("line", i) for i in range(len(old.lines), len(new.lines))}
        items |= {FaceItem("text", i) for i in range(len(old.texts), len(new.texts))}
        self._selection.clear()
        self._bench.choose(items)

    def _step(self, advance: Callable[[], FacePreview]) -> None:
        try:
            self.preview = advance()
        except EditRefused as refusal:
            self._stop()
            self._session.refused.emit(str(refusal))
            self._begin_again()
        except StopIteration as done:
            self._gesture, self.preview = None, NOTHING
            act: FaceAct | None = done.value
            if act is not None:
                self.carry_out(act)
            self._begin_again()
        self._told()

    def _begin_again(self) -> None:
        if self._begin is not None and self._gesture is None:
            self._gesture = self._begin(self._around())
            self.preview = next(self._gesture)

    def _stop(self) -> None:
        if self._gesture is not None:
            self._gesture.close()
        self._gesture, self.preview = None, NOTHING
