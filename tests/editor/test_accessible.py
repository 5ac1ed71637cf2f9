"""Everything has a name to be read out and a key to be reached by."""

from collections import Counter
from itertools import pairwise

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QCheckBox,
    QLineEdit,
    QScrollBar,
    QToolButton,
    QWidget,
)
from support.editors import open_demo, part_id, wire_id

from app.window.reading_order import reading_order


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


LEAST_TARGET_PX = 24  # WCAG 2.2, success criterion 2.5.8
Role = QAccessible.Role
ACTED_ON = {
    Role.Button,
    Role.CheckBox,
    Role.RadioButton,
    Role.ComboBox,
    Role.EditableText,
    Role.List,
    Role.Table,
}
ACTED_ON |= {Role.SpinBox, Role.Slider, Role.MenuItem, Role.PageTab, Role.Canvas, Role.ButtonMenu, Role.Tree}


def walked(there, depth=0):
    """Everything below an accessible thing, itself too."""
    yield there
    for number in range(there.childCount() if depth < 14 else 0):
        child = there.child(number)
        if child is not None and child.isValid() and not child.state().invisible:
            yield from walked(child, depth + 1)


@pytest.mark.parametrize("view", ["plan", "circuit", "battery", "sheets"])
def test_whatever_can_be_acted_on_has_a_name_all_through_the_tree(editor, view):
    open_demo(editor)
    editor.window.show_view(view)
    editor.window.strip.unfold()
    editor.selection.select([part_id(editor, "S1")])
    found, nameless_ones = 0, []
    for there in walked(QAccessible.queryAccessibleInterface(editor.window)):
        if there.role() not in ACTED_ON:
            continue
        of = there.object()
        if of is not None and (of.objectName().startswith("qt_") or isinstance(of, QScrollBar)):
            continue
        if isinstance(of, QToolButton) and isinstance(of.parent(), QLineEdit):
            continue  # the cross in a field: the keyboard clears it as any other
        found += 1
        if not there.text(QAccessible.Text.Name).strip():
            nameless_ones.append((there.role(), of))
    assert found > 20
    assert nameless_ones == []


@pytest.mark.parametrize("view", ["plan", "circuit", "battery", "sheets"])
def test_no_button_is_too_small_to_hit(editor, view):
    open_demo(editor)
    editor.window.show_view(view)
    editor.window.strip.unfold()
    editor.selection.select([part_id(editor, "G1")])
    QApplication.processEvents()
    buttons = [b for b in editor.window.findChildren(QAbstractButton) if b.isVisible() and b.isEnabled()]
    small = [
        (type(b).__name__, b.accessibleName() or b.text(), b.width(), b.height())
        for b in buttons
        if min(b.width(), b.height()) < LEAST_TARGET_PX
        and not isinstance(b, QCheckBox)
        and not b.objectName().startswith("qt_")
        and not isinstance(b.parent(), QLineEdit)
    ]
    assert len(buttons) > 8
    assert small == []


@pytest.mark.parametrize("view", ["plan", "circuit", "battery", "sheets"])
def test_tab_goes_round_everything_in_reading_order(editor, view):
    open_demo(editor)
    window = editor.window
    window.activateWindow()
    window.show_view(view)
    editor.selection.clear()
    page = window.pages.currentWidget()
    areas = (window.header, window.tray, page, window.strip, window.inspector)
    for _ in reading_order(areas):  # once met, Qt keeps from Tab all but the pressed one of a group
        window.focusNextPrevChild(True)
    wanted = reading_order(areas)
    assert len(wanted) > 12
    wanted[0].setFocus()
    met = [wanted[0]]
    while len(met) < 200:
        window.focusNextPrevChild(True)
        if window.focusWidget() is met[0]:
            break
        met.append(window.focusWidget())
    assert met == wanted
    window.focusNextPrevChild(False)
    assert window.focusWidget() is wanted[-1]
    for area in areas:
        own = [w for w in wanted if area is w or area.isAncestorOf(w)]
        tops = [w.mapTo(window, QPoint(0, 0)).y() for w in own]
        assert all(b >= a - 30 for a, b in pairwise(tops)), area
    by_tab = [w for w in window.findChildren(QWidget) if takes_tab(w)]
    assert {w for w in by_tab if any(area.isAncestorOf(w) for area in areas)} <= set(wanted)


def takes_tab(widget):
    policy = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    return bool(policy) and widget.isVisible() and widget.isEnabled() and widget.focusProxy() is None


def test_tab_leaves_the_plan_after_the_last_part_and_the_focus_is_framed(editor):
    open_demo(editor)
    window = editor.window
    window.activateWindow()
    view = window.plan_view
    view.setFocus()
    last = list(editor.session.plan.parts)[-1]
    editor.selection.select([last])
    QTest.keyClick(view, Qt.Key.Key_Tab)
    assert window.focusWidget() is not view
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Backtab)
    assert window.focusWidget() is view and view._frame_focus
