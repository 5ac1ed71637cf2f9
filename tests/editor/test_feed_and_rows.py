"""Feeding a selection, placing rows and arranging parts, with real mouse and keys."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton, QToolButton
from support.gesture_runs import KINDS
from support.surfaces import LEFT, SHIFT, Desk

from wiring.edits.place_part import place
from wiring.edits.place_row import place_row
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

Key = Qt.Key


def fed_bench() -> Plan:
    plan = Plan()
    for edit in (
        place(KINDS["supply-regulated"], 60, 300),
        place(KINDS["toggle-on-off"], 220, 300),
        place_row(KINDS["led-warm-white-bare"], (100, 100), (500, 100), count=5),
    ):
        plan = edit.apply(plan)
    return plan


@pytest.fixture
def desk(qtbot):
    return Desk(qtbot, fed_bench(), centre=(300, 200))


def type_text(desk, text):
    for character in text:
        QTest.keyClicks(desk.view, character)


def choice(desk, index) -> QToolButton:
    return desk.view.choices.findChild(QToolButton, f"choice{index}")


def test_feeding_shows_what_would_be_laid_and_enter_lays_it_in_one_step(desk):
    before = desk.plan
    desk.selection.select(before.parts)
    desk.view.begin_feed()
    assert desk.view.choices.isVisible() and choice(desk, 0).isChecked()
    assert desk.plan is before
    shown = desk.view._acting.preview.plan
    assert len(shown.wires) > 10
    desk.key(Key.Key_Return)
    assert dict(desk.plan.wires) == dict(shown.wires)
    assert sum(p.kind == "resistor" for p in desk.plan.parts.values()) == 5
    assert not desk.view.choices.isVisible() and desk.view.tool == "select"
    assert desk.session.undo_label == "Feed 7 parts"
    desk.session.undo()
    assert desk.plan is before


def test_space_and_the_strip_choose_another_way(desk):
    desk.selection.select(desk.plan.parts)
    desk.view.begin_feed()
    desk.key(Key.Key_Space)
    assert choice(desk, 1).isChecked()
    agree = desk.view.choices.findChild(QPushButton, "agreeChoices")
    assert not agree.isEnabled() and "a star needs 5" in desk.view.choices._why.text()  # no room at a switch
    assert desk.view.choices._why.isVisible() and "Space shows another" in desk.hints[-1]
    desk.key(Key.Key_Return)
    QTest.mouseClick(agree, LEFT)
    assert not desk.plan.wires
    QTest.mouseClick(choice(desk, 2), LEFT)
    assert choice(desk, 2).text() == "LEDs in series"
    assert agree.isEnabled() and not desk.view.choices._why.isVisible()
    QTest.mouseClick(agree, LEFT)
    assert sum(p.kind == "resistor" for p in desk.plan.parts.values()) == 2


def test_switches_side_by_side_are_offered_and_one_after_another_too(desk):
    desk.session.do(place(KINDS["toggle-on-off"], 320, 300))
    desk.selection.select(desk.plan.parts)
    desk.view.begin_feed()
    shown = desk.view._acting.preview.plan
    toggles = [p.id for p in shown.parts.values() if p.kind == "toggle-on-off"]
    assert len(toggles) == 2
    ends = {frozenset((w.start, w.end)) for w in shown.wires.values()}
    assert frozenset(TerminalRef(t, "13") for t in toggles) in ends  # one feed for both
    index = next(i for i in range(5) if choice(desk, i).text() == "One switch after another")
    QTest.mouseClick(choice(desk, index), LEFT)
    shown = desk.view._acting.preview.plan
    assert {"13", "14"} in [{w.start.terminal, w.end.terminal} for w in shown.wires.values()]


def test_escape_and_the_strip_leave_it(desk):
    before = desk.plan
    desk.selection.select(before.parts)
    desk.view.begin_feed()
    desk.key(Key.Key_Escape)
    assert desk.plan is before and not desk.view.choices.isVisible() and desk.view.tool == "select"
    desk.view.begin_feed()
    QTest.mouseClick(desk.view.choices.findChild(QPushButton, "leaveChoices"), LEFT)
    assert desk.plan is before and not desk.view.choices.isVisible()


def test_a_refusal_is_told_and_nothing_is_offered(desk):
    told = []
    desk.session.refused.connect(told.append)
    desk.selection.select(["p1"])
    desk.view.begin_feed()
    assert "Nothing selected needs feeding" in told[0] and not desk.view.choices.isVisible()


def test_shift_and_drag_sets_a_row_down_by_number(desk):
    desk.view.begin_place("lamp-12v")
    desk.drag((50, 200), (450, 205), SHIFT)
    assert not any(p.kind == "lamp-12v" for p in desk.plan.parts.values())
    type_text(desk, "5")
    assert desk.hints[-1].startswith("5 parts, 10 cm apart")
    desk.key(Key.Key_Return)
    row = [p for p in desk.plan.parts.values() if p.kind == "lamp-12v"]
    assert [(p.x_mm, p.y_mm) for p in row] == [(50 + 100 * i, 200) for i in range(5)]
    assert "row" in desk.session.undo_label
    assert desk.view.tool == "place"


def test_a_row_by_distance_and_one_character_back(desk):
    desk.view.begin_place("lamp-12v")
    desk.drag((50, 200), (450, 200), SHIFT)
    type_text(desk, "80 mmx")
    desk.key(Key.Key_Backspace)
    assert desk.hints[-1].startswith("6 parts, 80 mm apart")
    desk.click(450, 240)
    assert sum(p.kind == "lamp-12v" for p in desk.plan.parts.values()) == 6


def test_shift_and_click_again_lets_the_row_curve(desk):
    desk.view.begin_place("lamp-12v")
    desk.drag((50, 200), (250, 200), SHIFT)
    desk.click(250, 200, SHIFT)
    desk.click(400, 320)
    type_text(desk, "7")
    desk.key(Key.Key_Return)
    row = [(p.x_mm, p.y_mm) for p in desk.plan.parts.values() if p.kind == "lamp-12v"]
    assert len(row) == 7 and row[0] == (50, 200) and row[-1] == (400, 320)
    assert len({round(y) for _, y in row}) > 4  # a curve, not two straight legs


def test_escape_takes_back_the_row_and_keeps_the_part_in_hand(desk):
    before = desk.plan
    desk.view.begin_place("lamp-12v")
    desk.drag((50, 200), (450, 200), SHIFT)
    desk.key(Key.Key_Escape)
    assert desk.plan is before and desk.view.tool == "place"
    desk.click(50, 250)
    assert len(desk.plan.parts) == len(before.parts) + 1


@pytest.fixture
def editor(editor):
    editor.session.open(fed_bench(), None)
    return editor


def test_the_keys_of_the_window_feed_and_arrange(editor):
    window, session = editor.window, editor.session
    assert not window.acts["feed"].isEnabled()
    window.plan_view.setFocus()
    QTest.keyClick(window.plan_view, Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(window.plan_view, Key.Key_F)
    QTest.keyClick(window.plan_view, Key.Key_Return)
    assert len(session.plan.wires) == 1 + 5 + 5 + 5  # to the switch, behind resistors, plus, minus
    assert all(f.light > 0.5 for f in editor.solving.answer.situation.figures.parts.values() if f.light)
    window.selection.select(["p1", "p2"])
    QTest.keySequence(window.plan_view, "Ctrl+Shift+Up")
    assert session.plan.parts["p2"].y_mm < 300
    lamps = [p.id for p in session.plan.parts.values() if p.kind == "led-warm-white-bare"]
    window.selection.select(lamps)
    QTest.keyClick(window.plan_view, Key.Key_M, Qt.KeyboardModifier.ControlModifier)
    assert [session.plan.parts[i].x_mm for i in lamps] == [500, 400, 300, 200, 100]


def test_two_parts_are_wired_one_to_one_with_one_key(editor):
    window, session = editor.window, editor.session
    for x in (100, 400):
        session.do(place(KINDS["terminal-strip-4"], x, 420))
    strips = [p.id for p in session.plan.parts.values() if p.kind == "terminal-strip-4"]
    window.plan_view.setFocus()
    window.selection.select(strips[:1])
    QTest.keyClick(window.plan_view, Key.Key_F, SHIFT)
    assert not session.plan.wires and "Select two parts" in editor.notices.last.text
    window.selection.select(strips)
    QTest.keyClick(window.plan_view, Key.Key_F, SHIFT)
    assert len(session.plan.wires) == 4 and session.undo_label == "Wire one to one"


def test_the_strip_tells_how_the_loads_are_shared_out_before_it_is_agreed_to(desk):
    for x in (120, 420):
        desk.session.do(place(KINDS["fuse"], x, 200))
    desk.selection.select(desk.plan.parts)
    desk.view.begin_feed()
    says = desk.view.choices._says
    assert says.isVisible() and says.text() == "-F1 feeds -E1 and -E2; -F2 feeds -E3, -E4 and -E5."
    agree = desk.view.choices.findChild(QPushButton, "agreeChoices")
    assert agree.accessibleDescription() == says.text()
    strip = desk.view.choices
    assert says.geometry().bottom() <= agree.geometry().top() and strip.rect().contains(says.geometry())
    desk.key(Key.Key_Return)
    fuses = [p for p in desk.plan.parts.values() if p.kind == "fuse"]
    assert all(len(desk.plan.wires_at(TerminalRef(f.id, "2"))) == 1 for f in fuses)
    desk.selection.select([p.id for p in desk.plan.parts.values() if p.kind != "fuse"][:2])
    desk.view.begin_feed()
    assert not desk.view.choices._says.isVisible()
