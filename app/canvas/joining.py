"""What is done to joined parts that are selected: one thing of them, all of it taken in hand, apart again."""

from app.canvas.gestures.whole import wholes_of
from app.selection import Selection
from app.session import Session
from wiring.edits.groups import join, take_apart
from wiring.plan.groups import things_of

JOINED_WITH_NONE = "What is selected is joined with nothing else; Ctrl+J joins two parts or more."


def join_selected(session: Session, selection: Selection) -> None:
    """Make one thing of what is selected, and select all of it."""
    if session.do(join(selection.ids)):
        take_whole(session, selection)


def take_selected_apart(session: Session, selection: Selection) -> None:
    """Let each part of the selected things stand for itself; what is selected stays."""
    session.do(take_apart(selection.ids))


def take_whole(session: Session, selection: Selection) -> None:
    """Select everything that is joined with what is selected; say so when nothing is."""
    if not things_of(session.plan, selection.ids):
        session.refused.emit(JOINED_WITH_NONE)
    selection.select(wholes_of(session.plan, selection.ids), selection.grounds)
