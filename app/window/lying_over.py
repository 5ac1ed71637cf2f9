"""Says which parts an act has laid on one another, with the way back beside it."""

from collections.abc import Sequence
from itertools import islice
from typing import TYPE_CHECKING

from app.notices import Notice
from wiring.edits.body_overlaps import Pair, new_overlaps
from wiring.edits.edit import Edit
from wiring.plan.designations import part_label
from wiring.plan.plan import Plan

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

NAMED = 3  # pairs that are named; the sentence stays one line


def do_and_tell(window: "MainWindow", edit: Edit) -> None:
    """Carry out an edit that moves parts; what lies on one another for it is told at once."""
    session, old = window.session, window.session.plan
    if not session.do(edit):
        return
    pairs = list(islice(new_overlaps(old, session.plan, session.kinds), NAMED + 1))
    if pairs:
        text = _sentence(session.plan, pairs)
        window.notices.offer(Notice(text, "weak", "Take it back", session.undo, about_act=True))


def _sentence(plan: Plan, pairs: Sequence[Pair]) -> str:
    named = [f"{part_label(plan, a)} and {part_label(plan, b)}" for a, b in pairs[:NAMED]]
    if len(pairs) == 1:
        return f"{named[0]} now lie on one another; take it back, or move one of them off."
    more = " and others" if len(pairs) > NAMED else ""
    return f"Now these lie on one another: {', '.join(named)}{more}; take it back, or move them apart."
