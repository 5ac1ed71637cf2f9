"""Ticks brought back: wires marked, what changed since told, bad tick files refused in one sentence."""

import json

import pytest
from msgspec.structs import replace
from support.editing import KINDS, quay

from wiring.commands.main import main
from wiring.edits.connect import reconnect
from wiring.edits.duplicate import duplicate
from wiring.edits.edit import EditRefused
from wiring.edits.set_built import set_built
from wiring.edits.split_wire import insert_in_wire
from wiring.files.encode import encode
from wiring.files.store import load, save
from wiring.plan.names import TerminalRef
from wiring.sheets.carry.tick_keys import wire_key


@pytest.fixture
def desk(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    save(quay(), "quay.underboard")
    return tmp_path


def ticks(built=(), undone=(), plan=None, **more):
    wires = (plan or quay()).wires
    data = {
        "format": "underboard ticks",
        "version": 1,
        "plan": "Quay",
        "built": {i: wire_key(wires[i]) for i in built},
        "undone": {i: wire_key(wires[i]) for i in undone},
        **more,
    }
    return json.dumps(data)


def bring(desk, text, *more):
    (desk / "ticks.json").write_text(text, encoding="utf-8")
    return main(["built", "quay.underboard", "ticks.json", *more])


def built_in(path):
    return {w.id for w in load(path).wires.values() if w.built}


def test_ticked_wires_are_built_and_nothing_else_changes(desk, capsys):
    assert bring(desk, ticks(["w5", "w7"])) == 0
    assert "2 of 3 wires are built" in capsys.readouterr().out
    plan = load("quay.underboard")
    assert built_in("quay.underboard") == {"w5", "w7"}
    assert set_built(["w5", "w7"], False).apply(plan) == quay()


def test_a_tick_taken_off_is_brought_back_too_and_other_wires_stay_as_they_were(desk):
    save(set_built(["w5", "w6"], True).apply(quay()), "quay.underboard")
    assert bring(desk, ticks(["w7"], ["w5"])) == 0
    assert built_in("quay.underboard") == {"w6", "w7"}


def test_the_same_ticks_twice_write_nothing_the_second_time(desk, capsys):
    bring(desk, ticks(["w5"]))
    before = (desk / "quay.underboard").stat().st_mtime_ns
    assert bring(desk, ticks(["w5"])) == 0
    assert "Nothing to write" in capsys.readouterr().out
    assert (desk / "quay.underboard").stat().st_mtime_ns == before


def test_the_plan_can_go_to_another_file(desk):
    assert bring(desk, ticks(["w5"]), "--out", "other.underboard") == 0
    assert built_in("other.underboard") == {"w5"} and built_in("quay.underboard") == set()


def test_wires_changed_or_gone_since_are_told_and_left(desk, capsys):
    changed = quay().wires["w6"]
    plan = quay().with_changes(wires={**quay().wires, "w6": replace(changed, colour="PK")})
    plan = plan.with_changes(wires={i: w for i, w in plan.wires.items() if i != "w7"})
    save(plan, "quay.underboard")
    assert bring(desk, ticks(["w5", "w6", "w7"])) == 0
    said = capsys.readouterr()
    assert built_in("quay.underboard") == {"w5"}
    assert "-W2 changed since" in said.err and "no longer has 1 ticked wire" in said.err


BAD = {
    "prose": ("Dear diary", "no ticks in it"),
    "a list": ("[]", "no ticks in it"),
    "a plan": ('{"format": "underboard plan", "version": 1}', "no ticks in it"),
    "deep": ("[" * 100_000, "no ticks in it"),
    "later": (ticks(["w5"], version=2), "another version"),
    "numbers": (ticks(["w5"]).replace(wire_key(quay().wires["w5"]), "").replace('""', "1"), "damaged"),
    "both": (ticks(["w5"], ["w5"]), "damaged"),
    "of another plan": (ticks(["w5"]).replace("w5", "w90"), "None of the ticked wires"),
}


@pytest.mark.parametrize("name", BAD)
def test_bad_ticks_are_refused_in_one_line_and_leave_the_plan_alone(desk, capsys, name):
    text, words = BAD[name]
    before = (desk / "quay.underboard").read_bytes()
    assert bring(desk, text) == 2
    said = capsys.readouterr()
    assert words in said.err and said.err.count("\n") == 1 and said.out == ""
    assert (desk / "quay.underboard").read_bytes() == before


def test_missing_files_and_odd_endings_are_refused(desk, capsys):
    (desk / "ticks.json").write_text(ticks(["w5"]))
    for arguments in (
        ["built", "quay.underboard", "none.json"],
        ["built", "none.underboard", "ticks.json"],
        ["built", "quay.underboard", "ticks.json", "--out", "x.json"],
    ):
        assert main(arguments) == 2
        assert capsys.readouterr().err.count("\n") == 1


def test_built_is_kept_in_the_file_and_left_out_where_it_is_not():
    plan = set_built(["w6"], True).apply(quay())
    assert encode(plan).count(b'"built": true') == 1 and b"built" not in encode(quay())


def test_marking_what_is_marked_changes_nothing_and_a_lost_wire_is_refused():
    plan = set_built(["w6"], True).apply(quay())
    assert set_built(["w6"], True).apply(plan) is plan
    assert set_built(["w5", "w6"], False).label == "Mark 2 wires as not built"
    with pytest.raises(EditRefused, match="w99"):
        set_built(["w99"], True).apply(plan)


def test_a_wire_laid_elsewhere_cut_or_copied_is_not_built_yet():
    plan = set_built(["w5", "w6", "w7"], True).apply(quay())
    moved = reconnect("w7", "end", TerminalRef("p3", "13")).apply(plan)
    assert not moved.wires["w7"].built and moved.wires["w6"].built
    cut = insert_in_wire("w5", KINDS["fuse"], 50, 500).apply(plan)
    assert [w.built for w in cut.wires.values() if w.id not in ("w6", "w7")] == [False, False]
    copied = duplicate(["p2", "p3", "p4"], 500, 0).apply(plan)
    assert sum(w.built for w in copied.wires.values()) == 3 < len(copied.wires)


def test_the_sheet_whose_ticks_come_back_is_exported_by_its_ending(desk, capsys):
    assert main(["export", "quay.underboard", "quay.html"]) == 0
    assert "carry sheet" in capsys.readouterr().out
    text = (desk / "quay.html").read_text(encoding="utf-8")
    assert text.startswith("<!DOCTYPE html>")
    assert all(f'data-tick="{wire_key(wire)}"' in text for wire in quay().wires.values())
