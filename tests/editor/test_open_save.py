"""Plans are opened, saved, rescued and never lost; refusals are one sentence in the window."""

import pytest
from PySide6.QtWidgets import QFileDialog
from support.editors import DEMOS, open_demo, part_id
from support.networks import lamp_street

from app.crash_net import SENTENCE, CrashNet
from app.rescuing import Rescuing
from app.window.open_menus import example_plans
from app.window.open_save import Choice
from wiring.edits.remove import remove
from wiring.edits.set_plan import set_plan
from wiring.files.rescue import find_rescues
from wiring.files.store import load


def answers(monkeypatch, name: str, path) -> None:
    monkeypatch.setattr(QFileDialog, name, staticmethod(lambda *_a, **_k: (str(path) if path else "", "")))


def test_save_asks_for_a_name_once_and_adds_the_suffix(editor, tmp_path, monkeypatch):
    open_demo(editor)
    editor.session.do(set_plan(title="Mole end"))
    answers(monkeypatch, "getSaveFileName", tmp_path / "mole")
    editor.window.acts["save"].trigger()
    path = tmp_path / "mole.underboard"
    assert load(path) == editor.session.plan
    assert not editor.session.unsaved
    assert editor.window.header.state.text() == "Saved"
    answers(monkeypatch, "getSaveFileName", None)
    editor.session.do(set_plan(title="Mole end 2"))
    assert "Unsaved" in editor.window.header.state.text()
    editor.window.acts["save"].trigger()
    assert load(path).title == "Mole end 2"
    assert editor.remembered.recent == (path,)


def test_a_file_that_is_no_plan_is_refused_in_one_sentence(editor, tmp_path):
    open_demo(editor)
    plan = editor.session.plan
    bad = tmp_path / "bad.underboard"
    bad.write_text("{ this is not a plan")
    assert not editor.window.documents.open_path(bad)
    assert editor.session.plan is plan
    bar = editor.window.notice_bar
    assert bar.isVisible()
    assert bar.text.strip().endswith(".")
    assert "Traceback" not in bar.text


def test_saving_where_nothing_can_be_written_is_told_and_keeps_the_work(editor, tmp_path, monkeypatch):
    open_demo(editor)
    editor.session.do(set_plan(title="Kept"))
    answers(monkeypatch, "getSaveFileName", tmp_path / "no such folder" / "x.underboard")
    assert not editor.window.documents.save()
    assert editor.session.unsaved
    assert editor.window.notice_bar.isVisible()


@pytest.mark.parametrize(("choice", "left"), [(Choice.LEAVE, True), (Choice.STAY, False)])
def test_unsaved_work_is_asked_about_before_another_plan_comes(editor, choice, left):
    open_demo(editor)
    editor.session.do(set_plan(title="Half done"))
    editor.window.documents.ask = lambda: choice
    editor.window.acts["new"].trigger()
    assert (editor.session.plan.title != "Half done") is left


def test_the_window_stays_open_when_the_builder_says_so(editor):
    open_demo(editor)
    editor.session.do(set_plan(title="Half done"))
    editor.window.documents.ask = lambda: Choice.STAY
    assert not editor.window.close()
    assert editor.window.isVisible()
    editor.window.documents.ask = lambda: Choice.LEAVE
    assert editor.window.close()


def test_a_plan_without_changes_is_left_without_a_question(editor):
    open_demo(editor)
    editor.window.documents.ask = lambda: pytest.fail("asked for nothing")
    editor.window.acts["new"].trigger()
    assert editor.session.plan.parts == {}


def test_examples_open_as_plans_of_their_own(editor):
    paths = example_plans()
    assert {p.stem for p in paths} >= {"quay", "harbour", "siding"}
    before = paths[0].read_bytes()
    assert editor.window.documents.open_example(paths[0])
    assert editor.session.path is None
    assert not editor.session.unsaved
    assert paths[0].read_bytes() == before


def test_the_example_menu_opens_what_it_names(editor):
    menu = editor.window.submenus["examples"]
    menu.aboutToShow.emit()
    action = next(a for a in menu.actions() if a.text() == "Quay")
    action.trigger()
    assert editor.session.plan == load(DEMOS / "quay.underboard")


@pytest.fixture
def rescuing(editor, tmp_path):
    made = Rescuing(editor.session, tmp_path / "rescue")
    made.begin()
    yield made
    made.close()


def test_a_rescue_copy_is_kept_while_work_is_unsaved_and_dropped_after_a_save(
    editor, rescuing, tmp_path, monkeypatch, qtbot
):
    open_demo(editor)
    rescuing._timer.setInterval(20)
    editor.session.do(set_plan(title="At risk"))
    qtbot.waitUntil(lambda: len(find_rescues(folder=tmp_path / "rescue")) == 1, timeout=2000)
    answers(monkeypatch, "getSaveFileName", tmp_path / "safe")
    editor.window.acts["save"].trigger()
    assert find_rescues(folder=tmp_path / "rescue") == ()


def test_a_copy_left_by_a_crash_is_offered_and_taken_up_as_unsaved(editor, tmp_path):
    open_demo(editor)
    editor.session.do(set_plan(title="Lost and found"))
    folder = tmp_path / "rescue"
    crashed = Rescuing(editor.session, folder)
    crashed.write_now()
    crashed._lock.unlock()  # as when the process dies
    editor.window.acts["new"].trigger()

    again = Rescuing(editor.session, folder)
    again.offer_left_over(editor.notices, editor.window.documents.take_up)
    notice = editor.notices.last
    assert "Lost and found" in notice.text
    notice.act()
    assert editor.session.plan.title == "Lost and found"
    assert editor.session.unsaved
    assert len(find_rescues(folder=folder)) == 1
    again.close()


def test_a_second_window_does_not_take_the_first_ones_copy(editor, tmp_path):
    first = Rescuing(editor.session, tmp_path / "rescue")
    open_demo(editor)
    editor.session.do(set_plan(title="Being worked on"))
    first.write_now()
    editor.notices.last = None
    second = Rescuing(editor.session, tmp_path / "rescue")
    second.offer_left_over(editor.notices, editor.window.documents.take_up)
    assert editor.notices.last is None
    first.close()
    second.close()


def test_an_unforeseen_fault_rescues_first_and_tells_one_sentence(editor, rescuing, tmp_path, caplog):
    open_demo(editor)
    editor.session.do(remove([part_id(editor, "E1")]))
    net = CrashNet(rescuing, editor.notices, tmp_path / "log")
    try:
        raise ZeroDivisionError("deep inside")
    except ZeroDivisionError as fault:
        net._caught(ZeroDivisionError, fault, fault.__traceback__)
    assert editor.notices.last.text == SENTENCE
    assert len(find_rescues(folder=tmp_path / "rescue")) == 1
    assert "deep inside" in caplog.text


@pytest.mark.parametrize(
    ("act", "suffix", "holds"),
    [
        ("export_svg", ".svg", "<svg"),
        ("export_csv", ".csv", "W1"),
        ("export_spice", ".cir", ".end"),
        ("export_json", ".json", '"supplies"'),
    ],
)
def test_exports_write_what_they_say(editor, tmp_path, monkeypatch, act, suffix, holds):
    open_demo(editor)
    answers(monkeypatch, "getSaveFileName", tmp_path / "out")
    editor.window.acts[act].trigger()
    (made,) = tmp_path.glob(f"out*{suffix}")
    assert holds.lower() in made.read_text(encoding="utf-8").lower()
    assert str(made) in editor.notices.last.text


def test_an_export_that_cannot_be_written_is_told(editor, tmp_path, monkeypatch):
    open_demo(editor)
    answers(monkeypatch, "getSaveFileName", tmp_path / "missing folder" / "out.csv")
    editor.window.acts["export_csv"].trigger()
    assert editor.notices.last.rank == "weak"
    assert "was not saved, because its folder does not exist" in editor.notices.last.text


def test_no_verdict_stands_under_a_plan_until_its_own_is_known(editor, monkeypatch):
    strip = editor.window.strip
    assert strip.verdict == "Nothing drawn yet"
    with monkeypatch.context() as busy:
        busy.setattr(editor.solving, "request", lambda: None)
        editor.session.open(lamp_street(2), None)
        assert strip.verdict == "Looking for faults"
    editor.solving.request()
    assert strip.verdict != "Looking for faults"


def test_the_first_save_names_a_plan_that_nobody_has_named(editor, tmp_path, monkeypatch):
    answers(monkeypatch, "getSaveFileName", tmp_path / "street_by_the_mill.underboard")
    editor.window.acts["save"].trigger()
    assert load(tmp_path / "street_by_the_mill.underboard").title == "Street by the mill"
    assert editor.window.windowTitle() == "Street by the mill[*]"
    answers(monkeypatch, "getSaveFileName", tmp_path / "copy.underboard")
    editor.window.acts["save_as"].trigger()
    assert load(tmp_path / "copy.underboard").title == "Street by the mill"


def test_what_was_said_about_one_plan_is_not_said_over_the_next(editor):
    editor.session.refused.emit("The picture photo.png is not beside the plan any more.")
    assert editor.window.notice_bar.isVisible()
    editor.window.acts["new"].trigger()
    assert not editor.window.notice_bar.isVisible()
