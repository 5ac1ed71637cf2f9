"""Resistors, harnesses, spools, amperes; every list as CSV; a choice of documents, or of one scene."""

import csv
import io
from datetime import date
from pathlib import Path as FilePath

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from support.editing import KINDS, quay

from wiring.edits.place_part import place
from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.picture import Words
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.wireway import Wireway
from wiring.routing.bundles import bundles
from wiring.sheets.amp_checks import SPREAD, amp_checks
from wiring.sheets.csv_lists import LISTS, list_csv
from wiring.sheets.cut_list import SPOOLS_M, spools
from wiring.sheets.documents import DOCUMENTS
from wiring.sheets.harness_list import harness_rows
from wiring.sheets.meter_checks import volt_checks
from wiring.sheets.ohm_checks import ohm_checks
from wiring.sheets.resistor_list import resistor_rows
from wiring.sheets.scene_sheets import of_scene
from wiring.sheets.sheet_set import sheet_set
from wiring.sheets.strip_charts import charted_parts

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
TODAY = date(2026, 3, 14)
ODD = ('<&">', "=1+1", "@x", "\t-2", "🚂", "מנורה", "x" * 200, "a,b\nc")


def demo(name):
    return examine(load(DEMOS / f"{name}.underboard"), KINDS, today=TODAY, outlooks=False)


@pytest.fixture(scope="module")
def harbour():
    return demo("harbour")


def placed(*kinds):
    plan = Plan(title="bench")
    for number, (key, values) in enumerate(kinds):
        plan = place(KINDS[key], 100.0 * number, 0.0, settings=values).apply(plan)
    return plan


# the bands of 4.7 kΩ and 330 Ω at 5 %: IEC 60062, table of colours (yellow 4, violet 7, red 10^2, gold 5 %)
def test_resistors_are_listed_by_value_with_the_bands_of_the_standard():
    plan = placed(("resistor", {"resistance": 4700.0}), ("resistor", {"resistance": 330.0}), ("led-red", {}))
    loose_low, loose_high, built_on = resistor_rows(plan, KINDS)
    assert (loose_low.ohms, loose_low.bands) == (330.0, ("orange", "orange", "brown", "gold"))
    assert (loose_high.ohms, loose_high.bands) == (4700.0, ("yellow", "violet", "red", "gold"))
    assert built_on.built_on and built_on.ohms == 1000.0 and built_on.designations == ("-E1",)


def test_a_value_without_bands_says_so():
    (row,) = resistor_rows(placed(("resistor", {"resistance": 4723.4})), KINDS)
    assert row.bands == ()


def test_each_resistor_stands_in_one_row(harbour):
    rows = resistor_rows(harbour.plan, KINDS)
    listed = [name for row in rows for name in row.designations]
    assert len(listed) == len(set(listed)) > 100


def test_the_harness_list_names_the_wires_of_each_wireway_and_a_drill_that_holds_them():
    plan = quay()
    way = Wireway(id="y1", name="front beam", points=((0.0, 0.0), (500.0, 0.0)), hole_mm=3.0)
    wires = {i: replace(w, along=("y1",), size="0.75 mm²") for i, w in plan.wires.items()}
    plan = replace(plan, wireways={"y1": way}, wires=wires)
    (row,) = harness_rows(plan, KINDS)
    assert sorted(row.labels) == sorted(w.label for w in plan.wires.values())
    assert not row.fits
    wider = replace(plan, wireways={"y1": replace(way, hole_mm=row.needed_mm)})
    assert bundles(wider)[0].fits


@given(st.floats(0.01, 900.0), st.sampled_from(["metric", "us"]))
def test_spools_cover_what_is_to_be_bought(buy_m, units):
    bought = spools(buy_m, units)
    assert sum(n * m for n, m in bought) >= buy_m - 1e-6
    assert all(n > 0 and m in SPOOLS_M[units] for n, m in bought)


def test_amperes_are_those_that_were_worked_out(harbour):
    checks = amp_checks(harbour)
    supplies = [c for c in checks if "terminal" in c.where]
    assert len(supplies) == len(harbour.figures.supplies)
    for check in checks:
        assert check.low_a < check.expect_a < check.high_a
    worked_out = sorted(abs(f.current_a) for f in harbour.figures.supplies.values())
    assert sorted(c.expect_a for c in supplies) == pytest.approx(worked_out)
    large = max(supplies, key=lambda c: c.expect_a)
    assert large.high_a == pytest.approx(large.expect_a * (1 + SPREAD))


def test_windings_are_measured_with_the_power_off():
    plan = placed(("twin-coil", {"coil_ohm": 4.0}))
    checks = [c for c in ohm_checks(examine(plan, KINDS, outlooks=False)) if "wire off" in c.where]
    assert [c.where.split(",")[0] for c in checks] == ["-M1:C and -M1:N", "-M1:C and -M1:R"]
    assert all(c.expect == "4 Ω (3.2 Ω to 4.8 Ω)" for c in checks)


def test_strips_of_a_circuit_with_two_supplies_are_checked_against_the_one_that_is_nought(harbour):
    for check in volt_checks(harbour):
        red, black = harbour.figures.terminals[check.red], harbour.figures.terminals[check.black]
        volts = abs(red - black) if check.alternating else red - black
        assert check.low_v - 1e-9 <= volts <= check.high_v + 1e-9


@pytest.mark.parametrize("name", LISTS)
def test_every_list_goes_into_a_spreadsheet_whatever_it_is_called(name):
    situation = demo("siding")
    for odd in ODD:
        plan = situation.plan
        parts = {i: replace(p, label=odd, note=odd) for i, p in plan.parts.items()}
        wires = {i: replace(w, label=odd, note=odd) for i, w in plan.wires.items()}
        text = list_csv(situation._replace(plan=replace(plan, parts=parts, wires=wires)), name)
        rows = list(csv.reader(io.StringIO(text, newline="")))
        assert {len(r) for r in rows} == {len(rows[0])}
        for cell in (c for row in rows[1:] for c in row):
            number = cell.removeprefix("-").replace(".", "", 1).isdecimal()
            assert number or not cell.lstrip().startswith(("=", "+", "-", "@")), cell


def test_terminal_rows_hold_two_ends_for_each_wire_between_charted_parts(harbour):
    rows = list(csv.DictReader(io.StringIO(list_csv(harbour, "terminals"))))
    charted = {r["part"] for r in rows}
    plan = harbour.plan
    for wire in plan.wires.values():
        ends = sum(plan.parts[r.part].designation in charted for r in (wire.start, wire.end))
        assert sum(r["wire"] == wire.label for r in rows) == ends


def kinds_of(pages):
    """The documents on the sheets; short ones share a sheet."""
    said = [p.picture.title.split(": ")[-1].split(", sheet ")[0] for p in pages]
    return {name.capitalize() for text in said for name in text.split(", ")}


def test_only_what_is_asked_for_is_printed():
    situation = demo("quay")
    assert kinds_of(sheet_set(situation, only=("bench", "cut"), today=TODAY)) == {"Bench list", "Cut list"}
    whole = sheet_set(situation, today=TODAY)
    parts = [sheet_set(situation, only=(name,), today=TODAY) for name in DOCUMENTS]
    own = [p for p in parts if "Summary" not in kinds_of(p)]
    assert len(whole) < sum(len(p) for p in own) + 1  # short lists share sheets in the whole set
    assert kinds_of(whole) == {"Summary"}.union(*(kinds_of(p) for p in own))
    with pytest.raises(ValueError, match="no document “menu”"):
        sheet_set(situation, only=("menu",))


def test_a_scenes_sheets_hold_its_wires_and_no_others(harbour):
    pages = sheet_set(harbour, only=("bench", "circuits"), scene="Quay", today=TODAY)
    bench = [p for p in pages if "Bench list" in p.picture.title]
    told = {i.text for p in bench for i in p.picture.items if isinstance(i, Words)}
    plan = harbour.plan
    quay_scene = next(s.id for s in plan.scenes.values() if s.name == "Quay")
    own = {p.id for p in plan.parts.values() if p.scene == quay_scene}
    for wire in plan.wires.values():
        assert (wire.label in told) == bool({wire.start.part, wire.end.part} & own), wire.label
    with pytest.raises(ValueError, match="no scene or panel called “Moon”"):
        sheet_set(harbour, scene="Moon")


def test_a_terminal_with_a_wire_to_another_scene_is_not_called_free(harbour):
    pages = sheet_set(harbour, only=("strips",), scene="Quay", today=TODAY)
    shown = of_scene(harbour, "Quay").plan.parts
    plan = harbour.plan
    used = {ref for w in plan.wires.values() for ref in (w.start, w.end)}
    unused = [
        t.name
        for part in charted_parts(plan, KINDS)
        if part.id in shown
        for t in KINDS[part.kind].terminals
        if TerminalRef(part.id, t.name) not in used
    ]
    free = sum(isinstance(i, Words) and i.text == "free" for p in pages for i in p.picture.items)
    assert free == len(unused) > 0
