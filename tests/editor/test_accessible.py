"""Everything has a name to be read out and a key to be reached by."""

from collections import Counter

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QScrollBar, QWidget
from support.editors import open_demo, part_id, wire_id


def test_every_act_has_words_a_name_and_a_key_of_its_own(editor):
    acts = editor.window.acts
    keys = Counter(key.toString() for act in acts.values() for key in act.shortcuts())
    keys[editor.window.strip._toggle.shortcut().toString()] += 1
    assert {key: n for key, n in keys.items() if n > 1} == {}
    for name, act in acts.items():
        assert act.text() and act.objectName() == name
        assert act.shortcuts(), name


def nameless(window: QWidget) -> list[str]:
    found = []
    for widget in window.findChildren(QWidget):
        if isinstance(widget, QScrollBar) or not widget.isVisibleTo(window):
            continue
        if widget.objectName().startswith("qt_") or widget.focusPolicy() == Qt.FocusPolicy.NoFocus:
            continue
        there = QAccessible.queryAccessibleInterface(widget)
        if there is None or not there.text(QAccessible.Text.Name).strip():
            found.append(f"{type(widget).__name__} {widget.objectName()} in {type(widget.parent()).__name__}")
    return found


@pytest.mark.parametrize("view", ["plan", "circuit", "battery", "sheets"])
def test_whatever_takes_the_focus_has_a_name(editor, view):
    open_demo(editor)
    editor.window.show_view(view)
    editor.window.strip.unfold()
    assert nameless(editor.window) == []


@pytest.mark.parametrize(
    "chosen", [("E1",), ("S1",), ("G1",), ("E1", "E2"), ("E1", "S1"), ("W1",), ("W1", "W2")]
)
def test_fields_of_every_card_have_names(editor, chosen):
    open_demo(editor)
    ids = [wire_id(editor, c) if c.startswith("W") else part_id(editor, c) for c in chosen]
    editor.selection.select(ids)
    assert nameless(editor.window.inspector) == []


def test_findings_are_read_out_with_their_rank(editor):
    open_demo(editor)
    model = editor.window.strip.model
    assert model.rowCount() > 0
    for row in range(model.rowCount()):
        words = model.item(row).data(Qt.ItemDataRole.AccessibleTextRole)
        assert words.split(":")[0] in ("note", "weak", "danger")
