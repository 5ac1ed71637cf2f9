"""What the strip says where there is nothing to count: nothing drawn, or nothing wrong."""

import pytest
from PySide6.QtWidgets import QApplication
from support.editors import as_new, open_demo

from wiring.edits.place_part import place
from wiring.edits.set_plan import set_plan
from wiring.findings.finding import Finding, Rank
from wiring.plan.joist import Joist
from wiring.plan.plan import Plan

DRAWN = {
    "board": ((0.0, 0.0), (900.0, 0.0), (900.0, 400.0), (0.0, 400.0)),
    "tracks": (((0.0, 50.0), (900.0, 50.0)),),
    "joists": (Joist(start=(100.0, 0.0), end=(100.0, 400.0)),),
}


@pytest.mark.parametrize("what", DRAWN)
def test_what_is_drawn_without_parts_counts_as_drawn(running, tmp_path, what):
    editor = as_new(running, tmp_path)
    strip = editor.window.strip
    assert strip.verdict == "Nothing drawn yet" and editor.window.first_steps.isVisible()
    editor.session.do(set_plan(**{what: DRAWN[what]}))
    editor.solving.request()
    assert strip.verdict == "Nothing to find fault with"
    assert not editor.window.first_steps.isVisible()
    editor.session.undo()
    editor.solving.request()
    assert strip.verdict == "Nothing drawn yet"


def test_counts_stand_side_by_side_on_every_page(editor):
    open_demo(editor)
    strip = editor.window.strip
    for view in ("plan", "battery", "sheets"):
        editor.window.show_view(view)
        strip.show_findings([Finding("some-rule", rank, "What.", "Why.", "Mend.") for rank in Rank])
        QApplication.processEvents()
        lefts = [badge.x() for badge, _ in strip._counts.values()]
        assert len(set(lefts)) == 3 and max(lefts) < 400


def test_no_verdict_is_given_before_the_battery_was_looked_into_too(editor):
    strip, told = editor.window.strip, []
    plan = place(editor.session.kinds["battery-9v"], 100, 100).apply(Plan())
    editor.session.open(plan, None)
    editor.solving.request()
    answer = editor.solving.answer
    for complete in (False, True):
        bare = answer._replace(complete=complete, situation=answer.situation._replace(findings=()))
        editor.solving.answered.emit(bare)
        told.append(strip.verdict)
    assert told == ["Looking for faults", "Nothing to find fault with"]
