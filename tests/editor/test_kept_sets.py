"""A group of parts kept as a set and placed again, in this plan or another."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QInputDialog

from app.window.kept_sets import SUFFIX, kept_sets
from tests.support.editors import close_editor, made_editor, open_demo, part_id, wire_id
from wiring.plan.plan import Plan

Key = Qt.Key


@pytest.fixture
def editor(qtbot, tmp_path, monkeypatch):
    monkeypatch.setattr(QInputDialog, "getText", lambda *_args: ("Lit shop: small/", True))
    editor = made_editor(tmp_path)
    open_demo(editor)
    yield editor
    close_editor(editor)


def entries(editor) -> dict:
    menu = editor.window.submenus["sets"]
    menu.aboutToShow.emit()
    return {action.text(): action for action in menu.actions()}


def test_a_set_is_kept_and_set_down_in_another_plan_with_its_wires(editor):
    assert not entries(editor)["None kept yet"].isEnabled()
    editor.selection.select([part_id(editor, "E1"), part_id(editor, "E2"), part_id(editor, "X1")])
    editor.window.acts["keep_set"].trigger()
    assert "“Lit shop small” is kept" in editor.notices.last.text
    editor.session.open(Plan(), None)
    entries(editor)["Lit shop small"].trigger()
    view = editor.window.plan_view
    for x in (200, 400):
        QTest.mouseMove(view, QPoint(x, 300))
        QTest.mouseClick(view, Qt.MouseButton.LeftButton, pos=QPoint(x, 300))
    kinds = [p.kind for p in editor.session.plan.parts.values()]
    assert kinds.count("led-warm-white") == 4 and len(editor.session.plan.wires) == 4
    assert editor.session.undo_label == "Place Lit shop small"
    QTest.keyClick(view, Key.Key_Escape)
    QTest.keyClick(view, Key.Key_Escape)
    assert view.tool == "select"


def test_no_part_selected_and_a_damaged_set_are_told(editor):
    told = []
    editor.session.refused.connect(told.append)
    editor.selection.select([wire_id(editor, "W1")])
    editor.window.acts["keep_set"].trigger()
    folder = editor.window.remembered.sets_folder
    folder.mkdir()
    (folder / f"Old shed{SUFFIX}").write_text("words", encoding="utf-8")
    entries(editor)["Old shed"].trigger()
    assert told == [
        "Select the parts that belong to the set first.",
        "The set “Old shed” cannot be read; keep it anew.",
    ]
    assert [p.name for p in kept_sets(folder)] == [f"Old shed{SUFFIX}"]
