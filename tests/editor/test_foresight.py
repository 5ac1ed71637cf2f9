"""What a pressed switch will do is worked out while it is held, and told as if it had been asked then."""

import threading

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import close_editor, made_editor
from support.levers import answered, lever
from support.networks import draw

import app.foresight
import wiring.findings.situation as situations
from wiring.edits.set_plan import set_plan
from wiring.findings.situation import examine

PARTS = {"G1": "supply-regulated", "S1": "toggle-on-off", "E1": "lamp-12v", "E2": "lamp-1v5"}
WIRES = [("G1:+", "S1:13"), ("S1:14", "E1:1"), ("S1:14", "E2:1"), ("E1:2", "G1:-"), ("E2:2", "G1:-")]
LEFT, PLAIN, SHIFT = (
    Qt.MouseButton.LeftButton,
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ShiftModifier,
)


@pytest.fixture(scope="module")
def beside(qapp, tmp_path_factory):
    """A whole editor whose worker works."""
    made = made_editor(tmp_path_factory.mktemp("beside"), at_once=False)
    yield made
    close_editor(made)


@pytest.fixture
def editor(beside, qtbot):
    """The switch stands off, and nothing is under way."""
    beside.session.open(draw({**PARTS, "S1": ("toggle-on-off", {}, "off")}, WIRES, length_m=0.5), None)
    qtbot.waitUntil(lambda: answered(beside))
    QTest.mouseMove(beside.window.plan_view, lever(beside))
    qtbot.wait(20)
    return beside


@pytest.fixture
def asked(monkeypatch):
    """The positions of S1 the plan is examined in, by whom: True for the window's own thread."""
    seen: list[tuple[str, bool]] = []
    usual = situations.examine

    def counted(plan, kinds, positions, **rest):
        seen.append((positions["S1"], threading.current_thread() is threading.main_thread()))
        return usual(plan, kinds, positions, **rest)

    monkeypatch.setattr(situations, "examine", counted)
    return seen


def press(editor, keys=PLAIN):
    QTest.mousePress(editor.window.plan_view, LEFT, keys, lever(editor))


def let_go(editor, keys=PLAIN):
    QTest.mouseRelease(editor.window.plan_view, LEFT, keys, lever(editor))


def is_cold(editor, situation) -> bool:
    """Whether an answer is what is found by asking anew."""
    plan, kinds = editor.session.plan, editor.session.kinds
    cold = examine(plan, kinds, editor.session.positions, outlooks=False)
    return situation.findings == cold.findings and dict(situation.figures.parts) == dict(cold.figures.parts)


def test_an_answer_is_there_as_soon_as_the_button_comes_up(editor, asked):
    before = editor.solving.answer
    press(editor)
    editor.solving._foresight.wait()
    assert asked == [("on", False)] and editor.session.positions["S1"] == "off"
    assert editor.solving.answer is before  # nothing is told yet
    let_go(editor)
    assert answered(editor) and asked == [("on", False)]  # at once, and nothing was asked again
    assert editor.session.positions["S1"] == "on" and is_cold(editor, editor.solving.answer.situation)


@pytest.mark.parametrize("figures_sec", [0.001, 1.0])
def test_what_is_still_under_way_is_asked_once(editor, asked, qtbot, monkeypatch, figures_sec):
    lit = []
    editor.solving.lit.connect(lit.append)
    goes_on = threading.Event()
    usual = app.foresight.Foresight._asked

    def slow(foresight, question):
        goes_on.wait(5.0)
        return usual(foresight, question)

    monkeypatch.setattr(editor.solving._foresight._lane, "_ask", slow.__get__(editor.solving._foresight))
    pace = editor.solving.pace
    pace.figures_sec, pace.findings_sec = figures_sec, 1.0  # so slow that the window must not wait for it
    press(editor)
    let_go(editor)
    assert not answered(editor) and bool(lit) == (figures_sec < 0.1)  # lamps follow the hand where they can
    editor.solving.lit.disconnect(lit.append)
    goes_on.set()
    qtbot.waitUntil(lambda: answered(editor))
    assert [stand for stand, _ in asked].count("on") == 1
    assert is_cold(editor, editor.solving.answer.situation)


def test_a_press_that_ends_elsewhere_changes_nothing(editor, asked, qtbot):
    before = editor.solving.answer.situation
    press(editor)
    editor.solving._foresight.wait()
    QTest.keyClick(editor.window.plan_view, Qt.Key.Key_Escape)
    let_go(editor)
    qtbot.wait(20)
    assert editor.session.positions["S1"] == "off"
    assert editor.solving.answer.situation.figures is before.figures


def test_an_edit_meanwhile_makes_what_was_foreseen_worthless(editor, asked, qtbot):
    press(editor)
    editor.solving._foresight.wait()
    editor.session.do(set_plan(title="Another"))
    editor.session.throw("S1", "on")
    qtbot.waitUntil(lambda: answered(editor))
    answer = editor.solving.answer
    assert answer.revision == editor.session.revision and answer.situation.plan.title == "Another"
    assert is_cold(editor, answer.situation)


def test_a_press_that_only_adds_to_the_selection_foresees_nothing(editor, asked):
    editor.window.plan_view._rests.stop()
    press(editor, SHIFT)
    editor.solving._foresight.wait()
    let_go(editor, SHIFT)
    assert asked == []


def test_a_pointer_that_rests_on_a_lever_is_enough(editor, asked, qtbot):
    view, beside_it = editor.window.plan_view, lever(editor)
    view._rests.stop()
    beside_it.setX(beside_it.x() + 200)
    for place in (beside_it, lever(editor), beside_it):
        QTest.mouseMove(view, place)
        assert view._rests.isActive() == (place == lever(editor))
    QTest.mouseMove(view, lever(editor))
    qtbot.waitUntil(lambda: asked != [])
    editor.solving._foresight.wait()
    press(editor)
    let_go(editor)
    assert answered(editor) and asked == [("on", False)]


def test_letting_go_of_a_push_button_is_foreseen_while_it_is_held(editor, asked, qtbot):
    plan = draw({**PARTS, "S1": "push-to-make"}, WIRES, length_m=0.5)
    editor.session.open(plan, None)
    qtbot.waitUntil(lambda: answered(editor))
    QTest.mouseMove(editor.window.plan_view, lever(editor))
    stood = editor.session.positions["S1"]
    press(editor)
    held = editor.session.positions["S1"]
    assert held != stood
    qtbot.waitUntil(lambda: answered(editor))
    editor.solving._foresight.wait()
    asked.clear()
    let_go(editor)
    assert editor.session.positions["S1"] == stood and answered(editor) and asked == []
    assert is_cold(editor, editor.solving.answer.situation)


def test_a_position_on_the_card_is_foreseen_as_well(editor, asked, qtbot):
    editor.selection.select(("S1",))
    row = editor.window.inspector.card._position
    button = next(b for b in row._buttons if b.text() == "on")
    QTest.mousePress(button, LEFT)
    editor.solving._foresight.wait()
    assert asked == [("on", False)]
    QTest.mouseRelease(button, LEFT)
    assert answered(editor) and asked == [("on", False)]
