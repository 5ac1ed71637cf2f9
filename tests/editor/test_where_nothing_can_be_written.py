"""Folders that may not be written: one plain sentence each, and nothing is lost.

A file stands where the folder should be, for the tests may run as one who may write everywhere.
"""

import logging
import tempfile
from logging.handlers import RotatingFileHandler

import pytest
from PySide6.QtWidgets import QFileDialog
from support.editors import open_demo

from app import settings
from app.notices import Notice
from app.proposed_file import LONGEST, proposed_file
from app.rescuing import Rescuing
from app.settings import Remembered, state_complaint, state_folder
from app.start import begin_log
from app.tray import set_files
from wiring.edits.set_plan import set_plan
from wiring.files.store import load


@pytest.fixture
def no_state(tmp_path, monkeypatch):
    """Let a file stand where logs and rescue copies should lie."""
    taken = tmp_path / "taken"
    taken.write_text("a file")
    monkeypatch.setenv("XDG_STATE_HOME", str(taken))
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    settings._scratch_folder.cache_clear()
    yield taken
    settings._scratch_folder.cache_clear()
    for handler in logging.getLogger().handlers[:]:
        if isinstance(handler, RotatingFileHandler):
            logging.getLogger().removeHandler(handler)
            handler.close()


def one_sentence(text: str) -> bool:
    return text.endswith(".") and "\n" not in text and "Error" not in text


def test_where_no_log_can_lie_it_lies_among_the_temporary_files(no_state):
    assert no_state not in state_folder().parents and state_folder().is_dir()
    assert state_folder() == state_folder()
    assert one_sentence(state_complaint()) and str(no_state) in state_complaint()
    assert state_folder().stat().st_mode & 0o077 == 0
    assert begin_log().parent == state_folder()


def test_where_all_is_well_nothing_is_said(tmp_path):
    assert state_complaint() == ""
    assert Remembered(tmp_path / "new" / "editor.ini").complaint == ""


def test_that_choices_cannot_be_remembered_is_said(tmp_path):
    (tmp_path / "taken").write_text("a file")
    complaint = Remembered(tmp_path / "taken" / "underboard" / "editor.ini").complaint
    assert one_sentence(complaint) and "taken" in complaint


def test_that_no_rescue_copy_can_be_kept_is_said_once(editor, tmp_path):
    (tmp_path / "taken").write_text("a file")
    rescuing = Rescuing(editor.session, tmp_path / "taken" / "rescue")
    said: list[str] = []
    editor.session.faulted.connect(said.append)
    open_demo(editor)
    for title in ("One", "Two"):
        editor.session.do(set_plan(title=title))
        rescuing.write_now()
    editor.session.faulted.disconnect(said.append)
    rescuing.close()
    assert len(said) == 1 and one_sentence(said[0]) and "rescue copy" in said[0]


def test_what_could_not_be_saved_is_saved_elsewhere_with_one_click(editor, tmp_path, monkeypatch):
    open_demo(editor)
    editor.session.do(set_plan(title="Kept"))
    there = iter((tmp_path / "no folder" / "x.underboard", tmp_path / "y.underboard"))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", staticmethod(lambda *_a: (str(next(there)), "")))
    bar = editor.window.notice_bar
    assert not editor.window.documents.save() and bar.isVisible()
    bar._act.click()
    assert load(tmp_path / "y.underboard").title == "Kept"
    assert not bar.isVisible() and not editor.session.unsaved


def test_sheets_and_what_was_printed_are_refused_in_a_sentence(editor, tmp_path):
    open_demo(editor)
    sheets = editor.window.sheets_page
    sheets.write_pdf(tmp_path / "no folder" / "quay.pdf")
    assert one_sentence(editor.notices.last.text) and "quay.pdf" in editor.notices.last.text
    editor.session.path = tmp_path / "no folder" / "quay.underboard"
    made = sheets.made_now()
    assert made is not None
    done, sentence = sheets.record.remember(made)
    assert not done and one_sentence(sentence)


def test_a_set_that_cannot_be_kept_says_where_and_why(tmp_path):
    (tmp_path / "taken").write_text("a file")
    said = set_files.keep(tmp_path / "taken" / "sets", "Lit shop", "{}")
    assert one_sentence(said) and "taken" in said and "because" in said


def test_a_notice_that_lasts_comes_back_after_what_covered_it(editor):
    bar = editor.window.notice_bar
    editor.notices.offer(Notice("A copy was kept.", "weak", "Open the copy", lambda: None))
    editor.notices.say("The disk is full.", "danger")
    editor.notices.say("Written.")
    bar._timer.timeout.emit()
    assert bar.text == "The disk is full."
    bar.put_away()
    assert bar.text == "A copy was kept." and bar.isVisible()
    bar.put_away()
    assert not bar.isVisible()


@pytest.mark.parametrize(
    ("title", "name"),
    [("Layout 1.5", "Layout 1 5.csv"), ("up/down", "up down.csv"), ("…", "plan.csv"), ("", "plan.csv")],
)
def test_any_title_makes_a_name_of_a_file(tmp_path, title, name):
    assert proposed_file(None, title, ".csv", tmp_path) == tmp_path / name


def test_a_long_title_makes_a_name_that_fits(tmp_path):
    proposed = proposed_file(None, "Ж" * 400, ".underboard", tmp_path)
    assert len(proposed.stem) == LONGEST
    proposed.write_text("fits")


def test_what_is_made_of_a_saved_plan_lies_beside_it(tmp_path):
    assert proposed_file(tmp_path / "a.b.underboard", "Title", ".pdf") == tmp_path / "a.b.pdf"
