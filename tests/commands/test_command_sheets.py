"""The command that writes the sheets: documents, tiles, symbols, and only what changed since the last set."""

import json
from pathlib import Path

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from wiring.commands.main import main
from wiring.files.store import load, save

QUAY = Path(__file__).parents[2] / "demo_layouts" / "quay.underboard"


@pytest.fixture
def run(tmp_path, capsys, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    save(load(QUAY), tmp_path / "quay.underboard")
    monkeypatch.chdir(tmp_path)

    def call(*arguments):
        status = main(["sheets", "quay.underboard", "out.pdf", *arguments])
        said = capsys.readouterr()
        return status, said.out, said.err

    return call


def text_of(name="out.pdf"):
    return "\n".join(page.extract_text() for page in PdfReader(name).pages)


def test_only_what_changed_since_the_remembered_set(run, tmp_path):
    status, _, said = run("--changed")
    assert status == 2 and "print a whole set with --remember first" in said
    assert "Remembered as set A in quay.printed.json" in run("--remember")[1]
    before = (tmp_path / "quay.underboard").read_bytes()
    assert run("--changed")[1].startswith("Nothing changed since set A of ")
    plan = load("quay.underboard")
    wire = next(w for w in plan.wires.values() if w.label == "W2")
    save(plan.with_changes(wires={**plan.wires, wire.id: replace(wire, colour="GN")}), "quay.underboard")
    status, out, said = run("--changed", "--remember")
    assert (status, said) == (0, "") and "Remembered as set B" in out
    assert "Changes since set A of" in text_of() and "GN, from" in text_of()
    assert "Nothing changed since set B" in run("--changed")[1]
    assert b"printed" not in before  # the plan itself does not remember


def test_a_damaged_record_stops_only_what_needs_it(run, tmp_path):
    (tmp_path / "quay.printed.json").write_text("{")
    status, _, said = run("--changed")
    assert status == 2 and "remove it and print a whole set" in said and said.count("\n") == 1
    status, _, said = run()
    assert status == 0 and "quay.printed.json" in said


@pytest.mark.parametrize("more", [("--only", "bench"), ("--scene", "Quay")])
def test_a_part_of_a_set_is_not_remembered(run, tmp_path, more):
    status, _, said = run("--remember", *more)
    assert status == 2 and "Only a whole set can be remembered" in said
    assert not (tmp_path / "quay.printed.json").exists() and not (tmp_path / "out.pdf").exists()


def test_tiles_at_a_scale(run):
    assert run("--tiles", "1:5", "--only", "tiles")[0] == 0
    said = text_of()
    assert "joins A2" in said and "FROM BELOW" in said and "2 tiles at 1:5" in said
    assert run("--tiles", "1:5", "--overlap", "20", "--only", "tiles,bench")[0] == 0
    assert "Neighbours share 20 mm" in text_of() and "Bench list" in text_of()
    for more in (("--only", "tiles"), ("--tiles", "7:1"), ("--tiles", "1:5", "--overlap", "-1")):
        status, _, said = run(*more)
        assert status == 2 and said.count("\n") == 1 and said.endswith(".\n")


def test_safety_notes_that_are_left_out_are_told(run):
    _, _, said = run("--only", "bench")
    assert "The safety notes are left out, though this plan calls for them: Batteries" in said
    assert run("--only", "bench,safety")[2] == ""


def test_the_symbols_are_chosen_for_one_printing(run, tmp_path):
    run("--only", "circuits,safety")
    usual = (tmp_path / "out.pdf").stat().st_size
    before = (tmp_path / "quay.underboard").read_bytes()
    assert run("--only", "circuits,safety", "--symbols", "ieee")[0] == 0
    assert (tmp_path / "out.pdf").stat().st_size != usual
    assert (tmp_path / "quay.underboard").read_bytes() == before


def test_the_record_holds_each_wire_and_each_sheet_once(run, tmp_path):
    run("--remember")
    kept = json.loads((tmp_path / "quay.printed.json").read_text())["set"]
    plan = load(QUAY)
    assert kept["wires"].keys() == plan.wires.keys() and kept["parts"].keys() == plan.parts.keys()
    numbers = [s["number"] for s in kept["sheets"]]
    assert numbers == sorted(set(numbers)) and len(kept["sheets"]) >= 10
