import csv
import io

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from support.editing import KINDS, plans, quay

from wiring.edits.place_part import place
from wiring.plan.lengths import cut_length_m
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.sheets.bench_list import bench_rows
from wiring.sheets.csv_export import HEADER, bench_csv, guarded
from wiring.sheets.cut_list import cut_rows
from wiring.sheets.lengths import length_words, rounded_up_m, step_m
from wiring.sheets.parts_list import part_rows
from wiring.sheets.strip_charts import strip_rows
from wiring.sheets.table import Cell
from wiring.sheets.value_words import value_words
from wiring.sheets.working_order import steps_from_source

few = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@few
@given(plans())
def test_every_wire_stands_exactly_once_in_the_bench_list(plan):
    rows = bench_rows(plan, KINDS)
    assert sorted(r.wire for r in rows) == sorted(plan.wires)
    for row in rows:
        wire = plan.wires[row.wire]
        assert {row.start, row.end} == {wire.start, wire.end}
        assert (row.label, row.size, row.colour) == (wire.label, wire.size, wire.colour)


@few
@given(plans())
def test_cut_lengths_cover_the_wire_and_their_totals_are_their_sum(plan):
    rows = {r.label: r for r in bench_rows(plan, KINDS)}
    for wire in plan.wires.values():
        exact = cut_length_m(plan, KINDS, wire)
        assert exact - 1e-6 <= rows[wire.label].length_m < exact + step_m(plan.habits.units) + 1e-6
    cuts = cut_rows(plan, KINDS)
    assert sum(len(c.pieces) for c in cuts) == len(plan.wires)
    for cut in cuts:
        assert cut.total_m == pytest.approx(sum(m for _, m in cut.pieces))
        assert list(cut.pieces) == sorted(cut.pieces, key=lambda p: -p[1])
        assert cut.buy_m >= cut.total_m
    assert sum(c.total_m for c in cuts) == pytest.approx(sum(r.length_m for r in rows.values()))


@given(st.floats(0, 100))
def test_a_rounded_length_reads_back_as_what_it_is(metres):
    up = rounded_up_m(metres, "metric")
    assert float(length_words(up, "metric").removesuffix(" m")) == pytest.approx(up, abs=1e-9)
    assert rounded_up_m(up, "metric") == pytest.approx(up)


@pytest.mark.parametrize(
    ("metres", "words"), [(2.3876, "7 ft 10 in"), (0.1524, "6 in"), (0.6096, "2 ft"), (0.30, "1 ft")]
)
def test_lengths_in_feet_and_inches(metres, words):
    assert length_words(rounded_up_m(metres, "us"), "us") == words


def chain():
    """A battery, a switch and two lamps one after the other, with all wires drawn towards the source."""
    plan = Plan()
    for key, x in (("battery-9v", 0), ("toggle-on-off", 100), ("led-red", 200), ("led-red", 300)):
        plan = place(KINDS[key], x, 0).apply(plan)
    battery, switch, near, far = plan.parts
    joins = ((far, "A", near, "A"), (near, "A", switch, "14"), (switch, "13", battery, "+"))
    wires = {
        f"w{i}": Wire(id=f"w{i}", label=f"W{i}", start=TerminalRef(a, b), end=TerminalRef(c, d))
        for i, (a, b, c, d) in enumerate(joins, start=1)
    }
    return plan.with_changes(wires=wires), (battery, switch, near, far)


def test_wires_are_made_from_the_source_outwards():
    plan, (battery, switch, near, far) = chain()
    rows = bench_rows(plan, KINDS)
    assert [(r.start.part, r.end.part) for r in rows] == [(battery, switch), (switch, near), (near, far)]
    steps = steps_from_source(plan, KINDS)
    assert steps[TerminalRef(battery, "+")] == 0 and steps[TerminalRef(switch, "14")] == 1
    assert steps[TerminalRef(far, "A")] == 3


def test_the_way_from_the_source_does_not_lead_through_a_lamp():
    plan = quay()
    lamp = next(p for p in plan.parts.values() if p.kind.startswith("led"))
    steps = steps_from_source(plan, KINDS)
    assert (steps[TerminalRef(lamp.id, "A")], steps[TerminalRef(lamp.id, "K")]) == (2, 1)


@few
@given(plans())
def test_every_part_is_bought_once(plan):
    rows = part_rows(plan, KINDS)
    assert sum(r.pieces for r in rows) == len(plan.parts)
    named = sorted(d for r in rows for d in r.designations)
    assert named == sorted(f"-{p.designation}" for p in plan.parts.values())


def test_parts_of_other_values_stand_in_another_row():
    plan = Plan()
    for _ in range(3):
        plan = place(KINDS["resistor"], 0, 0).apply(plan)
    first = next(iter(plan.parts))
    odd = replace(plan.parts[first], settings={"resistance": 4700.0})
    plan = plan.with_changes(parts={**plan.parts, first: odd})
    counts = {r.values: r.pieces for r in part_rows(plan, KINDS)}
    assert sorted(counts.values()) == [1, 2]
    assert value_words(KINDS["resistor"], odd).startswith("4.7 kΩ")


def test_a_terminal_chart_shows_every_end_and_says_which_terminals_are_free():
    plan, (battery, switch, *_) = chain()
    plan = place(KINDS["distribution-block-6"], 0, 200).apply(plan)
    block = list(plan.parts)[-1]
    ends = {"w8": (battery, "-", "1"), "w9": (switch, "13", "1")}
    more = {
        i: Wire(id=i, label=i.upper(), start=TerminalRef(p, t), end=TerminalRef(block, n))
        for i, (p, t, n) in ends.items()
    }
    plan = plan.with_changes(wires={**plan.wires, **more})
    rows = [[c.text if isinstance(c, Cell) else c for c in r] for r in strip_rows(plan, KINDS, block)]
    assert [r[2] for r in rows] == ["W8", "W9", "free", "free", "free", "free", "free"]
    assert rows[0][5] == f"-{plan.parts[battery].designation}:-" and rows[1][1] == ""


ODD = [
    "=1+1",
    "+441234",
    "-X1:3",
    "@SUM(A1)",
    "\t=1",
    " =1",
    "\ufeff=2",
    "plain",
    'a "quote", and comma',
    '<&">',
]


@pytest.mark.parametrize("note", ODD)
def test_no_cell_of_the_csv_is_a_formula_and_no_text_is_lost(note):
    plan, _ = chain()
    wires = {i: replace(w, note=note, label=note) for i, w in plan.wires.items()}
    text = bench_csv(plan.with_changes(wires=wires), KINDS)
    rows = list(csv.reader(io.StringIO(text, newline="")))
    assert tuple(rows[0]) == HEADER and len(rows) == 4
    for row in rows[1:]:
        cells = dict(zip(HEADER, row, strict=True))
        assert not any(c.lstrip(" \ufeff").startswith(("=", "+", "-", "@", "\t")) for c in row)
        assert cells["note"].removeprefix("'") == note
        assert not cells["from_part"].startswith(("-", "'")) and cells["from_terminal"] in ("plus", "14", "A")


@given(st.text(max_size=30))
def test_a_guarded_cell_is_the_text_or_the_text_after_an_apostrophe(text):
    safe = guarded(text)
    assert safe in (text, f"'{text}")
    assert not safe.lstrip().startswith(("=", "+", "-", "@"))
