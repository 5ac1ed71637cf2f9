"""What someone who lies under a layout reads: numbers with units, few words, holes that can be drilled."""

from fractions import Fraction
from functools import cache
from pathlib import Path as FilePath

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from support.editing import KINDS

from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.metrics import width_mm, wrapped
from wiring.pictures.picture import Words
from wiring.sheets.blocks import laid_out, page_count
from wiring.sheets.drawing_sheets import drawing_sections
from wiring.sheets.drill_words import drill_words, inch_drill
from wiring.sheets.meter_checks import positions_words, volt_checks
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.sheet_set import made_set
from wiring.sheets.table import Cell, Column, table

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"


@cache
def situation(name):
    return examine(load(DEMOS / f"{name}.underboard"), KINDS, outlooks=False)


def texts(items):
    return [item.text for item in items if isinstance(item, Words)]


def test_a_number_is_not_parted_from_its_unit():
    whole = "Under 0.3 V counts as dead; cut 14 × 0.54 m: W187, then 3 × 1.10 m."
    for width in range(24, 80):
        for line in wrapped(whole, float(width), 3.2):
            assert not line.startswith(("V ", "m:", "m.", "×")) and not line.endswith("×"), (width, line)


@settings(deadline=None, max_examples=60)
@given(st.lists(st.sampled_from(["14", "×", "0.54", "m:", "V", "W187,", "supply"])), st.floats(3.0, 60.0))
def test_wrapping_loses_no_word_and_stays_within_the_width(words, width):
    lines = wrapped(" ".join(words), width, 3.2)
    assert "".join("".join(lines).split()) == "".join(words)
    assert all(width_mm(line, 3.2) <= width for line in lines if len(line) > 1)


def test_switches_that_stand_alike_are_told_together():
    said = positions_words(situation("harbour"))
    assert said == "-S1 to -S5 on; -M1 to -M20 normal; -S6 to -S19 up; -S20 to -S31 released"


@pytest.mark.parametrize("name", ["siding", "harbour"])
def test_a_motor_that_turns_either_way_is_measured_without_a_minus(name):
    here = situation(name)
    motors = {p.id for p in here.plan.parts.values() if KINDS[p.kind].behaviour == "stall_motor"}
    checks = [check for check in volt_checks(here) if check.red.part in motors]
    volts = here.figures.terminals
    assert len(checks) == len(motors) and all(c.expect_v > 0 and c.low_v > 0 for c in checks)
    assert all(volts[c.red] - volts[c.black] == pytest.approx(c.expect_v) for c in checks)


# Decimal sizes of fractional inch drills, ASME B94.11M, from memory: 1/4 is 6.350 mm, 5/16 is 7.938 mm.
@pytest.mark.parametrize(
    ("hole_mm", "words"),
    [(6.35, '1/4"'), (8.0, '5/16"'), (6.5, '17/64"'), (7.0, '9/32"'), (10.0, '25/64"'), (28.6, '1 1/8"')],
)
def test_inch_drills_of_common_holes(hole_mm, words):
    assert inch_drill(hole_mm) == words


@given(st.floats(1.0, 80.0))
def test_an_inch_drill_lets_through_what_the_hole_is_for_and_is_the_smallest(hole_mm):
    inches = sum(Fraction(word) for word in inch_drill(hole_mm).strip('"').split())
    step = 1 / 64 if hole_mm <= 44.45 else 1 / 8
    assert float(inches) * 25.4 >= hole_mm - 0.1 - 1e-6
    assert (float(inches) - step) * 25.4 < hole_mm - 0.1


def test_holes_are_told_in_both_where_a_plan_counts_in_inches():
    told = {}
    for units in ("us", "metric"):
        plan = situation("quay").plan
        plan = plan.with_changes(habits=replace(plan.habits, units=units))
        leaves = panel_sections(plan, KINDS, "Letter")[0].leaves
        told[units] = {t for leaf in leaves for t in texts(leaf.items) if t.startswith("6.5 mm")}
    assert told == {"us": {'6.5 mm (17/64")'}, "metric": {"6.5 mm"}}
    assert drill_words(8.0, us=True) == '8 mm (5/16")'


def long_row(above):
    """A table of one row that is parted in two, below some others."""
    columns = (Column("", 6), Column("Size", 20, again=True), Column("Which", 40))
    rows = [("", "other", "short")] * above + [(Cell(tick=True), "0.25 mm²", "W100 " * 300)]
    return table(columns, rows, 70.0)


def test_a_long_row_says_its_size_once_a_page():
    parts = [block for block in long_row(0) if "0.25 mm²" in texts(block.items)]
    assert len(parts) > 1
    (page,) = laid_out(long_row(0), 500.0)
    assert texts(page.items).count("0.25 mm²") == 1
    pages = laid_out(long_row(0), 120.0)
    assert len(pages) > 1
    assert all(texts(page.items).count("0.25 mm²") == 1 for page in pages)
    assert sum(" ".join(texts(p.items)).count("W100") for p in pages) == 300


def test_a_template_names_what_a_legend_off_the_sheet_would_have_said():
    plan = situation("harbour").plan
    leaves = [
        leaf for leaf in panel_sections(plan, KINDS, "A4")[0].leaves if leaf.kind == "West panel, template"
    ]
    said = [t for leaf in leaves for t in texts(leaf.items)]
    for number in range(1, 8):
        assert any(t.startswith(f"WEST TURNOUT {number}") for t in said), number
    assert all("below this is no hole" in texts(leaf.items)[0] for leaf in leaves)
    larger = [
        leaf for leaf in panel_sections(plan, KINDS, "A3")[0].leaves if leaf.kind == "West panel, template"
    ]
    said = [t for leaf in larger for t in texts(leaf.items)]
    assert "WEST SIDE" in said and len({t for t in said if t.startswith("WEST TURNOUT")}) == 7


def test_circuit_drawings_hold_more_on_larger_paper_and_no_word_is_smaller():
    here = situation("siding")
    small, large = (drawing_sections(here, paper)[0].leaves for paper in ("A4", "A3"))
    assert len(large) < len(small)
    least = [
        min(i.size_mm for leaf in leaves for i in leaf.items if isinstance(i, Words) and i.text.strip())
        for leaves in (small, large)
    ]
    assert least[1] >= least[0]


@given(st.integers(0, 40), st.floats(60.0, 200.0))
def test_pages_are_counted_as_they_are_laid_out(above, height):
    assert page_count(long_row(above), height) == len(laid_out(long_row(above), height))


def test_no_list_of_the_siding_keeps_a_page_for_a_last_few_rows():
    made = made_set(situation("siding"), "Letter", only=["bench", "strips", "panels"])
    for section in made.sections:
        lists = [leaf for leaf in section.leaves if not leaf.scale]
        last = {round(item.at[1]) for item in lists[-1].items if isinstance(item, Words)}
        assert len(lists) == 1 or len(last) > 6, section.title


def test_a_page_that_begins_with_a_second_wire_of_a_terminal_says_which():
    columns = (Column("Terminal", 16, again=True), Column("Wire", 30))
    rows = [("" if number % 3 else f"-S{number}", f"W{number}") for number in range(60)]
    begun = set()
    for height in range(50, 90, 3):
        for page in laid_out(table(columns, rows, 60.0), float(height)):
            said = [t for t in texts(page.items) if t[:1] in "-W" and t != "Wire"]
            assert said[0].startswith("-S")
            number = int(said[1][1:])
            assert said[0] == f"-S{number - number % 3}"
            begun.add(number % 3)
            once = [t for t in said if t.startswith("-")]
            assert len(once) == len(set(once))
    assert begun == {0, 1, 2}
