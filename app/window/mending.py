"""Does what a finding says would mend it, as one step that can be undone."""

from typing import TYPE_CHECKING

from app.window.committed_typing import commit_typing
from wiring.findings.doing import edit_for
from wiring.plan.changes import Changes, changes_between

if TYPE_CHECKING:
    from app.window.main_window import MainWindow
    from wiring.findings.act import Act
    from wiring.findings.finding import Finding

NO_ACT = "No one act mends this; do by hand what its last sentence says."
OF_BEFORE = "The plan has changed since that was found; look at the findings of now, and press again."


def mend(window: "MainWindow", finding: "Finding") -> None:
    """Do the act of a finding, then select what it changed."""
    focus = window.focusWidget()
    if focus is None or not window.strip.isAncestorOf(focus):
        commit_typing()  # it takes the keys away, and nobody types among the findings
    session, answer, act = window.session, window.solving.answer, finding.act
    if act is None:
        session.refused.emit(NO_ACT)
        return
    before = session.plan
    if answer is None or answer.situation.plan is not before or finding not in answer.situation.findings:
        session.refused.emit(OF_BEFORE)
        return
    window.trail.leave()
    if session.do(edit_for(act, session.kinds)):
        _show(window, act, changes_between(before, session.plan))


def _show(window: "MainWindow", act: "Act", changes: Changes) -> None:
    """Select what was changed: parts before wires, and a wireway where it was neither."""
    parts = changes.parts.added | changes.parts.altered
    ids = parts or changes.wires.added | changes.wires.altered or frozenset(act.parts)
    if ids:
        window.show_ids(tuple(ids))
    else:
        ways = dict(act.values).get("wireway", "")
        window.selection.select((), str(ways))
