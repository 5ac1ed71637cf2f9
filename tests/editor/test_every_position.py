"""The most a supply gives in any position is found when asked for, and forgotten when the plan changes."""

import pytest
from support.editors import close_editor, made_editor, open_demo, part_id

from wiring.edits.set_plan import set_plan
from wiring.studies.positions.worst import worst_case


def card(editor):
    editor.selection.clear()
    return editor.window.inspector.card


def test_the_most_is_shown_with_how_the_switches_stand_then(editor):
    open_demo(editor)
    editor.session.throw(part_id(editor, "S1"), "off")
    shown = card(editor).every_position
    assert shown.isVisible() and shown.figures.figures == ()
    shown.button.click()
    session = editor.session
    found = worst_case(session.plan, session.kinds, session.positions)
    amps = found.supplies[part_id(editor, "G1")].amps
    (figure,) = shown.figures.figures
    assert figure.name == "-G1 at most"
    assert float(figure.value.split()[0]) == pytest.approx(1000 * amps, rel=0.01)
    assert "-S1 at “on”" in shown.words.text()
    assert not shown.button.isVisible()


def test_it_goes_when_the_plan_changes_and_stays_when_another_card_was_shown(editor):
    open_demo(editor)
    card(editor).every_position.button.click()
    editor.selection.select([part_id(editor, "E1")])
    assert card(editor).every_position.figures.figures
    editor.session.do(set_plan(title="Changed"))
    shown = card(editor).every_position
    assert shown.figures.figures == () and shown.button.isVisible()


def test_an_empty_plan_offers_nothing_to_try(editor):
    assert not card(editor).every_position.isVisible()


def test_it_is_worked_out_beside_the_window_and_survives_a_change_of_card(qapp, tmp_path, qtbot):
    editor = made_editor(tmp_path, at_once=False)
    open_demo(editor)
    shown = card(editor).every_position
    qtbot.waitUntil(shown.isVisible, timeout=15_000)
    shown.button.click()
    assert not shown.button.isEnabled()
    editor.selection.select([part_id(editor, "E1")])
    qtbot.waitUntil(lambda: editor.window.inspector.trying.found is not None, timeout=20_000)
    assert card(editor).every_position.figures.figures
    close_editor(editor)


def test_what_is_proved_is_said_where_there_are_too_many_positions(editor):
    open_demo(editor, "harbour")
    shown = card(editor).every_position
    shown.button.click()
    (said,) = (line for line in shown.words.text().splitlines() if "too many positions" in line)
    assert said.startswith("-G2 ") and "none brings more than 252 mA" in said
