"""Drawings and sheets are made beside the window, and only the newest ones are shown."""

import threading
import time

import pytest
from support.editors import close_editor, made_editor, open_demo, part_id

from app.making import Making
from app.printing.made_sheets import made_of
from wiring.edits.set_plan import set_plan
from wiring.findings.situation import examine
from wiring.plan.positions import in_use


@pytest.fixture
def making(qapp):
    made = Making(qapp)
    yield made
    made.close()


def test_work_is_done_off_the_windows_thread(making, qtbot):
    with qtbot.waitSignal(making.made, timeout=5000) as told:
        making.ask(threading.current_thread)
    assert told.args[0] is not threading.main_thread()


def test_only_the_newest_wish_is_told(making, qtbot):
    begun, told = [], []
    making.made.connect(told.append)
    for number in range(20):
        making.ask(lambda number=number: (begun.append(number), time.sleep(0.03), number)[2])
    qtbot.waitUntil(lambda: told == [19], timeout=5000)
    assert len(begun) <= 3


def test_work_that_fails_is_told_as_nothing_and_written_to_the_log(making, qtbot, caplog):
    with qtbot.waitSignal(making.made, timeout=5000) as told:
        making.ask(lambda: 1 / 0)
    assert told.args == [None]
    assert "ZeroDivisionError" in caplog.text


def test_drawings_and_sheets_arrive_without_stopping_the_window(qapp, tmp_path, qtbot):
    editor = made_editor(tmp_path, at_once=False)
    open_demo(editor)
    window = editor.window
    window.show_view("circuit")
    qtbot.waitUntil(lambda: bool(window.circuit_page._drawings), timeout=15_000)
    window.show_view("sheets")
    assert window.sheets_page._words.text() != ""
    qtbot.waitUntil(lambda: len(window.sheets_page.pages) > 3, timeout=20_000)
    editor.session.do(set_plan(title="Renamed meanwhile"))
    wanted = "Renamed meanwhile"
    qtbot.waitUntil(
        lambda: (
            wanted in str(window.sheets_page.pages[0].picture.title) if window.sheets_page.pages else False
        ),
        timeout=20_000,
    )
    close_editor(editor)


def test_sheets_stand_as_in_use_whatever_was_thrown(editor):
    open_demo(editor)
    plan, kinds = editor.session.plan, editor.session.kinds
    usual = made_of(examine(plan, kinds)).pages
    thrown = {**in_use(plan, kinds), part_id(editor, "S1"): "off"}
    assert usual
    assert made_of(examine(plan, kinds, thrown)).pages == usual


def test_an_empty_plan_says_how_to_begin_until_something_is_drawn(editor):
    steps = editor.window.first_steps
    assert steps.isVisible()
    editor.window.tray.wanted.emit("servo")
    assert not steps.isVisible()
    editor.window.acts["select"].trigger()
    assert steps.isVisible()
    open_demo(editor)
    assert not steps.isVisible()


@pytest.mark.parametrize("what", ["board", "track", "scene", "panel"])
def test_draw_takes_its_tool_and_escape_leaves_it(editor, what, qtbot):
    from PySide6.QtCore import Qt

    window = editor.window
    window.acts[what].trigger()
    assert window.plan_view.tool == what
    assert not window.acts["select"].isChecked()
    qtbot.keyClick(window.plan_view, Qt.Key.Key_Escape)
    assert window.plan_view.tool == "select"
    assert window.acts["select"].isChecked()


def test_escape_in_the_wire_tool_unchecks_it(editor, qtbot):
    from PySide6.QtCore import Qt

    window = editor.window
    window.acts["wire"].trigger()
    qtbot.keyClick(window.plan_view, Qt.Key.Key_Escape)
    assert not window.acts["wire"].isChecked()
    assert not window.plan_page.wire_size.isVisible()
