"""A user's own battery types: fitted to a data sheet, offered where their like are, never failing."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.cell_runs import current, life, resistor

from wiring.catalogue.cell_file import read_cells
from wiring.catalogue.cell_fit import Discharge, lasted_h
from wiring.catalogue.shelf import load_shelf
from wiring.standards.cells import CELLS, cell_rows, use_own_cells
from wiring.studies.cells.pack import packed

MINE = """\
[[cell]]
key = "drawer AA"
like = "alkaline AA"
title = "Drawer AA"
discharges = [
  { amps = 0.1, to_v = 0.9, hours = 22 },
  { ohms = 3.9, to_v = 0.8, hours = 7.4, on_h = 1, every_h = 24 },
]
"""


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "cells").mkdir()
    yield tmp_path
    use_own_cells(())


def put(folder, text, name="mine.toml"):
    (folder / "cells" / name).write_text(text, encoding="utf-8")
    return load_shelf(folder)


def test_a_type_meets_the_discharges_of_its_data_sheet_when_simulated(folder):
    shelf = put(folder, MINE)
    assert shelf.complaints == ()
    cell = CELLS["drawer AA"]
    assert life("", current(0.1), 0.9, pack=packed(cell)).lit_h == pytest.approx(22, rel=0.05)
    assert life("", resistor(3.9), 0.8, (1, 24), pack=packed(cell)).lit_h == pytest.approx(7.4, rel=0.06)
    assert "mine.toml" in cell.source


def test_it_is_offered_where_its_like_are_and_nowhere_else(folder):
    kinds = put(folder, MINE).kinds
    assert "drawer AA" in kinds["battery-alkaline"].setting("cell").choices
    assert "drawer AA" not in kinds["battery-9v"].setting("cell").choices
    assert "drawer AA" not in kinds["battery-nimh"].setting("cell").choices


def test_another_folder_takes_them_away_again(folder, tmp_path):
    put(folder, MINE)
    load_shelf(tmp_path / "nowhere")
    assert "drawer AA" not in CELLS and "alkaline AA" in CELLS


def test_a_printed_capacity_scales_what_is_not_said(folder):
    put(folder, "[[cell]]\nkey = 'n'\nlike = 'nimh AA'\ntitle = 'N'\nrated_ah = 1.0\n")
    assert CELLS["n"].capacity_ah == pytest.approx(CELLS["nimh AA"].capacity_ah / 2)
    assert CELLS["n"].r0_ohm == pytest.approx(CELLS["nimh AA"].r0_ohm * 2)


def test_a_type_can_be_tabled_whole(folder):
    put(
        folder,
        """[[cell]]
key = "own"
title = "Own"
chemistry = "own"
cell_v = 1.5
capacity_ah = 1
rated_ah = 1
c = 0.5
k_per_h = 1
r0_ohm = 0.2
r1 = 1
floor_v = 0.9
shelf_per_year = 0.05
emf_table = [[0, 1.6], [1, 1.0], [1.02, 0]]
""",
    )
    assert CELLS["own"].fresh_v == 1.6


BAD = {
    "like = 'alkaline A'": (3, "no battery type “alkaline A”"),
    "like = 'alkaline AA'\nr0_ohm = -1": (4, "more than nothing"),
    "like = 'alkaline AA'\ncapcity_ah = 2": (4, "check its spelling"),
    "like = 'alkaline AA'\nc = 'half'": (4, "“c” is not what belongs there"),
    "like = 'alkaline AA'\nemf_table = [[0, 1.5], [1, 1.6]]": (4, "emf_table"),
    "like = 'alkaline AA'\ndischarges = [{ amps = 1, hours = 1 }]": (4, "each discharge holds"),
    "like = 'alkaline AA'\ndischarges = [{ amps = 1, ohms = 2, hours = 1, to_v = 1 }]": (4, "either amps or"),
    "like = 'alkaline AA'\ndischarges = [{ amps = 1, hours = 1, to_v = 9 }]": (4, "at most 1.62 V"),
    "": (1, "is missing"),
}


@pytest.mark.parametrize("rest", BAD)
def test_a_bad_type_is_named_with_its_line_and_the_others_load(folder, rest):
    line, words = BAD[rest]
    bad = f"[[cell]]\nkey = 'bad'\n{rest}\n"
    title = "title = 'B'\n" if rest else ""
    shelf = put(folder, bad + title + MINE)
    assert len(shelf.complaints) == 1
    assert shelf.complaints[0].startswith(f"mine.toml, line {line}: in “bad”, ")
    assert words in shelf.complaints[0]
    assert "drawer AA" in CELLS and "bad" not in CELLS


def test_a_table_that_cannot_be_met_is_said_and_used(folder):
    odd = MINE.replace("hours = 7.4", "hours = 30")
    shelf = put(folder, odd)
    assert re.match(r"mine.toml, line 5: .*are met within \d+% only", shelf.complaints[0])
    assert "drawer AA" in CELLS


@given(st.binary(max_size=200))
@settings(max_examples=60, deadline=None)
def test_nothing_in_a_file_makes_it_fail(content):
    found = read_cells("any.toml", content, cell_rows())
    assert all(c.startswith("any.toml") and c.endswith(".") and "\n" not in c for c in found.complaints)


@pytest.mark.parametrize(
    "row",
    [Discharge(20, 0.9, amps=0.1), Discharge(20, 0.9, ohms=10), Discharge(27, 0.9, amps=0.1, on_h=1)],
)
def test_the_fit_reckons_as_the_forecast_does(row):
    load = current(row.amps) if row.amps else resistor(row.ohms)
    daily = (row.on_h, row.every_h) if row.on_h else (1e6, 1e6)
    pack = packed(CELLS["alkaline AA"])._replace(shelf_per_h=0.0, ageing_per_h=0.0)
    assert lasted_h(CELLS["alkaline AA"], row) == pytest.approx(
        life("", load, row.to_v, daily, pack=pack).lit_h, rel=0.01
    )
