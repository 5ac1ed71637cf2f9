"""Does what a finding says would mend it, or what mends all of its sort, as one step that can be undone."""

from typing import TYPE_CHECKING

from app.window.committed_typing import commit_typing
from wiring.findings.doing import edit_for
from wiring.findings.mend_all import mend_all
from wiring.plan.changes import Changes, changes_between

if TYPE_CHECKING:
    from collections.abc import Sequence

    from app.window.main_window import MainWindow
    from wiring.edits.edit import Edit
    from wiring.findings.act import Act
    from wiring.findings.finding import Finding
    from wiring.findings.mend_all import AllOfSort
    from wiring.findings.situation import Situation

NOT_SEVERAL = "No second finding of this sort has an act that mends it; there is nothing to mend all at once."
NO_ACT = "No one act mends this; do by hand what its last sentence says."
OF_BEFORE = "The plan has changed since that was found; look at the findings of now, and press again."


def mend(window: "MainWindow", finding: "Finding") -> None:
    """Do the act of a finding, then select what it changed."""
    act = finding.act
    if act is None:
        window.session.refused.emit(NO_ACT)
    elif _situation(window, (finding,)) is not None:
        _do(window, edit_for(act, window.session.kinds), (finding,))


def mend_every(window: "MainWindow", of: "AllOfSort | None") -> None:
    """Mend all findings of one sort as one step, then select what that changed."""
    if of is None:
        window.session.refused.emit(NOT_SEVERAL)
        return
    situation = _situation(window, of.findings)
    if situation is not None:
        _do(window, mend_all(of, situation), of.findings)


def _situation(window: "MainWindow", findings: "Sequence[Finding]") -> "Situation | None":
    """Return what is known of the plan, with what is being typed; None, and told, if it was found before."""
    focus = window.focusWidget()
    if focus is None or not window.strip.isAncestorOf(focus):
        commit_typing()  # it takes the keys away, and nobody types among the findings
    session, answer = window.session, window.solving.answer
    stale = answer is None or answer.situation.plan is not session.plan
    if answer is None or stale or any(f not in answer.situation.findings for f in findings):
        session.refused.emit(OF_BEFORE)
        return None
    return answer.situation


def _do(window: "MainWindow", edit: "Edit", findings: "Sequence[Finding]") -> None:
    before = window.session.plan
    window.trail.leave()
    if window.session.do(edit):
        acts = [finding.act for finding in findings if finding.act is not None]
        _show(window, acts, changes_between(before, window.session.plan))


def _show(window: "MainWindow", acts: "Sequence[Act]", changes: Changes) -> None:
    """Select what was changed: parts before wires, and a wireway where it was neither."""
    parts = changes.parts.added | changes.parts.altered
    ids = parts or changes.wires.added | changes.wires.altered or {i for act in acts for i in act.parts}
    if ids:
        window.show_ids(tuple(ids))
    else:
        ways = [dict(act.values).get("wireway", "") for act in acts]
        window.selection.select((), str(ways[0]) if ways else "")
