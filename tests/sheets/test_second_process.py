"""Sheets of many areas are drawn by two processes, and come out as one alone would draw them."""

import operator
import sys
from pathlib import Path
from types import MappingProxyType

import pytest
from support.editing import KINDS

from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.sheets import plan_sheets, second_process
from wiring.sheets.plan_sheets import PlanSheets
from wiring.sheets.second_process import SecondProcess

SIDING = Path(__file__).parents[2] / "demo_layouts" / "siding.underboard"


@pytest.fixture
def two_processors(monkeypatch):
    monkeypatch.setattr(second_process, "can_start", lambda: True)


def test_jobs_are_done_elsewhere_in_their_order(two_processors):
    with SecondProcess(operator.getitem, MappingProxyType({"a": 1.5, "b": "–"}), ("b", "a", "b")) as beside:
        assert beside.first(3) == ["–", 1.5, "–"]
        assert beside.reaches(2)


def test_a_process_that_ends_early_gives_what_it_has(two_processors):
    with SecondProcess(operator.truediv, 1.0, (2.0, 0.0, 4.0)) as beside:
        assert beside.first(3) == [0.5]
        assert not beside.reaches(1)


def test_what_cannot_be_handed_over_is_left_undone(two_processors):
    with SecondProcess(lambda shared, job: job, None, (1, 2)) as beside:
        assert beside.first(2) == []


@pytest.mark.parametrize("fault", ["none to start", "one processor", "packed", "no interpreter"])
def test_where_no_process_can_be_started_nothing_is_said(monkeypatch, fault):
    if fault == "none to start":
        monkeypatch.setattr(second_process, "can_start", lambda: True)
        monkeypatch.setattr(sys, "executable", "/nowhere/python")
    elif fault == "one processor":
        monkeypatch.setattr(second_process.os, "sched_getaffinity", lambda _: {0}, raising=False)
    elif fault == "packed":
        monkeypatch.setattr(sys, "frozen", True, raising=False)
    else:
        monkeypatch.setattr(sys, "executable", "")
    with SecondProcess(operator.add, 1, (1, 2)) as beside:
        assert beside.first(2) == [] and not beside.reaches(0)


def test_areas_come_out_the_same_by_one_process_and_by_two(monkeypatch, two_processors):
    here = examine(load(SIDING), KINDS, outlooks=False)
    panel = next(iter(here.plan.panels.values())).name
    with PlanSheets(here, "A4", panel) as sheets:
        alone = sheets._areas(sheets._shown)
    monkeypatch.setattr(plan_sheets, "_MANY_AREAS", 2)
    drawn_here = []
    draw = plan_sheets._area_leaf
    with PlanSheets(here, "A4", panel) as sheets:
        most = len(alone) - 1
        assert len(sheets._beside.first(most)) == most > 0  # only the last may be left to draw here
        monkeypatch.setattr(plan_sheets, "_area_leaf", lambda *a: drawn_here.append(a) or draw(*a))
        assert sheets._areas(sheets._shown) == alone
    assert len(drawn_here) <= 1
