"""How tables and drawings share their sheets: nothing parted that reads together, no sheet for a scrap."""

from pathlib import Path as FilePath

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS

from wiring.drawings.plan_band import band
from wiring.drawings.plan_windows import windows
from wiring.files.store import load
from wiring.pictures.metrics import width_mm, wrapped
from wiring.pictures.picture import Path, Words
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.sheets.blocks import Block, heading, laid_out
from wiring.sheets.column_widths import PAD_MM, column_widths
from wiring.sheets.flow import Text, flowed
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.panel_tiles import EDGE
from wiring.sheets.paper import sheet
from wiring.sheets.table import Column, table

HARBOUR = load(FilePath(__file__).parents[2] / "demo_layouts" / "harbour.underboard")
COLUMNS = (Column("Wire", 20.0), Column("Which is", 60.0))


def texts(items):
    return [i.text for i in items if isinstance(i, Words)]


def listed(rows, title="Quay: wires"):
    return (heading(title, 170.0, level=2), *table(COLUMNS, rows, 170.0))


def test_a_table_that_goes_on_names_its_heading_on_every_further_page():
    rows = [(f"W{n}", "a lamp") for n in range(60)]
    first, *further = laid_out(listed(rows), 120.0)
    assert "Quay: wires, continued" not in texts(first.items)
    assert len(further) > 1
    for page in further:
        assert texts(page.items)[:2] == ["Quay: wires, continued", "Wire"]
    assert [t for p in (first, *further) for t in texts(p.items) if t[0] == "W" and t[1].isdigit()] == [
        r[0] for r in rows
    ]


def test_a_table_that_begins_a_page_is_not_called_continued():
    rows = [(f"W{n}", "a lamp") for n in range(30)]
    pages = laid_out((*listed(rows), *listed(rows[:5], "Yard: wires")), 235.0)
    assert sum("continued" in t for p in pages for t in texts(p.items)) == 0


def test_a_short_table_stays_whole_with_its_heading():
    filler = Block(30.0, (Words("above", (0.0, 4.0), 3.0),))
    first, second = laid_out((filler, *listed([(f"W{n}", "a lamp") for n in range(5)])), 60.0)
    assert texts(first.items) == ["above"]
    assert texts(second.items)[0] == "Quay: wires"
    assert "W4" in texts(second.items)


@given(st.integers(1, 12), st.floats(0.0, 3.0))
@settings(deadline=None, max_examples=40)
def test_no_page_is_blank_for_the_air_after_a_table(count, short_mm):
    """A page just filled by a table is followed by none for the air below it."""
    blocks = listed([(f"W{n}", "a lamp") for n in range(count)])
    high = sum(b.height_mm for b in blocks) + blocks[1].header_mm - min(short_mm, blocks[-1].height_mm)
    assert len(laid_out(blocks, high)) == 1


words = st.lists(st.text("WRDHE0123456789-:", min_size=1, max_size=14), min_size=1, max_size=6)


@given(st.tuples(words, words, words), st.tuples(*[st.floats(5.0, 60.0)] * 3))
@settings(deadline=None, max_examples=60)
def test_no_word_is_broken_where_another_column_has_room(said, shares):
    columns = [Column("", share) for share in shares]
    widths = column_widths(columns, said, (0.0, 0.0, 0.0), 170.0, 3.2)
    assert sum(widths) == pytest.approx(170.0)
    for column, width in zip(said, widths, strict=True):
        assert all(wrapped(word, width - 2 * PAD_MM, 3.2) == (word,) for word in column)


def test_the_widest_word_of_a_column_need_not_have_most_letters():
    said = [[f"-X{n}:14b" for n in range(1701, 1720)] + ["-M1000:M1"], ["Q1 STRAIGHT"]]
    columns = (Column("To", 10.0), Column("Which is", 60.0))
    width = column_widths(columns, said, (0.0, 0.0), 70.0, 3.2)[0]
    assert all(wrapped(word, width - 2 * PAD_MM, 3.2) == (word,) for word in said[0])


def test_a_long_row_that_goes_on_says_again_what_it_is_about():
    columns = (Column("Size", 20.0, again=True), Column("Pieces", 12.0), Column("Cut these", 40.0))
    row = ("0.25 mm²", "107", ", ".join(f"W{n}" for n in range(1000, 1100)))
    first, *more = (texts(b.items) for b in table(columns, [row], 72.0) if b.items)
    assert more
    assert "107" in first
    for said in more:
        assert said[0] == "0.25 mm²"
        assert "107" not in said


def test_a_list_is_set_tighter_where_that_saves_the_page_of_its_last_rows():
    page = sheet("A4")
    high = page.body[3] - page.body[1]
    fits = next(n for n in range(1, 99) if len(laid_out(listed([(f"W{i}", "") for i in range(n)]), high)) > 1)
    (section,) = flowed([Text("Bench list", "bench", listed([(f"W{i}", "") for i in range(fits)]))], page)
    assert len(section.leaves) == 1
    bottom = max(i.at[1] for i in section.leaves[0].items if isinstance(i, Words))
    assert bottom <= page.body[3]
    (longer,) = flowed([Text("Bench list", "bench", listed([(f"W{i}", "") for i in range(fits + 9)]))], page)
    assert len(longer.leaves) == 2


def test_a_number_stays_on_one_line_with_its_unit_where_another_column_has_room():
    columns = (Column("Buy", 12, "right"), Column("Cut these", 90))
    said = (["15 ft 4 in", "3 ft"], ["W1, W2, W3 and W4"])
    widths = column_widths(columns, said, (0.0, 0.0), 60.0, 3.2)
    assert widths[0] >= width_mm("15 ft 4 in", 3.2) + 2 * PAD_MM > 60.0 * 12 / 102
    assert sum(widths) == pytest.approx(60.0)


def test_low_fronts_share_a_sheet_and_show_every_panel():
    leaves = panel_sections(HARBOUR, KINDS, "A4")[0].leaves
    fronts = [leaf for leaf in leaves if "front" in leaf.kind]
    assert [leaf.kind for leaf in fronts] == ["Panels, fronts", "East panel, front"]
    shown = [t for leaf in fronts for t in texts(leaf.items) if "as it will look" in t]
    assert [t.split(",")[0] for t in shown] == ["Lights panel", "West panel", "East panel"]
    for leaf in fronts:
        left, top, right, bottom = leaf.sheet.body
        points = [p for i in leaf.items if isinstance(i, Path) for p in i.points]
        assert all(left - 0.01 <= x <= right + 0.01 and top <= y <= bottom for x, y in points)


def test_a_template_marks_an_overlap_only_where_the_next_sheet_is_printed():
    """The panels of this plan are higher than a sheet, but nothing is drilled lower down."""
    leaves = [x for x in panel_sections(HARBOUR, KINDS, "A4")[0].leaves if "template" in x.kind]
    of_west = [leaf for leaf in leaves if leaf.kind.startswith("West")]
    assert len(of_west) == 4
    for number, leaf in enumerate(of_west, start=1):
        left, top, right, bottom = leaf.sheet.body
        dashed = [i.points for i in leaf.items if isinstance(i, Path) and i.pen == EDGE]
        upright = [a for a, b in dashed if a[0] == b[0] and abs(a[1] - b[1]) > (bottom - top) - 12.0]
        assert len(upright) == (number < len(of_west))
        assert not [a for a, b in dashed if a[1] == b[1] and abs(a[0] - b[0]) > (right - left) - 1.0]


def motors(places, wires_each=0):
    """Motors at some places, each joined by so many wires to the next but one."""
    parts = {
        f"m{n}": Part(id=f"m{n}", kind="stall-motor", designation=f"M{n}", x_mm=x, y_mm=y)
        for n, (x, y) in enumerate(places)
    }
    ends = [(n, n + 2) for n in range(len(places) - 2) for _ in range(wires_each)]
    wires = {
        f"w{i}": Wire(
            id=f"w{i}", label=f"W{i}", start=TerminalRef(f"m{a}", "M1"), end=TerminalRef(f"m{b}", "M2")
        )
        for i, (a, b) in enumerate(ends)
    }
    return Plan(parts=parts, wires=wires)


def named(plan):
    return [w.area.name for w in windows(plan, KINDS, ((255.0, 153.0), (178.0, 240.0)))]


def test_sparse_neighbours_of_the_open_board_share_a_sheet():
    """One above the other on both sides of a line between two fields, near enough for one sheet."""
    assert named(motors([(100.0, 600.0), (100.0, 700.0)])) == ["Board"]
    far = motors([(100.0, 100.0), (100.0, 2300.0)])
    assert named(far) == ["Board (1 of 2)", "Board (2 of 2)"]
    crowd = [(60.0 * n, y) for n in range(6) for y in (600.0, 700.0)]
    assert named(motors(crowd)) == ["Board"]
    assert len(named(motors(crowd, 4))) >= 2


@pytest.mark.parametrize("behind", [False, True])
@pytest.mark.parametrize("name", ["Quay", "West shore", "Board (12 of 116)", "Locomotive works yard"])
def test_the_words_on_the_view_are_never_cut_on_an_upright_sheet(name, behind):
    said = [t for t in texts(band(178.0, True, name, behind=behind)) if t.startswith(name)]
    assert said
    assert not said[0].endswith("…")
