"""A click on a switch is followed within one frame: lamps, flags, card and strip are painted in one go."""

import time
from itertools import pairwise

import pytest
from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editors import close_editor, made_editor
from support.levers import answered, lever
from support.networks import draw

import wiring.findings.situation as situations
from wiring.findings.finding import Rank

PARTS = {"G1": "supply-regulated", "S1": "toggle-on-off", "E1": "lamp-12v", "E2": "lamp-1v5"}
WIRES = [("G1:+", "S1:13"), ("S1:14", "E1:1"), ("S1:14", "E2:1"), ("E1:2", "G1:-"), ("E2:2", "G1:-")]


class Passes(QObject):
    """Counts how often the plan is painted."""

    def __init__(self, view) -> None:
        super().__init__()
        self.count = 0
        view.installEventFilter(self)

    def eventFilter(self, watched, event) -> bool:
        self.count += event.type() == QEvent.Type.Paint
        return False


@pytest.fixture(scope="module")
def beside(qapp, tmp_path_factory):
    """A whole editor whose worker works."""
    made = made_editor(tmp_path_factory.mktemp("beside"), at_once=False)
    yield made
    close_editor(made)


@pytest.fixture
def editor(beside, qtbot):
    """The switch stands off, its card is shown, and nothing is under way."""
    made = beside
    made.window.show_view("plan")
    made.session.open(draw({**PARTS, "S1": ("toggle-on-off", {}, "off")}, WIRES, length_m=0.5), None)
    for stand in ("on", "off"):
        made.session.throw("S1", stand)
        qtbot.waitUntil(lambda: answered(made))
    QTest.mouseMove(made.window.plan_view, lever(made))
    made.selection.select(("S1",))
    qtbot.wait(80)
    return made


def pace(editor, figures_sec: float, findings_sec: float) -> None:
    """However busy this machine is."""
    editor.solving.pace.figures_sec, editor.solving.pace.findings_sec = figures_sec, findings_sec


def shown(editor) -> QImage:
    """What is on the screen now, without painting anything."""
    return editor.window.screen().grabWindow(editor.window.winId()).toImage()


def piece(image: QImage, editor, widget, rect=None) -> QImage:
    rect = rect or widget.rect()
    return image.copy(rect.translated(widget.mapTo(editor.window, rect.topLeft()) - rect.topLeft()))


def round_part(editor, part_id: str):
    view, part = editor.window.plan_view, editor.session.plan.parts[part_id]
    centre = view.px(part.x_mm, part.y_mm)
    rect = view.rect()
    rect.setSize(rect.size().scaled(80, 80, Qt.AspectRatioMode.IgnoreAspectRatio))
    rect.moveCenter(centre)
    return rect


def click_and_paint_once(editor) -> QImage:
    """Click the switch, let the window be painted once, and return what is on the screen then."""
    passes = Passes(editor.window.plan_view)
    QTest.mouseClick(editor.window.plan_view, Qt.MouseButton.LeftButton, pos=lever(editor))
    assert passes.count == 0
    late = time.monotonic() + 5
    while not passes.count and time.monotonic() < late:
        QApplication.processEvents()
    assert passes.count == 1
    return shown(editor)


def test_one_pass_of_painting_shows_lamps_flags_figures_card_and_strip(editor, qtbot):
    window = editor.window
    before = shown(editor)
    pace(editor, 0.001, 0.001)
    first = click_and_paint_once(editor)
    assert editor.session.positions["S1"] == "on"
    assert any(f.rank is Rank.DANGER for f in editor.solving.answer.situation.findings)
    for what, widget, rect in (
        ("lamp", window.plan_view, round_part(editor, "E1")),
        ("flag", window.plan_view, round_part(editor, "E2")),
        ("switch and figures at the pointer", window.plan_view, round_part(editor, "S1")),
        ("card", window.inspector.card, None),
        ("strip", window.strip, None),
    ):
        now = piece(first, editor, widget, rect)
        assert now != piece(before, editor, widget, rect), f"{what} shows nothing new"
    qtbot.wait(120)
    late = shown(editor)
    for what, widget in (("page", window.plan_page), ("card", window.inspector), ("strip", window.strip)):
        assert piece(first, editor, widget) == piece(late, editor, widget), f"{what} came later"


def test_slow_findings_follow_once_the_lamps_are_painted(editor, qtbot, monkeypatch):
    window, view = editor.window, editor.window.plan_view
    begun = []
    real = situations.examine
    passes = Passes(view)

    def told(*a, **k):
        begun.append(passes.count)
        return real(*a, **k)

    monkeypatch.setattr(situations, "examine", told)
    monkeypatch.setattr(editor.session, "foresee", lambda *_: None)  # as when a key throws it
    before = shown(editor)
    pace(editor, 0.001, 1.0)
    first = click_and_paint_once(editor)
    lamp = round_part(editor, "E1")
    assert piece(first, editor, view, lamp) != piece(before, editor, view, lamp)
    assert piece(first, editor, window.strip) == piece(before, editor, window.strip)
    qtbot.waitUntil(lambda: answered(editor))
    assert begun == [1]
    qtbot.wait(50)
    assert piece(shown(editor), editor, window.strip) != piece(before, editor, window.strip)


def test_findings_are_looked_for_though_the_plan_is_not_in_sight(editor, qtbot):
    editor.window.show_view("circuit")
    pace(editor, 0.001, 1.0)
    editor.session.throw("S1", "on")
    qtbot.waitUntil(lambda: answered(editor))
    assert any(f.rank is Rank.DANGER for f in editor.solving.answer.situation.findings)


def test_an_answer_from_the_worker_that_is_late_does_not_undo_one_given_on_the_spot(
    editor, qtbot, monkeypatch
):
    real, begun = situations.examine, []

    def slow(plan, kinds, positions=None, **named):
        if positions["S1"] == "on":
            begun.append(True)
            time.sleep(0.15)
        return real(plan, kinds, positions, **named)

    monkeypatch.setattr(situations, "examine", slow)
    pace(editor, 1.0, 1.0)
    editor.session.throw("S1", "on")
    qtbot.waitUntil(lambda: begun != [])
    pace(editor, 0.001, 0.001)
    editor.session.throw("S1", "off")
    given = editor.solving.answer
    assert answered(editor)
    editor.solving._figures.wait()
    qtbot.wait(30)
    assert editor.solving.answer is given
    assert editor.session.positions["S1"] == "off"


def test_a_press_and_a_move_do_not_change_the_shape_of_the_pointer_twice(editor):
    told = []

    class Shapes(QObject):
        def eventFilter(self, watched, event) -> bool:
            if event.type() == QEvent.Type.CursorChange:
                told.append(watched.cursor().shape())
            return False

    shapes, view = Shapes(), editor.window.plan_view
    view.installEventFilter(shapes)
    QTest.mouseMove(view, lever(editor))
    for step in range(1, 4):
        place = lever(editor)
        place.setX(place.x() + step * 40)
        QTest.mouseMove(view, place)
    assert all(one != other for one, other in pairwise(told))
