"""Two windows on one plan, a file changed by somebody else, and a kept copy that was put away."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog
from support.editors import open_demo

from app.plan_lock import PlanLock
from app.rescuing import Rescuing
from app.settings import state_folder
from app.start import kept_copies
from app.window.open_save import Choice
from wiring.edits.set_plan import set_plan
from wiring.files.store import load, save
from wiring.plan.plan import Plan


@pytest.fixture
def path(tmp_path):
    made = tmp_path / "mole.underboard"
    save(Plan(title="Mole end"), made)
    return made


@pytest.fixture
def documents(editor):
    documents = editor.window.documents
    documents.watch._timer.setInterval(20)
    yield documents
    documents.close()
    documents.ask_over = documents._ask_over


def other_window():
    return PlanLock(lambda: state_folder() / "open")


def names(monkeypatch, path):
    monkeypatch.setattr(QFileDialog, "getSaveFileName", staticmethod(lambda *_a, **_k: (str(path), "")))


def test_a_plan_open_in_another_window_opens_as_a_copy(editor, documents, path, monkeypatch):
    other = other_window()
    assert other.take(path)
    assert documents.open_path(path)
    assert editor.session.plan.title == "Mole end" and editor.session.path is None
    assert "open in another window" in editor.window.notice_bar.text
    before = path.read_bytes()
    editor.session.do(set_plan(title="Mine"))
    names(monkeypatch, path)
    assert not documents.save()
    assert path.read_bytes() == before and editor.session.unsaved
    assert "not written over" in editor.notices.last.text
    other.let_go()
    assert documents.save()
    assert load(path).title == "Mine"


def test_a_plan_is_held_while_it_is_open_and_free_afterwards(editor, documents, path, tmp_path):
    documents.open_path(path)
    assert not other_window().take(path)
    link = tmp_path / "link.underboard"
    link.symlink_to(path)
    assert not other_window().take(link)
    documents.new()
    assert other_window().take(path)


def test_opening_the_same_plan_again_is_no_conflict(editor, documents, path):
    documents.open_path(path)
    documents.open_path(path)
    assert editor.session.path == path


def test_a_file_replaced_by_somebody_else_is_told_each_time_and_can_be_opened_again(
    editor, documents, path, qtbot
):
    documents.open_path(path)
    for title in ("Changed once", "Changed twice"):
        with qtbot.waitSignal(documents.watch.differs, timeout=3000):
            save(Plan(title=title), path)  # puts a new file in the old one's place
        assert "changed by somebody else" in editor.window.notice_bar.text
    editor.window.notice_bar._answer()
    assert editor.session.plan.title == "Changed twice" and not editor.session.unsaved


def test_ones_own_save_is_not_told(editor, documents, path, qtbot):
    documents.open_path(path)
    editor.session.do(set_plan(title="My own"))
    assert documents.save()
    with qtbot.assertNotEmitted(documents.watch.differs, wait=200):
        pass
    assert not documents.watch.foreign


def test_a_file_that_is_touched_but_not_changed_is_not_told(editor, documents, path, qtbot):
    documents.open_path(path)
    with qtbot.assertNotEmitted(documents.watch.differs, wait=200):
        path.write_bytes(path.read_bytes())


def test_a_file_that_goes_away_is_told_and_saving_writes_it_again(editor, documents, path, qtbot):
    documents.open_path(path)
    with qtbot.waitSignal(documents.watch.differs, timeout=3000):
        path.unlink()
    assert "no longer in its folder" in editor.window.notice_bar.text
    editor.session.do(set_plan(title="Back again"))
    assert documents.save()
    assert load(path).title == "Back again"


@pytest.mark.parametrize(
    ("choice", "title"), [(Choice.SAVE, "Mine"), (Choice.STAY, "Theirs"), (Choice.LEAVE, "Theirs")]
)
def test_saving_over_somebody_elses_change_is_asked_about(
    editor, documents, path, tmp_path, monkeypatch, choice, title
):
    documents.open_path(path)
    editor.session.do(set_plan(title="Mine"))
    save(Plan(title="Theirs"), path)
    documents.ask_over = lambda _path: choice
    names(monkeypatch, tmp_path / "other.underboard")
    assert documents.save() is (choice is not Choice.STAY)
    assert load(path).title == title
    assert (tmp_path / "other.underboard").exists() is (choice is Choice.LEAVE)


@pytest.fixture
def folder(editor, tmp_path):
    """A folder with a copy that a crash left."""
    folder = tmp_path / "rescue"
    open_demo(editor)
    editor.session.do(set_plan(title="Lost and found"))
    crashed = Rescuing(editor.session, folder)
    crashed.write_now()
    crashed._lock.unlock()  # as when the process dies
    editor.window.acts["new"].trigger()
    editor.notices.last = None
    return folder


def test_a_copy_that_was_put_away_does_not_come_back_but_stays_in_the_menu(editor, folder):
    first = Rescuing(editor.session, folder)
    first.offer_left_over(editor.notices, editor.window.documents.take_up)
    assert "Lost and found" in editor.window.notice_bar.text
    QTest.keyClick(editor.window.notice_bar, Qt.Key.Key_Escape)
    assert not editor.window.notice_bar.isVisible()
    first.close()
    editor.notices.last = None
    again = Rescuing(editor.session, folder)
    again.offer_left_over(editor.notices, editor.window.documents.take_up)
    assert editor.notices.last is None
    editor.window.rescues = lambda: kept_copies(editor, again)
    menu = editor.window.submenus["rescues"]
    menu.aboutToShow.emit()
    (action,) = menu.actions()
    assert action.text().startswith("Lost and found")
    action.trigger()
    assert editor.session.plan.title == "Lost and found" and editor.session.unsaved
    menu.aboutToShow.emit()
    assert not menu.actions()[0].isEnabled()
    again.close()
    editor.window.rescues = tuple


def test_a_notice_that_gave_way_to_another_was_not_put_away(editor, folder):
    first = Rescuing(editor.session, folder)
    first.offer_left_over(editor.notices, editor.window.documents.take_up)
    editor.notices.say("Something else.")
    editor.window.notice_bar.put_away()
    first.close()
    again = Rescuing(editor.session, folder)
    again.offer_left_over(editor.notices, editor.window.documents.take_up)
    assert "Lost and found" in editor.notices.last.text
    again.close()
