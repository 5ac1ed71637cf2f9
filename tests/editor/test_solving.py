"""Figures come off the window's thread; the newest plan wins; what is old is dropped."""

import threading
import time

import pytest
from support.networks import lamp_street

import wiring.findings.situation as situations
from app.session import Session
from app.solving import WENT_WRONG, Answer, Solving
from wiring.catalogue.shelf import builtin_kinds
from wiring.edits.place_part import place
from wiring.edits.set_plan import set_plan
from wiring.plan.plan import Plan


@pytest.fixture
def session(qapp):
    return Session(lamp_street(2), builtin_kinds())


@pytest.fixture
def solving(session):
    made = Solving(session)
    yield made
    made.close()


def test_an_answer_belongs_to_the_revision_that_was_asked(session, solving, qtbot):
    with qtbot.waitSignal(solving.answered, timeout=5000) as told:
        session.do(set_plan(title="Another"))
    answer = told.args[0]
    assert answer.revision == session.revision
    assert answer.situation.plan is session.plan
    assert answer.complete
    assert answer.situation.figures.parts


def test_figures_are_worked_out_off_the_windows_thread(session, solving, qtbot, monkeypatch):
    seen = []
    real = situations.examine
    monkeypatch.setattr(
        situations, "examine", lambda *a, **k: (seen.append(threading.current_thread()), real(*a, **k))[1]
    )
    with qtbot.waitSignal(solving.answered, timeout=5000):
        solving.request()
    assert seen and threading.main_thread() not in seen


def test_of_many_quick_requests_only_the_newest_is_answered(session, solving, qtbot, monkeypatch):
    asked, told = [], []
    real = situations.examine

    def slow(plan, *rest, **named):
        asked.append(plan.title)
        time.sleep(0.05)
        return real(plan, *rest, **named)

    monkeypatch.setattr(situations, "examine", slow)
    solving.answered.connect(lambda answer: told.append(answer.situation.plan.title))
    for number in range(30):
        session.do(set_plan(title=f"Plan {number}"))
    qtbot.waitUntil(lambda: told == ["Plan 29"], timeout=5000)
    assert len(asked) <= 3
    assert asked[-1] == "Plan 29"


def test_a_battery_is_answered_twice_figures_first(qapp, qtbot):
    kinds = builtin_kinds()
    plan = place(kinds["battery-alkaline"], 0, 0).apply(Plan())
    session = Session(plan, kinds)
    solving = Solving(session)
    answers: list[Answer] = []
    solving.answered.connect(answers.append)
    solving.request()
    qtbot.waitUntil(lambda: len(answers) == 2, timeout=8000)
    solving.close()
    assert [a.complete for a in answers] == [False, True]
    assert answers[0].situation.outlooks == {}
    assert set(answers[1].situation.outlooks) == set(plan.parts)


def test_throwing_a_switch_asks_again(qapp, qtbot):
    kinds = builtin_kinds()
    session = Session(place(kinds["toggle-on-off"], 0, 0).apply(Plan()), kinds)
    solving = Solving(session, at_once=True)
    (switch,) = session.plan.parts
    other = next(p.name for p in kinds["toggle-on-off"].positions if p.name != session.positions[switch])
    session.throw(switch, other)
    assert solving.answer.positions[switch] == other
    session.stand_as_in_use()
    assert solving.answer.positions[switch] != other


def test_a_fault_inside_is_told_once_in_one_sentence(session, qtbot, monkeypatch, caplog):
    def breaks(*_rest, **_named):
        raise ArithmeticError("boom")

    monkeypatch.setattr(situations, "examine", breaks)
    solving = Solving(session)
    told = []
    solving.failed.connect(told.append)
    solving.request()
    qtbot.waitUntil(lambda: told != [], timeout=5000)
    solving.request()
    qtbot.wait(150)
    solving.close()
    assert told == [WENT_WRONG]
    assert "boom" in caplog.text


def test_quick_figures_are_told_on_the_spot_and_found_fault_with_after(session, solving, qtbot):
    with qtbot.waitSignal(solving.answered, timeout=5000):
        solving.request()
    solving.pace.figures_sec, solving.pace.findings_sec = 0.001, 1.0  # however busy this machine is
    told = []
    solving.lit.connect(lambda lit: told.append(lit.figures))
    with qtbot.waitSignal(solving.answered, timeout=5000) as answered:
        session.do(set_plan(title="Another"))
        assert len(told) == 1
        solving.go_on()  # as the view tells when it has painted
    assert answered.args[0].situation.figures is told[0]
    solving.pace.figures_sec = 1.0
    with qtbot.waitSignal(solving.answered, timeout=5000):
        session.do(set_plan(title="A third"))
    assert len(told) == 1


def test_closing_waits_for_what_is_under_way_and_tells_nothing_more(session, qtbot, monkeypatch):
    real = situations.examine
    monkeypatch.setattr(situations, "examine", lambda *a, **k: (time.sleep(0.2), real(*a, **k))[1])
    solving = Solving(session)
    told = []
    solving.answered.connect(told.append)
    solving.request()
    solving.close()
    qtbot.wait(100)
    assert told == []
