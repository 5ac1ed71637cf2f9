"""Prices the builder gave stand in the parts list with their sums; nothing is priced otherwise."""

import csv
import io
from datetime import date
from pathlib import Path as FilePath

import pytest
from support.editing import KINDS

from wiring.edits.set_plan import set_habits, set_plan
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.picture import Path, Words
from wiring.sheets.csv_lists import list_csv
from wiring.sheets.part_prices import price_key
from wiring.sheets.parts_list import part_rows
from wiring.sheets.sheet_set import sheet_set

TODAY = date(2026, 3, 14)


@pytest.fixture(scope="module")
def plan():
    return load(FilePath(__file__).parents[2] / "demo_layouts" / "quay.underboard")


def key_of(plan, designation):
    part = next(p for p in plan.parts.values() if p.designation == designation)
    return price_key(KINDS[part.kind], part)


def texts(plan):
    pages = sheet_set(examine(plan, KINDS, today=TODAY, outlooks=False), "A4", TODAY, only=("parts",))
    return [i.text for p in pages for i in p.picture.items if isinstance(i, Words)]


def test_without_prices_the_list_has_no_column_for_them(plan):
    said = texts(plan)
    assert not any(t.startswith(("Each", "Sum")) for t in said) and "come to" not in " ".join(said)


def test_prices_make_sums_and_a_total_with_spares(plan):
    lamps = next(r for r in part_rows(plan, KINDS) if "-E1" in r.designations)
    priced = set_plan(prices={key_of(plan, "E1"): 0.35, key_of(plan, "S1"): 2.0}).apply(plan)
    priced = set_habits(currency="kr").apply(priced)
    said = texts(priced)
    assert {"Each kr", "Sum kr", "0.35", "2.00"} <= set(said)
    total = 0.35 * (lamps.pieces + lamps.spares) + 2.0
    assert f"come to {total:.2f} kr" in " ".join(said) and "no price" in " ".join(said)
    assert decode(encode(priced)) == priced


def test_a_battery_costs_what_its_cells_cost(plan):
    part = next(p for p in plan.parts.values() if p.designation == "G1")
    values = KINDS[part.kind].values(part.settings)
    priced = set_plan(prices={values["cell"]: 0.9}).apply(plan)
    row = next(r for r in part_rows(priced, KINDS) if "-G1" in r.designations)
    assert row.each == pytest.approx(0.9 * values["in_series"] * (values.get("in_parallel") or 1))


def test_the_csv_has_prices_and_a_currency_that_is_no_formula(plan):
    priced = set_plan(prices={key_of(plan, "E1"): 0.35}).apply(plan)
    priced = set_habits(currency="=1+1").apply(priced)
    rows = list(csv.reader(io.StringIO(list_csv(examine(priced, KINDS, outlooks=False), "parts"))))
    assert rows[0][-2:] == ["price_each =1+1", "price_sum =1+1"]  # no cell begins with the sign
    lamp = next(r for r in rows if "E1" in r[4].split())
    assert lamp[5] == "0.35" and float(lamp[6]) == pytest.approx(
        0.35 * (int(lamp[2]) + int(lamp[3])), abs=0.01
    )
    assert all(r[5:] == ["", ""] for r in rows[1:] if r is not lamp)


def test_wires_that_are_built_are_ticked_on_the_bench_list(plan):
    from wiring.edits.set_built import set_built

    def ticks(some):
        pages = sheet_set(examine(some, KINDS, today=TODAY, outlooks=False), "A4", TODAY, only=("bench",))
        items = [i for p in pages for i in p.picture.items if isinstance(i, Path)]
        return sum(len(i.points) == 3 and not i.closed and i.pen.width_mm == 0.5 for i in items)

    assert ticks(plan) == 0
    assert ticks(set_built(list(plan.wires)[:5], True).apply(plan)) == 5
