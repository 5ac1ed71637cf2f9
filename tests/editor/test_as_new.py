"""One editor serves all tests of a file: nothing that one does to it is to be seen by the next."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editors import as_new, close_editor, made_editor, open_demo, part_id, type_into, wire_id

from app.window.actions import VIEWS


def at_rest(editor) -> QImage:
    """The window once no more of it changes."""
    last = QImage()
    while (now := editor.window.grab().toImage()) != last:
        last = now
        QApplication.processEvents()
    return now


def pictures(editor) -> dict[str, QImage]:
    """The window as it stands, and with a demo layout in every view and on two cards."""
    seen = {"empty": at_rest(editor)}
    open_demo(editor)
    for view in VIEWS:
        editor.window.show_view(view)
        seen[view] = at_rest(editor)
    editor.window.show_view("plan")
    for name, one in (("part", part_id(editor, "S1")), ("wire", wire_id(editor, "W1"))):
        editor.selection.select([one])
        seen[name] = at_rest(editor)
    return seen


def use_hard(editor) -> None:
    """Leave everything otherwise than it was."""
    window = editor.window
    plan = open_demo(editor, "siding")
    for row in window.inspector.card.scenes.rows.values():
        row.details.line.click()
    window.show_view("sheets")
    window.sheets_page.choices.boxes["labels"].click()
    window.show_view("battery")
    window.battery_page.bar.as_table.setChecked(True)
    window.battery_page.bar.switch.choose(1)
    window.show_view("circuit")
    window.acts["nearer"].trigger()
    window.show_view("plan")
    window.selection.select(list(plan.parts)[:3])
    for act in ("focus", "copy", "nearer", "wire", "find_part", "look", "larger", "measure"):
        window.acts[act].trigger()
    type_into(window.tray.search, "lamp", enter=False)
    QTest.keyClick(window.tray.search, Qt.Key.Key_Down)
    window.strip.unfold()
    for act in ("show_tray", "show_card"):
        window.acts[act].toggle()
        window.acts[act].triggered.emit()
    editor.session.throw(next(iter(editor.session.positions)), "")
    editor.notices.say("It was like that.", "danger")
    window.columns.setSizes([400, 500, 400])
    window.resize(1100, 700)
    QApplication.processEvents()


def test_an_editor_is_as_new_after_hard_use(editor, tmp_path):
    other = made_editor(tmp_path)
    wanted = pictures(other)
    close_editor(other)
    use_hard(editor)
    found = pictures(as_new(editor, tmp_path))
    assert [name for name, picture in wanted.items() if found[name] != picture] == []
