"""Carries out what a gesture on the plan has returned."""

from collections.abc import Callable

from app.canvas.gestures.pointer import Act, Around, Do, Pick, Preview
from app.canvas.hands.acting import Acting, PlanActing
from app.selection import Selection
from app.session import Session
from wiring.plan.changes import changes_between


def acting_on_plan(
    session: Session, selection: Selection, around: Callable[[], Around], told: Callable[[], None]
) -> PlanActing:
    """Return what runs the gestures of the plan."""
    return Acting(session, Preview(), around, lambda act: carry_out(session, selection, act), told)


def carry_out(session: Session, selection: Selection, act: Act) -> None:
    """Select, carry out an edit and select what it added, or throw a switch."""
    if isinstance(act, Pick):
        selection.select(act.ids, {act.ground} | act.grounds)
    elif isinstance(act, Do):
        before = session.plan
        done = session.do(act.edit)
        if done and act.pick_new:
            changes = changes_between(before, session.plan)
            selection.select(changes.parts.added or changes.wires.added)
        elif done and act.pick:
            selection.select(act.pick)
    else:
        session.throw(act.part, act.position)
        selection.select((act.part,))
