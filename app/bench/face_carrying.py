"""Carries out what a gesture on the bench has returned."""

from collections.abc import Callable

from app.bench.bench import Bench, FaceItem
from app.bench.face_pointer import (
    FaceAct,
    FaceAround,
    FaceDo,
    FacePick,
    FacePointer,
    FacePreview,
    FaceWrite,
)
from app.canvas.gestures.pointer import Throw
from app.canvas.hands.acting import Acting
from app.selection import Selection
from app.session import Session
from wiring.plan.changes import changes_between

FaceActing = Acting[FaceAround, FacePointer, FacePreview, FaceAct]


def acting_on_face(
    session: Session,
    selection: Selection,
    bench: Bench,
    around: Callable[[], FaceAround],
    write: Callable[[FaceWrite], None],
    told: Callable[[], None],
) -> FaceActing:
    """Return what runs the gestures of the bench; `write` lets a legend be typed."""

    def carry_out(act: FaceAct) -> None:
        if isinstance(act, FacePick):
            bench.choose(act.items)
            selection.select(act.ids)
        elif isinstance(act, FaceWrite):
            write(act)
        elif isinstance(act, Throw):
            session.throw(act.part, act.position)
            bench.choose(())
            selection.select((act.part,))
        else:
            do_and_choose(session, selection, bench, act)

    return Acting(session, FacePreview(), around, carry_out, told)


def do_and_choose(session: Session, selection: Selection, bench: Bench, act: FaceDo) -> None:
    """Carry out an edit, and choose what it added: parts, track lines and legends, or else wires."""
    before = session.plan
    if not session.do(act.edit) or not act.pick_new:
        return
    changes = changes_between(before, session.plan)
    old, new = before.panels[bench.panel], session.plan.panels[bench.panel]
    items = {FaceItem("line", i) for i in range(len(old.lines), len(new.lines))}
    items |= {FaceItem("text", i) for i in range(len(old.texts), len(new.texts))}
    bench.choose(items)
    selection.select(changes.parts.added or (changes.wires.added if not items else ()))
