"""A finding is mended by a press on its button or by a key in the list, as one step that is taken back."""

import msgspec
import pytest
from PySide6.QtCore import QEvent, QRect, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editing import KINDS, done

from app.findings.finding_list import FINDING_ROLE
from app.findings.row_layout import INDENT, LINE, TOP, row_layout
from app.theme.fonts import screen_font
from app.theme.words import lined, wear_factor
from app.window.mending import NO_ACT, OF_BEFORE
from tests.properties.test_findings_of_wireways import bundle
from wiring.edits.connect import connect
from wiring.edits.feed import feed
from wiring.edits.place_part import place
from wiring.edits.set_value import set_field
from wiring.edits.set_wire import set_wire
from wiring.findings.act import Act
from wiring.findings.finding import Finding, Rank
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

Key, Ctrl = Qt.Key, Qt.KeyboardModifier.ControlModifier


def fed(*parts, supply=None, **wire):
    """A supply p1 and those parts on it, wired as the editor feeds them."""
    plan = done(Plan(), place(KINDS["supply-regulated"], 0, 200, settings=supply or {}))
    for n, (kind, settings) in enumerate(parts):
        plan = done(plan, place(KINDS[kind], 300 + 120 * n, 100, settings=settings))
    plan = feed(list(plan.parts), kinds=KINDS).apply(plan)
    return set_wire(list(plan.wires), **wire).apply(plan) if wire else plan


def backward():
    plan = done(Plan(), place(KINDS["supply-regulated"], 0, 200), place(KINDS["led-warm-white"], 300, 100))
    ends = [TerminalRef("p1", "+"), TerminalRef("p1", "-"), TerminalRef("p2", "A"), TerminalRef("p2", "K")]
    return done(plan, connect(ends[0], ends[3]), connect(ends[1], ends[2]))


def fused(**settings):
    plan = fed(("lamp-12v", {"rated_a": 0.4}), supply={"limit_a": 20.0})
    plan = done(plan, place(KINDS["fuse"], 100, 300, settings=settings))
    plus = next(w for w in plan.wires.values() if TerminalRef("p1", "+") in (w.start, w.end))
    moved = msgspec.structs.replace(plus, start=TerminalRef("p5", "2"))
    plan = plan.with_changes(wires={**plan.wires, plus.id: moved})
    return done(plan, connect(TerminalRef("p1", "+"), TerminalRef("p5", "1")))


# What is wrong, the button, what Undo calls it, and what is selected after it.
CASES = {
    "led-without-resistor": (
        lambda: fed(("led-white-bare", {})), "Put in 470 Ω", "Put in resistor", {"resistor"}),
    "led-backward": (backward, "Swap the wires of -E1", "Swap leads", {"led-warm-white"}),
    "fuse-missing": (
        lambda: fed(("lamp-12v", {}), supply={"limit_a": 20.0}),
        "Put in a fuse of 500 mA", "Put in fuse", {"fuse"}),
    "fuse-blows": (lambda: fused(rating_a=0.1), "Set -F1 to 800 mA", "Set fuse rating", {"fuse"}),
    "wire-drop": (
        lambda: fed(("lamp-12v", {"rated_a": 0.5}), length_m=10.0, size="26 AWG"),
        "Use 24 AWG for 2 wires", "Set wire size", set()),
    "full-wireway": (lambda: bundle(6.0), "Drill to 10 mm", "Set wireway hole", set()),
}  # fmt: skip


@pytest.fixture(autouse=True)
def hasty(qapp):
    """Let presses follow each other at once, as no hand does."""
    usual = qapp.doubleClickInterval()
    qapp.setDoubleClickInterval(0)
    yield usual
    qapp.setDoubleClickInterval(usual)


@pytest.fixture
def shown(editor):
    """Open a plan with its findings unfolded, and give the rows of them."""

    def show(plan):
        editor.session.open(plan, None)
        editor.solving.request()
        editor.window.strip.unfold()
        settle()
        return editor

    return show


def settle():
    for _ in range(3):
        QApplication.processEvents()


def row_of(editor, rule):
    model = editor.window.strip.model
    return next((r for r in range(model.rowCount()) if model.item(r).data(FINDING_ROLE).rule == rule), -1)


def button_of(editor, rule):
    strip = editor.window.strip
    index = strip.model.index(row_of(editor, rule), 0)
    strip.list.scrollTo(index)
    settle()
    return strip.mends.button(index.row())


@pytest.mark.parametrize("rule", CASES)
def test_one_press_mends_it_and_undo_takes_that_back(shown, rule):
    make, words, label, kinds = CASES[rule]
    editor = shown(make())
    plan = editor.session.plan
    button = button_of(editor, rule)
    assert (button.text(), button.accessibleName()) == (words, words)
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    settle()
    new = editor.session.plan
    assert row_of(editor, rule) < 0 and new is not plan
    assert editor.session.undo_label == label
    selected = editor.selection.ids
    assert {new.parts[i].kind for i in selected if i in new.parts} == kinds
    assert selected or editor.selection.grounds
    assert all(
        new.parts.get(i, new.wires.get(i)) is not plan.parts.get(i, plan.wires.get(i)) for i in selected
    )
    editor.window.acts["undo"].trigger()
    settle()
    assert editor.session.plan is plan and row_of(editor, rule) >= 0


def test_by_keys_alone(shown):
    editor = shown(fed(("led-white-bare", {}), ("led-white-bare", {})))
    strip, window = editor.window.strip, editor.window
    strip.list.setFocus()
    row = row_of(editor, "led-without-resistor")
    strip.list.setCurrentIndex(strip.model.index(row, 0))
    QTest.keyClick(strip.list, Key.Key_Return, Ctrl)
    settle()
    assert editor.session.undo_label == "Put in 2 resistors"
    assert len([p for p in editor.session.plan.parts.values() if p.kind == "resistor"]) == 2
    assert window.focusWidget() is strip.list and strip.list.currentIndex().row() == row
    QTest.keyClick(window, Key.Key_Z, Ctrl)
    settle()
    assert not [p for p in editor.session.plan.parts.values() if p.kind == "resistor"]


def test_a_double_click_and_a_held_key_mend_one_thing_only(shown, hasty):
    QApplication.setDoubleClickInterval(hasty)
    QTest.qWait(hasty)
    editor = shown(fed(("led-white-bare", {}), ("lamp-12v", {"rated_a": 0.4}), supply={"limit_a": 4.0}))
    strip = editor.window.strip
    row = row_of(editor, "led-without-resistor")
    QTest.mouseClick(button_of(editor, "led-without-resistor"), Qt.MouseButton.LeftButton)
    settle()
    assert editor.session.undo_label == "Put in resistor"
    QTest.mouseClick(strip.mends.button(row), Qt.MouseButton.LeftButton)  # what lies under the pointer now
    editor.window.acts["undo"].trigger()
    assert editor.session.undo_label is None
    settle()
    strip.list.setFocus()
    strip.list.setCurrentIndex(strip.model.index(row_of(editor, "led-without-resistor"), 0))
    for repeated in (False, True, True):
        held = QKeyEvent(QEvent.Type.KeyPress, Key.Key_Return, Ctrl, "", repeated)
        QApplication.sendEvent(strip.list, held)
        settle()
    editor.window.acts["undo"].trigger()
    assert editor.session.undo_label is None


def test_return_alone_still_shows_what_a_finding_is_about(shown):
    editor = shown(fed(("led-white-bare", {})))
    strip = editor.window.strip
    strip.list.setFocus()
    strip.list.setCurrentIndex(strip.model.index(row_of(editor, "led-without-resistor"), 0))
    QTest.keyClick(strip.list, Key.Key_Return)
    assert editor.session.undo_label is None and editor.selection.ids == {"p2"}


def test_the_button_of_the_current_row_is_reached_by_tab_and_pressed_by_space(shown):
    editor = shown(fed(("led-white-bare", {})))
    window, strip = editor.window, editor.window.strip
    strip.list.setFocus()
    strip.list.setCurrentIndex(strip.model.index(row_of(editor, "led-without-resistor"), 0))
    settle()
    QTest.keyClick(strip.list, Key.Key_Tab)
    button = window.focusWidget()
    assert button is button_of(editor, "led-without-resistor")
    QTest.keyClick(button, Key.Key_Space)
    settle()
    assert editor.session.undo_label == "Put in resistor"


def test_a_finding_without_an_act_has_no_button_and_says_so(shown):
    editor = shown(fed(("led-white-bare", {})))
    strip = editor.window.strip
    row = row_of(editor, "safety-mains-adapter")
    assert button_of(editor, "safety-mains-adapter") is None
    strip.list.setFocus()
    strip.list.setCurrentIndex(strip.model.index(row, 0))
    QTest.keyClick(strip.list, Key.Key_Return, Ctrl)
    assert editor.notices.last.text == NO_ACT and editor.session.undo_label is None


def test_what_was_found_in_a_plan_that_has_changed_is_refused(shown):
    editor = shown(fed(("led-white-bare", {})))
    strip = editor.window.strip
    finding = strip.model.item(row_of(editor, "led-without-resistor")).data(FINDING_ROLE)
    editor.session.do(set_field(["p2"], label="by the crane"))
    settle()
    QTest.mouseClick(
        button_of(editor, "led-without-resistor"), Qt.MouseButton.LeftButton
    )  # that of now is well
    assert editor.session.undo_label == "Put in resistor"
    plan = editor.session.plan
    strip.mends.wanted.emit(finding)
    assert editor.notices.last.text == OF_BEFORE and editor.session.plan is plan


def test_what_is_still_being_typed_counts_before_a_mend(shown):
    editor = shown(fed(("led-white-bare", {})))
    title = editor.window.header.title
    title.setFocus()
    title.selectAll()
    QTest.keyClicks(title, "Old quay")
    QTest.mouseClick(button_of(editor, "led-without-resistor"), Qt.MouseButton.LeftButton)
    settle()
    assert editor.session.plan.title == "Old quay"
    assert row_of(editor, "led-without-resistor") < 0
    assert editor.session.undo_label == "Put in resistor"
    editor.session.undo()
    assert editor.session.plan.title == "Old quay" and editor.session.undo_label == "Set title"


@pytest.mark.parametrize("width", [420, 560, 800, 1100])
@pytest.mark.parametrize("words", [1.0, 1.6])
def test_a_button_lies_in_its_row_clear_of_the_words(qapp, width, words):
    act = Act("size", "Use 0.75 mm² for 12 wires", (), ("w1",), (("size", "0.75 mm²"),))
    plain = Finding("wire-drop", Rank.WEAK, "What is wrong " * 9, "Why it matters " * 8, "What mends it.")
    try:
        wear_factor(words)
        bare, layout = row_layout(plain, width), row_layout(plain._replace(act=act), width)
        metrics = {w: QFontMetrics(screen_font(13, w)) for w in ("semibold", "regular")}
        ends = [metrics["semibold"].horizontalAdvance(line) for line in layout.what]
        ends += [metrics["regular"].horizontalAdvance(line) for line in layout.rest]
        words_below = TOP + len(ends) * lined(LINE)
        button = layout.button
        assert bare.button is None and bare.height <= layout.height
        assert QRect(0, 0, width, layout.height).contains(button)
        assert button.left() >= INDENT + max(ends) or button.top() >= words_below - 2
        assert button.width() >= metrics["regular"].horizontalAdvance(act.words) + 20 or width < 440
    finally:
        wear_factor(1.0)


def test_buttons_follow_when_the_list_is_scrolled(shown):
    editor = shown(fed(("led-white-bare", {}), ("lamp-16v", {}), supply={"limit_a": 20.0}, size="28 AWG"))
    strip = editor.window.strip
    editor.window.resize(1024, 700)
    settle()
    for value in (0, strip.list.verticalScrollBar().maximum() // 2, strip.list.verticalScrollBar().maximum()):
        strip.list.verticalScrollBar().setValue(value)
        settle()
        seen = [b for b in strip.mends._buttons if b.isVisible()]
        for button in seen:
            rect = strip.list.visualRect(strip.model.index(button.row, 0))
            assert rect.contains(button.geometry())
            act = strip.model.item(button.row).data(FINDING_ROLE).act
            assert button.text() == act.words
