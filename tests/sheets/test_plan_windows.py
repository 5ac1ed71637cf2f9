"""A crowded plan is shown on so many sheets that words find room; the whole plan says which is which."""

from pathlib import Path as FilePath

import pytest
from support.editing import KINDS

from wiring.drawings.plan_areas import Area
from wiring.drawings.plan_crowding import Crowding
from wiring.drawings.plan_fit import Fit
from wiring.drawings.plan_lookup import PlanLookup
from wiring.drawings.plan_windows import Window, windows
from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.picture import Anchor, Link, Words
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.sheets.plan_map import plan_map
from wiring.sheets.sheet_set import sheet_set

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
BODIES = ((255.0, 153.0), (178.0, 240.0))
NINE_POINTS_MM = 9 * 25.4 / 72
SIDES = ("from below", "from behind")


@pytest.fixture(scope="module")
def harbour():
    return load(DEMOS / "harbour.underboard")


@pytest.fixture(scope="module")
def pages(harbour):
    return sheet_set(examine(harbour, KINDS, outlooks=False), "A4", only=["plan"])


def row(count, wires_each, step_mm=120.0):
    """Motors in a row along x, each joined to the next by some wires."""
    parts = {
        f"m{n}": Part(id=f"m{n}", kind="stall-motor", designation=f"M{n}", x_mm=step_mm * n, y_mm=100.0)
        for n in range(count)
    }
    wires = {}
    for n in range(count - 1):
        for turn in range(wires_each):
            name = f"w{n}-{turn}"
            start, end = TerminalRef(f"m{n}", "M1"), TerminalRef(f"m{n + 1}", "M2")
            wires[name] = Wire(id=name, label=f"W{len(wires)}", start=start, end=end)
    return Plan(parts=parts, wires=wires)


def test_a_view_is_halved_where_its_words_would_find_no_room():
    sparse, dense = (windows(row(8, each), KINDS, BODIES) for each in (1, 12))
    assert len(sparse) == 1
    assert len(dense) > 1
    crowding = Crowding(row(8, 12), KINDS, BODIES)
    assert min(crowding.scale(w.area) for w in dense) > crowding.scale(sparse[0].area)


def test_halves_hold_every_part_once_and_part_at_a_gap():
    plan = row(6, 2)
    parts = list(plan.parts.values())
    apart = [p if p.x_mm < 300 else Part(**{**as_fields(p), "x_mm": p.x_mm + 900.0}) for p in parts]
    moved = Plan(parts={p.id: p for p in apart}, wires=plan.wires)
    one, other = Crowding(moved, KINDS, BODIES).halves(Area("Board", 0, 0, 1600, 300), apart)
    assert [p.designation for p in (*one, *other)] == [p.designation for p in apart]
    assert max(p.x_mm for p in one) < 300 < min(p.x_mm for p in other)


def as_fields(part):
    return {name: getattr(part, name) for name in part.__struct_fields__}


def test_parts_of_a_place_are_counted_in_its_names(harbour):
    named = [w.area.name for w in windows(harbour, KINDS, BODIES) if w.place == "West panel"]
    assert len(named) > 1
    assert named == [f"West panel ({n} of {len(named)})" for n in range(1, len(named) + 1)]


def test_names_and_labels_on_areas_have_nine_points_at_least(pages):
    for page in pages:
        if not page.picture.title.split(", sheet")[0].endswith(SIDES) or "Plan from" in page.picture.title:
            continue
        for words in page.picture.items:
            if isinstance(words, Words) and (words.text.startswith(("-", "W")) and words.text[1:2].isalnum()):
                named = words.text.startswith("-") or words.text[1].isdigit()
                assert not named or words.size_mm >= NINE_POINTS_MM, (page.picture.title, words.text)


def test_no_area_of_the_largest_demo_leaves_out_a_name(pages):
    said = [w.text for p in pages for w in p.picture.items if isinstance(w, Words)]
    assert not [t for t in said if "without room" in t]


def test_the_number_in_each_frame_of_the_whole_plan_leads_to_that_sheet(pages):
    home = {i.name: n for n, p in enumerate(pages, 1) for i in p.picture.items if isinstance(i, Anchor)}
    for whole in pages[:2]:
        links = [i for i in whole.picture.items if isinstance(i, Link) and i.target.startswith("window ")]
        assert len(links) == len(pages) - 2
        for link in links:
            (number,) = (
                w.text
                for w in whole.picture.items
                if isinstance(w, Words)
                and w.weight == "bold"
                and words_box(w)[:2] == (link.left_mm, link.top_mm)
            )
            assert home[link.target] == int(number)


def test_numbers_of_sheets_lie_on_no_other_words_while_there_is_room():
    fit = Fit(0.1, (500.0, 500.0), (100.0, 100.0))
    nested = [Window(Area(f"A{n}", 0.0, 0.0, 1000.0, 1000.0), "A") for n in range(6)]
    name = Words("Harbour", (100.0, 100.0), 3.0, align="centre", stand="middle")
    numbers = [i for i in plan_map(nested, fit, (0.0, 0.0, 200.0, 200.0), [name]) if isinstance(i, Words)]
    boxes = [words_box(w._replace(text="000")) for w in numbers] + [words_box(name)]
    assert len(boxes) == 7
    assert not any(overlap(a, b) for i, a in enumerate(boxes) for b in boxes[:i])


def test_what_lies_in_a_window_is_what_a_look_at_every_part_finds(harbour):
    lookup = PlanLookup(harbour, KINDS)
    for window in windows(harbour, KINDS, BODIES)[::5]:
        area = window.area
        inside = {p.id for p in harbour.parts.values() if area.holds(p.x_mm, p.y_mm)}
        assert set(lookup.parts_in(area)) == inside
        ending = [w for w in harbour.wires.values() if inside & {w.start.part, w.end.part}]
        assert list(lookup.ending_in(area)) == ending
        assert {w.id for w in ending} <= {w.id for w in lookup.near(area)}


def test_the_nearest_neighbour_of_each_part_is_the_nearest():
    plan = row(4, 1)
    assert PlanLookup(plan, KINDS).neighbour_mm == {f"m{n}": 120.0 for n in range(4)}
    alone = Plan(parts={"m0": plan.parts["m0"]})
    assert PlanLookup(alone, KINDS).neighbour_mm == {"m0": float("inf")}
