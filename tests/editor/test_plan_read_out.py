"""What a screen reader finds inside the plan: every thing by name, in the order of the keys."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QComboBox, QLabel, QToolButton
from support.editors import open_demo
from support.gesture_runs import BATTERY, LAMP, RED, SWITCH
from support.surfaces import desk

from app.canvas.told_parts import ToldPlan, ToldThing
from wiring.edits.joists import add_joist
from wiring.edits.remove import remove
from wiring.edits.scenes import add_scene

__all__ = ["desk"]
Name, Description = QAccessible.Text.Name, QAccessible.Text.Description


def reader(desk):
    there = QAccessible.queryAccessibleInterface(desk.view)
    assert isinstance(there, ToldPlan)
    return there


def children(there):
    every = [there.child(n) for n in range(there.childCount())]
    return [one for one in every if isinstance(one, ToldThing)]


def walked(there):
    yield there
    for number in range(there.childCount()):
        yield from walked(there.child(number))


def test_every_part_wire_and_thing_of_the_ground_is_a_child_with_a_name_and_a_place(desk):
    desk.session.do(add_joist((50, 450), (600, 450)))
    desk.session.do(add_scene("Fish quay", 200, 20, 200, 160))
    told = children(reader(desk))
    plan = desk.plan
    assert len(told) == len(plan.parts) + len(plan.wires) + 2
    assert all(one.text(Name) for one in told)
    names = [one.text(Name) for one in told]
    assert f"-{plan.parts[LAMP].designation}" in " ".join(names)
    assert any(n.startswith("Joist") for n in names) and "Scene “Fish quay”" in names
    for one in told:
        rect = one.rect()
        assert rect.width() >= 8 and rect.height() >= 8, one.text(Name)
        assert one.parent() is reader(desk) and one.childCount() == 0
    lamp = next(one for one in told if one.one == LAMP)
    assert lamp.rect().contains(desk.view.mapToGlobal(desk.px(500, 100)))
    assert isinstance(lamp.rect().topLeft(), QPoint)


def test_the_focus_and_the_selection_are_told(desk):
    there = reader(desk)
    desk.key(Qt.Key.Key_Tab)
    assert there.focusChild().one == BATTERY
    desk.key(Qt.Key.Key_Tab)
    assert there.focusChild().one == SWITCH
    states = {one.one: one.state() for one in children(there)}
    assert states[SWITCH].selected and states[SWITCH].focused and not states[LAMP].selected
    desk.selection.select([SWITCH, RED])
    assert there.focusChild() is None
    assert {one.one for one in children(there) if one.state().selected} == {SWITCH, RED}


def test_what_is_removed_is_told_no_more_and_does_no_harm(desk):
    there = reader(desk)
    lamp = next(one for one in children(there) if one.one == LAMP)
    desk.session.do(remove([LAMP]))
    assert not lamp.isValid() and lamp.text(Name) == "" and lamp.rect().isEmpty() and lamp.state().invalid
    assert there.indexOfChild(lamp) == -1
    assert LAMP not in {one.one for one in children(there)}
    desk.session.undo()
    assert lamp.isValid() and there.child(there.indexOfChild(lamp)) is lamp


def test_what_lies_over_the_plan_is_read_out_too(editor):
    there = QAccessible.queryAccessibleInterface(editor.window.plan_view)
    every = [there.child(n) for n in range(there.childCount())]
    seen = [one for one in every if not one.state().invisible]
    words = {told.text(Name) for one in seen for told in walked(one)}
    assert {"Draw the board", "Open an example"} <= words
    assert [there.indexOfChild(one) for one in every] == list(range(len(every)))


def test_a_button_with_an_icon_tells_what_it_would_undo_without_its_keys(editor):
    told = [QAccessible.queryAccessibleInterface(b) for b in editor.window.header.findChildren(QToolButton)]
    assert "Undo" in {one.text(Name) for one in told}
    editor.session.do(add_joist((50, 450), (600, 450)))
    assert editor.session.undo_label.lower() in {one.text(Name).removeprefix("Undo ").lower() for one in told}


def test_a_box_without_a_label_tells_what_it_is_for(editor):
    open_demo(editor)
    for view in ("circuit", "battery", "sheets"):
        editor.window.show_view(view)
    labelled = {label.buddy() for label in editor.window.findChildren(QLabel)}
    bare = [box for box in editor.window.findChildren(QComboBox) if box not in labelled]
    assert len(bare) > 5
    for box in bare:
        told = QAccessible.queryAccessibleInterface(box).text(Description)
        assert box.accessibleName() and box.accessibleName() in told, box.objectName()
