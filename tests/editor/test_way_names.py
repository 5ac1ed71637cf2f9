"""The name of a wireway stands beside it, off parts, labels and other words, steady while one pulls."""

import math
from itertools import combinations

import pytest
from support.gesture_runs import KINDS
from support.surfaces import Desk

from app.canvas.camera import Camera
from app.canvas.geometry import Box
from app.canvas.painting.area_names import WAY_FONT, AreaName
from app.canvas.painting.part_painter import shown_boxes
from wiring.edits.place_part import place
from wiring.edits.wireways import add_wireway
from wiring.files.store import load
from wiring.plan.plan import Plan


def way_names(desk) -> dict[str, AreaName]:
    words = desk.view._frame.still._kept.words
    return {name.name: name for name in words.names if name.font == WAY_FONT}


def seen_from(desk) -> Camera:
    """What the picture that holds the names was painted for."""
    return desk.view._frame.still._kept.room.anchor


def labels(desk) -> list[Box]:
    kept, camera = desk.view._frame.still._kept, seen_from(desk)
    x, y = camera.left_mm * camera.scale, camera.top_mm * camera.scale
    boxes = [label[1] for label in kept.labels._labels.values() if label is not None]
    return [Box(b.left - x, b.top - y, b.right - x, b.bottom - y) for b in boxes]


def clash(one: Box, other: Box) -> bool:
    wide = min(one.right, other.right) - max(one.left, other.left)
    return wide > 1 and min(one.bottom, other.bottom) - max(one.top, other.top) > 1


def looked_at(qtbot, plan: Plan, scale: float = 1.0, centre=(300, 250)) -> Desk:
    desk = Desk(qtbot, plan=plan)
    desk.look(scale, *centre)
    desk.shot()
    return desk


@pytest.mark.parametrize(("name", "scales"), [("siding", (0.3, 0.6, 1.0, 2.4)), ("harbour", (0.3, 0.6, 1.2))])
def test_it_stands_off_every_part_label_and_other_word(qtbot, name, scales):
    desk, seen = Desk(qtbot, plan=load(f"demo_layouts/{name}.underboard")), 0
    way = next(iter(desk.plan.wireways.values()))
    (ax, ay), (bx, by) = way.points[:2]
    for scale in scales:
        desk.look(scale, (ax + bx) / 2, (ay + by) / 2)
        desk.shot()
        names = way_names(desk)
        seen += len(names)
        kept = desk.view._frame.still._kept
        sight = kept.sight_of(desk.view.sight())
        others = [n.box for n in kept.words.names if n.font != WAY_FONT] + [c.box for c in kept.counts]
        signs = [Box(*row) for row in shown_boxes(sight, list(desk.plan.parts)).tolist()]
        for one in names.values():
            assert not any(clash(one.box, other) for other in (*signs, *labels(desk), *others)), scale
    assert seen >= len(scales) - 1


def test_it_goes_to_the_longest_free_stretch_and_to_the_other_side(qtbot):
    plan = add_wireway([(100, 250), (500, 250)], "Beam").apply(Plan())
    free = looked_at(qtbot, plan)
    box = way_names(free)["Beam"].box
    middle, y = seen_from(free).to_px(300, 250)
    assert abs((box.left + box.right) / 2 - middle) < 8 and box.top > y
    held = plan
    for x in range(120, 400, 40):  # one row of parts right below, but for the end
        held = place(KINDS["lamp-12v"], x, 268).apply(held)
    desk = looked_at(qtbot, held)
    assert way_names(desk)["Beam"].box.bottom < seen_from(desk).to_px(300, 250)[1], "above, where all is free"
    for x in range(120, 400, 40):
        held = place(KINDS["lamp-12v"], x, 228).apply(held)
    desk = looked_at(qtbot, held)
    assert way_names(desk)["Beam"].box.left > seen_from(desk).to_px(380, 250)[0], "at the end, which is free"


def test_it_is_left_out_where_nothing_is_free_and_where_the_way_is_too_short(qtbot):
    plan = add_wireway([(200, 250), (260, 250)], "A name longer than its wireway").apply(Plan())
    assert not way_names(looked_at(qtbot, plan))
    plan = add_wireway([(200, 250), (300, 250)], "Beam").apply(Plan())
    assert way_names(looked_at(qtbot, plan))
    for x in range(200, 301, 20):
        for y in (240, 260):
            plan = place(KINDS["lamp-12v"], x, y).apply(plan)
    assert not way_names(looked_at(qtbot, plan))


def test_it_does_not_jump_while_the_paper_is_pulled(qtbot):
    desk = looked_at(qtbot, load("demo_layouts/siding.underboard"), 0.8, (1080, 650))
    found = way_names(desk)["Siding panel harness"].box
    at = seen_from(desk).to_plan(found.left, found.top)
    for dx, dy in ((-120, 0), (-90, 60), (160, -40), (220, 30)):
        desk.view._look(desk.view._state.camera.panned(dx, dy))
        desk.shot()
        box = way_names(desk)["Siding panel harness"].box
        now = seen_from(desk).to_plan(box.left, box.top)
        assert math.dist(at, now) * desk.view._state.camera.scale < 1.01


def test_along_a_sloping_or_upright_way_it_is_turned_to_be_read_from_below_or_the_right(qtbot):
    plan = Plan()
    for points, name in (
        ([(100, 400), (100, 150)], "Upright"),
        ([(200, 150), (200, 400)], "Down"),
        ([(300, 300), (500, 150)], "Slope"),
        ([(550, 350), (300, 350)], "Back"),
    ):
        plan = add_wireway(points, name).apply(plan)
    names = way_names(looked_at(qtbot, plan))
    angles = {name: round(one.angle_deg) for name, one in names.items()}
    assert angles == {"Upright": -90, "Down": -90, "Slope": -37, "Back": 0}
    assert not any(clash(a.box, b.box) for a, b in combinations(names.values(), 2))
