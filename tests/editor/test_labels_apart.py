"""No words on the plan run over each other or over the sign of a part, from any distance."""

from itertools import combinations

import numpy as np
import pytest
from support.surfaces import Desk

from app.canvas.camera import Camera
from app.canvas.geometry import Box
from app.canvas.painting.area_names import area_names
from app.canvas.painting.flag_painter import flag_boxes
from app.canvas.painting.near_boxes import NearBoxes
from app.canvas.painting.part_painter import shown_boxes
from app.solving import Solving
from tests.benchmarks.canvas import street
from wiring.files.store import load

NEARNESS = [0.5, 1.0, 2.0, 4.0, 8.0]  # times the distance that shows everything
ROUNDED_PX = 1.0  # words are painted at whole pixels


def solved_desk(qtbot, plan) -> Desk:
    desk = Desk(qtbot, plan=plan)
    solving = Solving(desk.session, at_once=True, parent=desk.view)
    solving.answered.connect(desk.view.set_answer)
    solving.request()
    return desk


def labels(desk) -> dict[str, Box]:
    """Return where labels are shown, in pixels."""
    kept = desk.view._frame.still._kept
    scale = kept.camera.scale
    x, y = kept.camera.left_mm * scale, kept.camera.top_mm * scale
    found = {}
    for part, label in kept.labels._labels.items():
        if label is not None:
            box = label[1]
            found[part] = Box(box.left - x, box.top - y, box.right - x, box.bottom - y)
    return found


def clash(one: Box, other: Box) -> bool:
    wide = min(one.right, other.right) - max(one.left, other.left)
    high = min(one.bottom, other.bottom) - max(one.top, other.top)
    return wide > ROUNDED_PX and high > ROUNDED_PX


def faults(desk) -> list[str]:
    """Return what runs over what."""
    sight = desk.view.sight()
    words = {f"label of {i}": box for i, box in labels(desk).items()}
    words |= {f"name {n.name}": n.box for n in area_names(sight)}
    words |= {f"flag {n}": box for n, box in enumerate(flag_boxes(sight, sight.plan.parts))}
    kept = desk.view._frame.still._kept
    words |= {f"count {n}": c.box for n, c in enumerate(kept.counts)}
    found = [
        f"{a} / {b}"
        for a, b in combinations(words, 2)
        if (a.startswith("label") or b.startswith("label")) and clash(words[a], words[b])
    ]
    parts = list(sight.plan.parts)
    signs = {i: Box(*row) for i, row in zip(parts, shown_boxes(sight, parts).tolist(), strict=True)}
    found += [
        f"label of {i} / sign of {j}"
        for i, box in labels(desk).items()
        for j in signs
        if clash(box, signs[j])
    ]
    return found


@pytest.mark.parametrize("name", ["quay", "harbour", "siding"])
def test_labels_of_the_layouts_keep_off_everything(qtbot, name):
    desk = solved_desk(qtbot, load(f"demo_layouts/{name}.underboard"))
    desk.view.show_all()
    fit, shown = desk.view._state.camera, 0
    for nearness in NEARNESS:
        x, y = fit.to_plan(450, 320)
        desk.look(fit.scale * nearness, x, y)
        desk.shot()
        assert faults(desk) == []
        shown += len(labels(desk))
        desk.view._look(desk.view._state.camera.panned(-170, 90))
        desk.shot()
        assert faults(desk) == []
    assert shown > 10


@pytest.mark.parametrize("name", ["quay", "siding"])
def test_the_letters_of_wires_lie_under_no_sign_and_not_on_each_other(qtbot, name):
    desk, shown = Desk(qtbot, plan=load(f"demo_layouts/{name}.underboard")), 0
    for scale in (1.6, 2.5, 5.0):
        part = desk.plan.parts[sorted(desk.plan.parts)[-1]]
        desk.look(scale, part.x_mm, part.y_mm)
        desk.shot()
        sight = desk.view.sight()
        near = sight.geometry.parts_in(sight.visible)
        places = [box for boxes in desk.view._frame.still._kept.signs._places.values() for box in boxes]
        shift = np.array([sight.camera.left_mm, sight.camera.top_mm] * 2) * scale
        letters = np.array(places).reshape(-1, 4) - shift
        assert not NearBoxes(shown_boxes(sight, near)).overlapped(letters).any()
        one, other = NearBoxes(letters).overlaps(letters)
        assert (one == other).all()
        shown += len(letters)
    assert shown > 10


@pytest.mark.parametrize("scale", [0.45, 1.2, 2.5])
def test_labels_of_a_crowd_keep_off_each_other_while_it_is_pulled(qtbot, scale):
    desk = Desk(qtbot, plan=street(5000))
    desk.view._look(Camera(scale, 1500, 900))
    desk.view._burst.stop()
    for dx in (0, -130, -260, 330):
        desk.view._look(desk.view._state.camera.panned(dx, dx / 2))
        desk.shot()
    boxes = np.array(list(labels(desk).values())).reshape(-1, 4)
    parts = shown_boxes(desk.view.sight(), list(desk.plan.parts))
    inner = np.column_stack((boxes[:, :2] + 1, boxes[:, 2:] - 1)) if len(boxes) else boxes
    assert not NearBoxes(parts).overlapped(inner).any()
    one, other = NearBoxes(inner).overlaps(inner)
    assert (one == other).all()
    assert len(boxes) > 5 or scale < 1
