"""Finding anything on the plan by what is written on it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import open_demo, part_id, wire_id
from support.gesture_runs import KINDS

from app.canvas.found import found

Key = Qt.Key


@pytest.fixture
def editor(editor):
    open_demo(editor)
    return editor


def search(editor, words):
    QTest.keyClick(editor.window.plan_view, Key.Key_G, Qt.KeyboardModifier.ControlModifier)
    line = editor.window.plan_view.search.line
    assert line.isVisible()
    line.selectAll()
    QTest.keyClicks(line, words)
    return line


def test_the_very_name_comes_before_those_that_begin_so(editor):
    plan = editor.session.plan
    first, *others = found(plan, KINDS, "-e1")
    assert first.ids == (part_id(editor, "E1"),)
    assert others[0].ids == (part_id(editor, "E10"),)
    assert found(plan, KINDS, "quay lamp 3")[0].ids == (part_id(editor, "E3"),)
    assert found(plan, KINDS, "zeppelin") == () and found(plan, KINDS, "  ") == ()


def test_typing_selects_and_shows_it_and_enter_goes_on(editor):
    view = editor.window.plan_view
    view.zoom(12.0)
    line = search(editor, "quay lamp")
    assert editor.selection.ids == {part_id(editor, "E1")}
    part = editor.session.plan.parts[part_id(editor, "E1")]
    assert view.rect().contains(view.px(part.x_mm, part.y_mm))
    assert "1 of 8" in view.search.words.text()
    QTest.keyClick(line, Key.Key_Return)
    assert editor.selection.ids == {part_id(editor, "E2")}
    QTest.keyClick(line, Key.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    assert editor.selection.ids == {part_id(editor, "E1")}


def test_spaces_and_hyphens_may_be_left_out(editor):
    search(editor, "quaylamp3")
    assert editor.selection.ids == {part_id(editor, "E3")}
    search(editor, "quay-lamp 3")
    assert editor.selection.ids == {part_id(editor, "E3")}


def test_wires_scenes_and_panels_are_found_too(editor):
    plan = editor.session.plan
    line = search(editor, "W12")
    assert editor.selection.ids == {wire_id(editor, "W12")}
    line.selectAll()
    QTest.keyClicks(line, "quay panel")
    panel = next(iter(plan.panels))
    assert editor.selection.ids == {p.id for p in plan.parts.values() if p.panel == panel}


def test_what_is_not_there_is_said_and_escape_puts_the_strip_away(editor):
    line = search(editor, "zeppelin")
    assert editor.window.plan_view.search.words.text() == "Nothing on this plan is called “zeppelin”."
    QTest.keyClick(line, Key.Key_Escape)
    assert not line.isVisible()


def test_a_wireway_with_nothing_in_it_is_found_and_selected_itself(editor):
    from wiring.edits.wireways import add_wireway

    editor.session.do(add_wireway([(0, 0), (500, 0)], "Back beam"))
    window = editor.window
    window.acts["find_part"].trigger()
    window.plan_view.search.line.setText("back beam")
    assert editor.selection.ground == next(iter(editor.session.plan.wireways))
