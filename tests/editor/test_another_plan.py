"""Another plan is looked at afresh: nothing of how one looked at the last one stays."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import open_demo, part_id, settle

from app.window.actions import TOOLS

Key = Qt.Key


def test_the_circuits_of_another_plan_are_shown_whole_from_the_first_on(editor):
    open_demo(editor, "harbour")
    window = editor.window
    window.show_view("circuit")
    settle()
    page = window.circuit_page
    page.choice.setFocus()
    QTest.keyClick(page.choice, Key.Key_Down)
    page.picture.setFocus()
    for _ in range(4):
        QTest.keyClick(page.picture, Key.Key_Plus)
    assert page.choice.currentIndex() == 1
    near = page.picture._scale
    open_demo(editor, "siding")
    settle()
    picture = page.picture
    assert page.choice.currentIndex() == 0 and picture._scale < near
    size = picture._picture.width_mm * picture._scale, picture._picture.height_mm * picture._scale
    assert size[0] <= picture.width() and size[1] <= picture.height()


def test_the_drawing_stays_where_it_was_through_an_edit(editor):
    from wiring.edits.set_plan import set_plan

    open_demo(editor, "siding")
    window = editor.window
    window.show_view("circuit")
    settle()
    QTest.keyClick(window.circuit_page.picture, Key.Key_Plus)
    near = window.circuit_page.picture._scale
    editor.session.do(set_plan(title="Another"))
    settle()
    assert window.circuit_page.picture._scale == near


def test_the_search_of_the_last_plan_is_gone(editor):
    open_demo(editor)
    window, strip = editor.window, editor.window.plan_view.search
    window.acts["find_part"].trigger()
    QTest.keyClicks(strip.line, "E4")
    assert strip.isVisible() and editor.selection.ids == {part_id(editor, "E4")}
    open_demo(editor, "siding")
    assert not strip.isVisible() and strip.line.text() == "" and not editor.selection.ids
    window.acts["find_part"].trigger()
    assert strip.isVisible() and strip.words.text() == ""
    QTest.keyClick(strip.line, Key.Key_Escape)


def test_what_was_removed_is_no_longer_found_and_what_one_looks_at_stays(editor):
    open_demo(editor)
    strip = editor.window.plan_view.search
    editor.window.acts["find_part"].trigger()
    QTest.keyClicks(strip.line, "lamp")
    QTest.keyClick(strip.line, Key.Key_Return)
    number = len(strip._found)
    assert number > 2 and f"2 of {number}" in strip.words.text()
    camera = editor.window.plan_view.sight().camera
    editor.window.plan_view.remove_selected()
    assert len(strip._found) == number - 1 and f"2 of {number - 1}" in strip.words.text()
    assert editor.window.plan_view.sight().camera == camera and not editor.selection.ids
    QTest.keyClick(strip.line, Key.Key_Escape)


def test_there_is_one_button_to_select_with_a_panel_on_the_bench_too(editor):
    plan = open_demo(editor)
    window, face = editor.window, editor.window.plan_view.bench.face
    window.plan_view.bench.open(next(iter(plan.panels)))
    settle()
    words = [b.text() for b in window.findChildren(type(window.plan_page._tools[0])) if b.isVisible()]
    assert words.count("Select") == 1
    QTest.keyClick(face, Key.Key_D)
    assert face.acting.tool == "line"
    assert not any(window.acts[name].isChecked() for name in TOOLS)
    QTest.mouseClick(window.plan_page._tools[0], Qt.MouseButton.LeftButton)
    assert face.acting.tool == "select" and window.acts["select"].isChecked()
    window.plan_view.bench.open("")
