import math
import re
from collections import Counter
from datetime import date
from pathlib import Path as FilePath

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from support.editing import KINDS, quay

from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Disc, Path, Words
from wiring.sheets.bench_list import bench_rows
from wiring.sheets.designation_runs import run_words
from wiring.sheets.label_sheets import label_section
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.panel_template import faces
from wiring.sheets.sheet_set import sheet_set

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
TODAY = date(2026, 3, 14)


def demo(name):
    return load(DEMOS / f"{name}.underboard")


def templates(plan, paper="A4"):
    return [leaf for leaf in panel_sections(plan, KINDS, paper)[0].leaves if leaf.scale == "1:1"]


def named_holes(leaf):
    """Designation to centre of each hole whose name stands below it."""
    discs = [i.centre for i in leaf.items if isinstance(i, Disc)]
    found = {}
    for words in (i for i in leaf.items if isinstance(i, Words) and i.text.startswith("-")):
        found[words.text] = min(discs, key=lambda c: math.dist(c, words.at))
    return found


def test_holes_lie_apart_on_paper_as_the_parts_do_on_the_panel():
    plan = demo("siding")
    where = {f"-{p.designation}": (p.x_mm, p.y_mm) for p in plan.parts.values()}
    pairs = 0
    for leaf in templates(plan):
        holes = named_holes(leaf)
        for a in holes:
            for b in holes:
                assert math.dist(holes[a], holes[b]) == pytest.approx(math.dist(where[a], where[b]), abs=1e-6)
                pairs += a != b
    assert pairs > 10


def test_every_hole_of_a_large_panel_stands_on_some_sheet():
    plan = demo("harbour")
    shown = {name for leaf in templates(plan, "Letter") for name in named_holes(leaf)}
    assert {f"-{h.part.designation}" for f in faces(plan, KINDS) for h in f.holes} <= shown


def test_templates_stay_inside_the_body_of_their_sheet():
    for leaf in templates(demo("harbour")):
        left, top, right, bottom = leaf.sheet.body
        for item in leaf.items:
            points = item.points if isinstance(item, Path) else ()
            if isinstance(item, Words):
                box = words_box(item)
                points = ((box[0], box[1]), (box[2], box[3]))
            for x, y in points:
                assert left - 16 <= x <= right + 16 and top - 1 <= y <= bottom + 0.01


def test_a_panel_without_parts_and_a_plan_without_wires_give_no_sheets():
    plan = quay()
    assert panel_sections(plan, KINDS, "A4") == ()
    assert label_section(plan, (), "A4") == ()


def test_every_wire_end_gets_one_flag_printed_on_both_halves():
    plan = demo("siding")
    section = label_section(plan, bench_rows(plan, KINDS), "A4")[0]
    texts = Counter(w.text for leaf in section.leaves for w in leaf.items if isinstance(w, Words))
    for wire in plan.wires.values():
        assert texts[f"{wire.label} {wire.colour}"] == 4
    ends = Counter()
    for wire in plan.wires.values():
        for ref in (wire.start, wire.end):
            ends[f"-{plan.parts[ref.part].designation}:{ref.terminal}"] += 2
    assert all(texts[end] == count for end, count in ends.items())


def expanded(text):
    """Every designation a run says, the other way round."""
    found = []
    for piece in text.split(", "):
        match = re.fullmatch(r"(-[A-Z]+)(\d+) to \1(\d+)", piece)
        found += [f"{match[1]}{i}" for i in range(int(match[2]), int(match[3]) + 1)] if match else [piece]
    return found


@given(st.sets(st.tuples(st.sampled_from(["-E", "-S", "-X"]), st.integers(1, 60)), min_size=1))
def test_runs_of_designations_say_each_exactly_once(numbered):
    names = sorted(f"{letter}{number}" for letter, number in numbered)
    assert sorted(expanded(run_words(names))) == names


def test_odd_designations_are_kept_as_they_are():
    assert run_words(["-E1", "-E2", "-lamp", "-E3", "-E007"]) == "-E1 to -E3, -E007, -lamp"


def test_the_list_of_a_panel_says_on_which_sheets_it_is_drawn():
    pages = sheet_set(examine(demo("siding"), KINDS, outlooks=False), "A4", TODAY, only=["plan", "panels"])
    kinds = [p.picture.title.split(": ")[-1].split(", sheet")[0] for p in pages]
    told = [i.text for p in pages for i in p.picture.items if isinstance(i, Words) and ": " in i.text]
    for before, kind in (
        ("Front: sheet ", "front"),
        ("Back: sheet ", "behind"),
        ("Full size: from sheet ", "template"),
    ):
        numbers = [int(t.removeprefix(before)) for t in told if t.startswith(before)]
        assert len(numbers) == 1
        assert all(kind in kinds[n - 1] for n in numbers)


def test_a_small_panel_is_drawn_among_its_lists():
    """No sheet of its own for its front, and the list does not send there."""
    pages = sheet_set(examine(demo("quay"), KINDS, outlooks=False), "A4", TODAY, only=["panels"])
    (listed,) = (p for p in pages if p.picture.title.split(": ")[-1].startswith("Panels"))
    texts = [i.text for i in listed.picture.items if isinstance(i, Words)]
    assert "Front, as it will look, 1:1.5" in texts and "QUAY LIGHTS" in texts
    assert not [t for t in texts if t.startswith("Front: sheet")]
    (face,) = (
        i for i in listed.picture.items if isinstance(i, Path) and i.fill == "raised" and i.pen.width_mm
    )
    xs, ys = [x for x, _ in face.points], [y for _, y in face.points]
    assert max(xs) - min(xs) == pytest.approx(220.0 / 1.5) and max(ys) - min(ys) == pytest.approx(90.0 / 1.5)


@pytest.mark.parametrize(
    ("units", "told"), [("metric", ("110.0 mm", "44.0 mm")), ("us", ('4.331"', '1.732"'))]
)
def test_holes_are_placed_in_the_units_of_the_plan(units, told):
    """110 mm and 44 mm over 25.4 mm an inch (the inch of 1959)."""
    plan = demo("quay")
    plan = plan.with_changes(habits=replace(plan.habits, units=units))
    texts = [
        w.text
        for leaf in panel_sections(plan, KINDS, "A4")[0].leaves
        for w in leaf.items
        if isinstance(w, Words)
    ]
    assert set(told) <= set(texts)


def test_a_list_without_the_drawings_sends_nowhere():
    pages = sheet_set(examine(demo("siding"), KINDS, outlooks=False), "A4", TODAY, only=["panels"])
    texts = [i.text for p in pages for i in p.picture.items if isinstance(i, Words)]
    assert not [t for t in texts if t.startswith("Back: sheet")]
    assert not [t for t in texts if "\ue003" in t or "\ue004" in t]
