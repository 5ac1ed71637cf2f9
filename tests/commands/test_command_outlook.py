"""What the outlook command prints when it is asked for other packs and for what assumptions change."""

import json

import pytest
from support.editing import quay

from wiring.commands.main import main
from wiring.edits.set_plan import set_plan
from wiring.files.store import save
from wiring.plan.plan import Plan


@pytest.fixture
def said(tmp_path, capsys, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "80")
    prices = {"alkaline 9 V": 3.0, "mains kWh": 0.3}
    save(set_plan(title="Quay", prices=prices).apply(quay()), tmp_path / "quay.underboard")
    save(Plan(), tmp_path / "empty.underboard")
    monkeypatch.chdir(tmp_path)

    def call(*arguments, plan="quay.underboard"):
        assert main(["outlook", plan, "--today", "2026-03-01", *arguments]) in (0, 1)
        return capsys.readouterr().out

    return call


def test_other_packs_are_listed_best_first_with_reasons(said):
    out = said("--compare")
    words = " ".join(out.split())
    assert "best first" in words and "Never needs" in words and "Regulated" in words
    assert max(map(len, out.splitlines())) <= 80


def test_assumptions_are_listed_with_what_they_change(said):
    out = said("--sensitivity")
    assert "what each assumption changes" in out
    for words in ("as it is", "poor cells", "a tenth more current", "colder", "a quarter longer"):
        assert words in out
    assert " %" in out


def test_prices_can_be_typed_beside_those_of_the_plan(said):
    packs = json.loads(said("--json", "--compare", "--prices", "lithium 9 V=8.5, alkaline 9 V=2"))
    costs = {p["cell"]: p["cost_a_year"] for p in packs["batteries"][0]["packs"]}
    assert costs["lithium 9 V"] > 0 and costs[""] > 0


@pytest.mark.parametrize("typed", ["alkaline AA", "potato=2", "alkaline AA=much", "alkaline AA=-1"])
def test_prices_that_are_none_are_refused_in_one_sentence(said, capsys, typed):
    assert main(["outlook", "quay.underboard", "--prices", typed]) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_neither_is_printed_unasked(said):
    out = said()
    assert "best first" not in out and "assumption" not in out


@pytest.mark.parametrize("option", ["--compare", "--sensitivity"])
def test_a_plan_without_batteries_has_nothing_to_compare(said, option):
    assert "no battery" in said(option, plan="empty.underboard")


def test_json_holds_both_when_asked(said):
    (battery,) = json.loads(said("--json", "--compare", "--sensitivity"))["batteries"]
    packs, assumptions = battery["packs"], battery["assumptions"]
    assert [p["there"] for p in packs].count(True) == 1
    costs = {p["cell"]: p["cost_a_year"] for p in packs}
    assert costs["alkaline 9 V"] > 0 and costs[""] > 0 and costs["lithium 9 V"] is None
    assert assumptions[0]["assumption"] == "as it is" and assumptions[0]["change"] == 0
    assert "packs" not in json.loads(said("--json"))["batteries"][0]
