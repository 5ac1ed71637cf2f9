"""The bench in the whole window: menus and bars mean the face, the wire tool goes behind it, cards follow."""

import sys

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication
from support.benches import BUTTON, LAMP, PANEL, SWITCH, panel_plan
from support.surfaces import LEFT

from app.bench.bench import FaceItem
from app.bench.face_hit import terminal_places
from app.crash_net import SENTENCE, CrashNet
from app.inspector.wire_card import WireCard
from app.rescuing import Rescuing
from wiring.edits.face_items import add_text
from wiring.plan.names import TerminalRef

TEXT = FaceItem("text", 0)


@pytest.fixture
def editor_on_bench(editor):
    editor.session.open(panel_plan(), None)
    editor.session.do(add_text(PANEL, "QUAY", 40, 75))
    editor.window.plan_view.bench.open(PANEL)
    QApplication.processEvents()
    return editor


@pytest.fixture
def acts(editor_on_bench):
    return editor_on_bench.window.acts


@pytest.fixture
def face(editor_on_bench):
    return editor_on_bench.window.plan_view.bench.face


def click_terminal(face, part, name):
    sight = face.sight()
    x, y = sight.camera.to_px(terminal_places(sight)[TerminalRef(part, name)])
    QTest.mouseClick(face, LEFT, Qt.KeyboardModifier.NoModifier, QPoint(round(x), round(y)))


def test_the_acts_of_the_menus_mean_what_is_chosen_on_the_face(editor_on_bench, acts, face):
    session, bench = editor_on_bench.session, face.bench
    assert not acts["remove"].isEnabled() and not acts["duplicate"].isEnabled()
    bench.choose((TEXT,))
    assert acts["remove"].isEnabled() and acts["duplicate"].isEnabled() and acts["column"].isEnabled()
    acts["duplicate"].trigger()
    assert len(face.panel.texts) == 2 and bench.items == {FaceItem("text", 1)}
    acts["remove"].trigger()
    assert len(face.panel.texts) == 1
    acts["select_all"].trigger()
    assert editor_on_bench.selection.ids == {SWITCH, BUTTON, LAMP} and bench.items == {TEXT}
    assert session.undo_label == "Remove legend"


def test_rename_asks_on_the_face_and_not_on_the_plan_beneath(editor_on_bench, acts, face):
    editor_on_bench.selection.select((LAMP,))
    acts["rename"].trigger()
    assert face.typing.isVisible()
    QTest.keyClicks(face.typing.line, "Clear")
    QTest.keyClick(face.typing.line, Qt.Key.Key_Return)
    assert editor_on_bench.session.plan.parts[LAMP].label == "Clear"


def test_the_wire_button_of_the_plan_pulls_behind_the_panel_in_the_size_and_colour_chosen_there(
    editor_on_bench, acts, face
):
    window, session = editor_on_bench.window, editor_on_bench.session
    acts["wire"].trigger()
    QApplication.processEvents()
    assert face.bench.behind and face.acting.tool == "wire" and acts["wire"].isChecked()
    assert window.plan_page.wire_size.isVisible() and window.plan_page.wire_colour.isVisible()
    window.plan_view.set_wire_choice("18 AWG", "BN")
    before = session.plan
    click_terminal(face, BUTTON, "14")
    click_terminal(face, LAMP, "K")
    (new,) = session.plan.wires.keys() - before.wires.keys()
    assert (session.plan.wires[new].size, session.plan.wires[new].colour) == ("18 AWG", "BN")
    assert isinstance(window.inspector.card, WireCard)
    acts["select"].trigger()
    QApplication.processEvents()
    assert face.acting.tool == "select" and not window.plan_page.wire_size.isVisible()
    assert face.bench.panel == PANEL


def test_with_the_bench_away_the_same_acts_mean_the_plan(editor_on_bench, acts, face):
    face.bench.choose((TEXT,))
    face.bench.lay("")
    QApplication.processEvents()
    assert not acts["remove"].isEnabled()
    acts["wire"].trigger()
    assert editor_on_bench.window.plan_view.tool == "wire" and face.acting.tool == "select"


def test_a_fault_in_a_key_handler_of_the_bench_is_told_and_the_program_lives(
    editor_on_bench, face, monkeypatch, tmp_path
):
    rescuing = Rescuing(editor_on_bench.session, tmp_path / "rescue")
    net = CrashNet(rescuing, editor_on_bench.notices, tmp_path / "log")
    monkeypatch.setattr(face, "come_in", lambda: ()[0])
    monkeypatch.setattr(sys, "excepthook", net._caught)
    key = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_D, Qt.KeyboardModifier.NoModifier)
    QApplication.postEvent(face, key)  # it comes from the event loop, as from a keyboard
    QApplication.processEvents()
    monkeypatch.undo()
    rescuing.close()
    assert editor_on_bench.notices.last.text == SENTENCE
    QTest.keyClick(face, Qt.Key.Key_D)
    assert editor_on_bench.window.isVisible() and face.acting.tool == "line"


def test_a_notice_lies_below_the_bar_of_the_bench_and_goes_up_again_with_it(editor_on_bench):
    window = editor_on_bench.window
    bar, notice = window.plan_view.bench.bar, window.notice_bar
    editor_on_bench.notices.say("A copy of a plan that was never saved is here.", "weak")

    def gap():
        return notice.y() - bar.mapTo(window, QPoint(0, bar.height())).y()

    assert notice.isVisible() and 0 <= gap() < 30
    above = notice.y()
    window.plan_view.bench.bench.lay("")
    assert notice.isVisible() and notice.y() < above
    window.plan_view.bench.open(PANEL)
    assert notice.y() == above


@pytest.mark.parametrize(("wide", "factor"), [(1024, 1.0), (1280, 1.0), (1024, 1.5), (1600, 1.0)])
def test_no_word_of_the_bar_is_cut_however_narrow_it_is(editor_on_bench, wide, factor):
    editor_on_bench.look.write_at(factor)
    try:
        editor_on_bench.window.resize(wide, 768)
        QApplication.processEvents()
        bar = editor_on_bench.window.plan_view.bench.bar
        buttons = [b for b in bar.findChildren(QAbstractButton) if b.isVisible()]
        assert len(buttons) == 6
        assert [b.text() for b in buttons if b.width() < b.sizeHint().width()] == []
        assert all(bar.rect().contains(b.mapTo(bar, b.rect().bottomRight())) for b in buttons)
    finally:
        editor_on_bench.look.write_at(1.0)
