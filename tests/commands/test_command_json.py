"""What the command line gives other programs: stable keys, plain numbers, no NaN."""

import json
import math
from datetime import date
from pathlib import Path

import pytest
from support.editing import quay

from wiring.commands import check, figures, kinds, outlook
from wiring.commands.json_text import json_text
from wiring.commands.main import main
from wiring.commands.table import Column, shown_width, table
from wiring.files.store import save

KEYS = {
    "figures": {
        "plan", "positions", "supplies", "parts", "wires", "terminals", "circuits", "problems", "residual_a",
        "dangers", "notes",
    },
    "outlook": {"plan", "positions", "batteries", "dangers", "notes"},
    "check": {"plan", "positions", "counts", "findings", "notes"},
}  # fmt: skip
ROWS = {
    ("figures", "supplies"): ("id designation kind volts_v current_a power_w rated_a nominal_v limited"),
    ("figures", "parts"): "id designation kind label volts_v current_a power_w light state peak_a mean_a",
    ("figures", "wires"): ("id label from to size colour length_m current_a drop_v power_w ohms"),
    ("outlook", "batteries"): (
        "id designation label hours sessions days swap_on swap_between first_load_a end_reason words curve "
        "end_v spare_v counted_from measured notes"
    ),
}
MODULES = {"figures": figures, "outlook": outlook, "check": check, "kinds": kinds}


def strictly(text):
    def refuse(name):
        raise AssertionError(f"{name} is no JSON")

    return json.loads(text, parse_constant=refuse)


@pytest.fixture
def said(tmp_path, capsys, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    path = tmp_path / "quay.underboard"
    save(quay(), path)

    def call(command, *more):
        main([command, *([] if command == "kinds" else [str(path)]), "--json", *more])
        return strictly(capsys.readouterr().out)

    return call


@pytest.mark.parametrize("command", KEYS)
def test_keys_are_those_the_description_names(said, command):
    data = said(command)
    assert set(data) == KEYS[command]
    assert data["positions"] == {"-S1": "on"}
    for key in KEYS[command]:
        assert key in MODULES[command].__doc__
    for (name, table_name), keys in ROWS.items():
        if name == command:
            assert data[table_name] and all(set(row) == set(keys.split()) for row in data[table_name])
            assert keys in " ".join(MODULES[command].__doc__.split())


def test_figures_add_up(said):
    data = said("figures")
    (supply,), lamp = data["supplies"], data["parts"][-1]
    assert lamp["designation"] == "-E1" and lamp["current_a"] == pytest.approx(supply["current_a"], rel=1e-6)
    lost = sum(wire["power_w"] for wire in data["wires"])
    taken = sum(p["power_w"] for p in data["parts"] if p["id"] != supply["id"])
    assert supply["power_w"] == pytest.approx(lost + taken, rel=1e-6)
    assert data["terminals"]["-G1:-"] == 0.0 and data["circuits"] == [["-G1", "-S1", "-E1"]]


def test_an_outlook_is_reckoned_from_the_day_given(said):
    (battery,) = said("outlook", "--today", "2026-03-01")["batteries"]
    assert battery["sessions"]["low"] <= battery["sessions"]["typical"] <= battery["sessions"]["high"]
    assert len(battery["curve"]["hours"]) == len(battery["curve"]["volts"]) > 5


def test_kinds_hold_every_key_their_description_names(said):
    data = said("kinds")
    row = next(k for k in data["kinds"] if k["key"] == "battery-9v")
    assert all(key in kinds.__doc__ for key in (*row, *row["settings"][0]))
    assert said("kinds", "battery-9v") == {"kinds": [row]}


def test_export_holds_the_three_commands_side_by_side(said, tmp_path, capsys):
    out = tmp_path / "quay.json"
    main(["export", str(tmp_path / "quay.underboard"), str(out)])
    every_key = KEYS["figures"] | KEYS["outlook"] | KEYS["check"]
    assert set(strictly(Path(out).read_text())) == every_key - {"dangers"}


def test_what_is_not_finite_becomes_null():
    value = {"a": [math.nan, -math.inf, 1.5], "b": date(2026, 3, 1), "c": {"d": (True, None, 2)}}
    assert strictly(json_text(value)) == {
        "a": [None, None, 1.5],
        "b": "2026-03-01",
        "c": {"d": [True, None, 2]},
    }


def test_a_table_wraps_its_words_drops_empty_columns_and_keeps_its_width():
    columns = [Column("Part"), Column("What", wraps=True), Column("Volts", right=True), Column("State")]
    rows = [["-E1", "the lamp by the crane at the end of the quay", "11.8 V", ""], ["-E12", "x", "9 V", ""]]
    lines = table(columns, rows, width=40).splitlines()
    assert max(map(len, lines)) <= 40 and "State" not in lines[0]
    assert lines[2].endswith("11.8 V") and lines[-1].endswith(" 9 V")
    assert " ".join(line[6:30].strip() for line in lines[2:4]).startswith("the lamp by the crane at")


def test_signs_that_take_two_columns_are_counted_so():
    assert (shown_width("港"), shown_width("e\u0301"), shown_width("−E1")) == (2, 1, 3)
