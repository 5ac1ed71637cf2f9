import math
from itertools import pairwise
from pathlib import Path as FilePath

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from support.editing import KINDS, plans, quay

from wiring.drawings.plan_areas import Area
from wiring.drawings.plan_band import fascia_side
from wiring.drawings.plan_clip import pieces
from wiring.drawings.plan_fit import fitting_scale, scale_words
from wiring.drawings.plan_parts import placed_parts, terminal_on_paper
from wiring.drawings.plan_view import plan_fit, plan_view
from wiring.drawings.plan_windows import windows
from wiring.drawings.plan_wires import wire_runs
from wiring.drawings.wire_colour import stripe_items, wire_colour
from wiring.files.store import load
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.picture import Disc, Path, Words
from wiring.plan.plan import Habits, Plan

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
WIDE, HIGH = 255.0, 153.0
EVERYWHERE = (-1e9, -1e9, 1e9, 1e9)
few = settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def demo(name):
    return load(DEMOS / f"{name}.underboard")


def view(plan, **more):
    return plan_view(plan, KINDS, width_mm=WIDE, height_mm=HIGH, **more)


def dots(picture):
    return sorted((round(i.centre[0], 6), round(i.centre[1], 6)) for i in picture.items if _is_dot(i))


def _is_dot(item):
    return isinstance(item, Disc) and item.fill == "copper" and item.pen.width_mm == 0


@pytest.mark.parametrize("name", ["quay", "siding", "harbour"])
def test_from_below_every_terminal_lies_at_its_exact_mirror(name):
    plan = demo(name)
    fit, _ = plan_fit(plan, KINDS, WIDE, HIGH)
    above, below = view(plan, wire_labels=False), view(plan, below=True, wire_labels=False)
    mirror = sorted((round(2 * fit.paper[0] - x, 6), y) for x, y in dots(above))
    assert len(mirror) > 10
    assert [p for pair in dots(below) for p in pair] == pytest.approx([p for pair in mirror for p in pair])


@few
@given(plans())
def test_from_below_random_plans_mirror_too(plan):
    fit, _ = plan_fit(plan, KINDS, WIDE, HIGH)
    other, _ = plan_fit(plan, KINDS, WIDE, HIGH, below=True)
    over, under = placed_parts(plan, KINDS, fit), placed_parts(plan, KINDS, other)
    for part_id, spot in over.items():
        kind = KINDS[plan.parts[part_id].kind]
        for terminal in kind.terminals:
            x, y = terminal_on_paper(fit, spot, kind, terminal.name)
            u, v = terminal_on_paper(other, under[part_id], kind, terminal.name)
            assert (u, v) == pytest.approx((2 * fit.paper[0] - x, y), abs=1e-6)


@few
@given(plans(), st.booleans(), st.sampled_from(["top", "bottom", "left", "right"]))
def test_all_words_lie_in_the_box_and_none_on_another(plan, below, fascia):
    plan = replace(plan, habits=replace(plan.habits, fascia=fascia))
    boxes = [words_box(i) for i in view(plan, below=below).items if isinstance(i, Words)]
    for box in boxes:
        assert box[0] >= -0.01 and box[1] >= -1.5 and box[2] <= WIDE + 0.01 and box[3] <= HIGH + 0.5
    for i, one in enumerate(boxes):
        assert not any(overlap(one, other, 0.35) for other in boxes[:i])


@pytest.mark.parametrize("name", ["quay", "siding"])
@pytest.mark.parametrize("below", [False, True])
def test_labels_of_the_demos_lie_neither_on_signs_nor_on_each_other(name, below):
    plan = demo(name)
    fit, _ = plan_fit(plan, KINDS, WIDE, HIGH, below=below)
    signs = [spot.box for spot in placed_parts(plan, KINDS, fit).values()]
    words = [i for i in view(plan, below=below).items if isinstance(i, Words)]
    names = {i.text for i in words}
    assert {f"-{p.designation}" for p in plan.parts.values()} <= names
    for label in (w for w in words if w.text.startswith("-")):
        assert not any(overlap(words_box(label), sign, 0.3) for sign in signs), label.text


def test_text_keeps_its_size_on_paper_whatever_the_scale():
    for plan in (demo("quay"), demo("harbour")):
        sizes = {w.size_mm for w in view(plan).items if isinstance(w, Words) and w.text.startswith("-")}
        assert sizes == {3.4}


@given(st.floats(10, 20000), st.floats(10, 20000))
def test_the_scale_fits_and_a_larger_round_one_would_not(width, height):
    scale = fitting_scale(width, height, 240, 120)
    assert scale <= 1.0 and width * scale <= 240.001 and height * scale <= 120.001
    if scale < 1.0:
        assert max(width * scale / 240, height * scale / 120) > 0.65
    assert scale_words(scale).startswith("1:")


def test_large_parts_are_drawn_to_scale():
    plan = demo("quay")
    fit, _ = plan_fit(plan, KINDS, WIDE, HIGH)
    house = next(p for p in plan.parts.values() if p.kind.startswith("building"))
    left, _, right, _ = placed_parts(plan, KINDS, fit)[house.id].box
    assert right - left == pytest.approx(KINDS[house.kind].width_mm * fit.scale, rel=0.01)


@pytest.mark.parametrize(
    ("fascia", "below", "side"),
    [("left", False, "left"), ("left", True, "right"), ("right", True, "left"), ("bottom", True, "bottom")],
)
def test_the_fascia_swaps_sides_with_the_view(fascia, below, side):
    assert fascia_side(fascia, below) == side
    plan = replace(quay(), habits=Habits(fascia=fascia))
    bar = next(i for i in view(plan, below=below).items if isinstance(i, Path) and i.pen.width_mm == 1.2)
    xs = [p[0] for p in bar.points]
    middle = plan_fit(plan, KINDS, WIDE, HIGH, below=below)[0].paper[0]
    if side != "bottom":
        assert (max(xs) < middle) == (side == "left")


def test_the_view_says_from_where_it_is_seen():
    texts = {b: [i.text for i in view(quay(), below=b).items if isinstance(i, Words)] for b in (False, True)}
    assert "ABOVE" in texts[False] and "FROM BELOW" not in texts[False]
    assert "FROM BELOW" in texts[True] and "ABOVE" not in texts[True]


def test_wires_that_share_their_way_fan_out_evenly():
    plan = quay()
    way = ((300.0, 500.0), (600.0, 500.0))
    wires = {i: replace(w, bends=way) for i, w in plan.wires.items()}
    fit, _ = plan_fit(plan.with_changes(wires=wires), KINDS, WIDE, HIGH)
    shown = plan.with_changes(wires=wires)
    runs = wire_runs(shown, KINDS, fit, placed_parts(shown, KINDS, fit), EVERYWHERE)
    level = sorted(run.points[1][1] for run in runs.values())
    steps = [b - a for a, b in pairwise(level)]
    assert len(steps) == 2 and steps[0] > 0.9 and steps[0] == pytest.approx(steps[1])


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.floats(-50, 50), st.floats(-50, 50)), min_size=2, max_size=8))
def test_a_clipped_line_is_what_lies_in_the_window(points):
    box = (-20.0, -20.0, 20.0, 20.0)
    kept = pieces(points, box)
    for piece in kept:
        assert all(-20.001 <= x <= 20.001 and -20.001 <= y <= 20.001 for x, y in piece.points)
    long = sum(math.dist(a, b) for p in kept for a, b in pairwise(p.points))
    steps = 200
    inside = 0.0
    for (x, y), (u, v) in pairwise(points):
        share = sum(
            max(abs(x + (u - x) * (i + 0.5) / steps), abs(y + (v - y) * (i + 0.5) / steps)) <= 20
            for i in range(steps)
        )
        inside += math.dist((x, y), (u, v)) * share / steps
    assert long == pytest.approx(inside, abs=1.0 * len(points))


def test_the_windows_of_a_crowded_plan_show_every_part_and_its_name():
    plan = demo("harbour")
    shown = windows(plan, KINDS, ((WIDE, HIGH),))
    for part in plan.parts.values():
        assert any(w.area.holds(part.x_mm, part.y_mm) for w in shown), part.designation


def test_a_wire_that_leaves_the_window_says_where_it_goes():
    plan = quay()
    lamp = Area("Lamp", 300, 0, 500, 300)
    texts = [i.text for i in view(plan, window=lamp).items if isinstance(i, Words)]
    assert "-E1" in texts and "-S1" not in texts
    assert any(t.endswith("to -S1:14") for t in texts)


def test_an_empty_plan_says_so():
    assert any("Nothing is drawn" in i.text for i in view(Plan()).items if isinstance(i, Words))


@pytest.mark.parametrize(
    ("letters", "alike"), [("RDBU", True), ("RDVT", True), ("RDWH", False), ("BKYE", False)]
)
def test_two_colours_alike_in_grey_are_told_apart_by_white_ticks(letters, alike):
    """What is white ends each dash of the stripe, so a print in grey shows that there are two colours."""
    wire = wire_colour(letters)
    along = ((0.0, 0.0), (40.0, 0.0))
    *ticks, stripe = stripe_items(along, wire, 0.4, 1.6)
    assert stripe.pen.colour == wire.stripe_rgb and stripe.pen.dashes_mm == (1.6, 1.6)
    assert bool(ticks) is alike
    for tick in ticks:
        assert tick.pen.colour == "#ffffff" and tick.pen.width_mm == stripe.pen.width_mm
        assert sum(tick.pen.dashes_mm) == pytest.approx(3.2) and 1.6 < tick.pen.dashes_mm[0] < 2.4
    assert stripe_items(along, wire_colour("RD"), 0.4, 1.6) == ()
