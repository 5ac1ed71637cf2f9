"""F2 lets a name be typed beside what is selected, in the whole window with all its shortcuts."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from support.editors import open_demo, part_id

from wiring.edits.panels import add_panel
from wiring.edits.wireways import add_wireway

Key = Qt.Key


def begin(editor, ids=(), ground=""):
    editor.window.show_view("plan")
    editor.selection.select(ids, ground)
    editor.window.plan_view.setFocus()
    QTest.keyClick(editor.window.plan_view, Key.Key_F2)
    typing = editor.window.plan_view.typing
    assert typing.isVisible() and typing.line.hasFocus()
    return typing


def test_a_wireway_is_named_again_and_again_and_stays_selected(editor):
    open_demo(editor)
    editor.session.do(add_wireway([(0, 0), (400, 0)], "Beam"))
    editor.session.do(add_panel("Second", 0, 600, 200, 100))
    way = list(editor.session.plan.wireways)[-1]
    for name, key, kept in (("Rear", Key.Key_Return, "Rear"), ("zzz", Key.Key_Escape, "Rear")):
        typing = begin(editor, ground=way)
        QTest.keyClicks(typing.line, name)
        QTest.keyClick(typing.line, key)
        assert editor.session.plan.wireways[way].name == kept and not typing.isVisible()
        assert editor.selection.ground == way and editor.window.plan_view.hasFocus()
    typing = begin(editor, ground=way)
    QTest.keyClicks(typing.line, "Front")
    QTest.mouseClick(editor.window.plan_view, Qt.MouseButton.LeftButton, pos=QPoint(300, 40))
    assert editor.session.plan.wireways[way].name == "Front"


def test_a_part_takes_words_and_letters_are_not_taken_for_shortcuts(editor):
    open_demo(editor)
    lamp = part_id(editor, "E1")
    before = editor.session.plan.parts[lamp].turn_deg
    typing = begin(editor, (lamp,))
    QTest.keyClicks(typing.line, "wrote R, T and V")
    QTest.keyClick(typing.line, Key.Key_Return)
    part = editor.session.plan.parts[lamp]
    assert part.label == "wrote R, T and V" and part.turn_deg == before
    assert editor.window.plan_view.tool == "select"


def test_with_several_selected_it_says_what_to_select(editor):
    open_demo(editor)
    told = []
    editor.session.refused.connect(told.append)
    editor.selection.select([part_id(editor, "E1"), part_id(editor, "E2")])
    QTest.keyClick(editor.window.plan_view, Key.Key_F2)
    assert told == ["Select one part, wire or wireway to name it."]
    editor.session.refused.disconnect(told.append)


def test_two_clicks_on_the_name_of_a_scene_let_it_be_typed(hands):
    open_demo(hands.editor)
    hands.view.show_all()
    (scene,) = hands.editor.session.plan.scenes.values()
    hands.double_click(scene.x_mm + 15, scene.y_mm - 15)
    assert hands.view.typing.isVisible() and hands.view.typing.line.text() == scene.name
    hands.key("Ctrl+A")
    hands.words("Fish quay")
    hands.key("Return")
    assert hands.editor.session.plan.scenes[scene.id].name == "Fish quay"
