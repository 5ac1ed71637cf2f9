"""A scene that is never switched off: one tick in its use, told in the outlook's own words."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import open_demo, part_id

from app.inspector.use_details import ALWAYS
from wiring.edits.scenes import add_scene, put_in_scene


@pytest.fixture
def plan_card(editor):
    open_demo(editor)
    editor.selection.clear()
    return editor.window.inspector.card


def outlook(editor):
    return editor.solving.answer.situation.outlooks[part_id(editor, "G1")]


def tick(details):
    details.line.setChecked(True)
    details.always.setFocus()
    QTest.keyClick(details.always, Qt.Key.Key_Space)


def test_one_tick_keeps_a_scene_on_and_another_brings_its_sessions_back(editor, plan_card):
    scene, row = next(iter(plan_card.scenes.rows.items()))
    before = editor.session.plan.scenes[scene].use
    tick(row.details)
    use = editor.session.plan.scenes[scene].use
    assert (use.hours_per_session, use.sessions_per_month, use.months_off) == (24, 31, ())
    assert row.details.line.text().startswith(ALWAYS)
    assert not any(button.isEnabled() for button in row.details.months.values())
    tick(row.details)
    assert editor.session.plan.scenes[scene].use == before


def test_a_battery_that_is_never_off_is_told_in_time_not_in_sessions(editor, plan_card):
    usual = outlook(editor).days.typical
    for row in (*plan_card.scenes.rows.values(), plan_card.scenes._outside):
        tick(row.details)
    known = outlook(editor)
    assert known.days.typical < usual
    assert "always on" in known.words and "session" not in known.words
    editor.window.show_view("battery")
    assert editor.window.battery_page.summary.cells[0][0].isHidden()


def test_one_lamp_in_a_scene_of_its_own_can_stay_on(editor, plan_card):
    """The rest keeps its sessions, and the notes name the scene that is always on."""
    lamp = next(p for p in editor.session.plan.parts.values() if p.kind.startswith("led-"))
    usual = outlook(editor).days.typical
    editor.session.do(add_scene("Beacon"))
    (scene,) = [s.id for s in editor.session.plan.scenes.values() if s.name == "Beacon"]
    editor.session.do(put_in_scene((lamp.id,), scene))
    tick(editor.window.inspector.card.scenes.rows[scene].details)
    assert outlook(editor).days.typical < usual
    assert any("always on (Beacon)" in note for note in outlook(editor).notes)
    assert "session" in outlook(editor).words
