"""Panels on the plan itself: parts snap to their spacing, misfits are ringed, faces are seen."""

import numpy as np
import pytest
from PySide6.QtGui import QColor, QImage
from support.benches import LAMP, PANEL, SWITCH, BenchDesk, panel_plan
from support.editing import KINDS
from support.surfaces import CTRL

from app.canvas.painting.harness_painter import PLATE
from app.canvas.painting.misfit_painter import paint_misfits
from wiring.edits.face_items import add_line
from wiring.edits.panel_harness import bring_out
from wiring.edits.panels import change_panel
from wiring.pictures.theme import LIGHT, resolve
from wiring.plan.panel_places import plugs_of


@pytest.fixture
def plan_desk(qtbot):
    return BenchDesk(qtbot, change_panel(PANEL, spacing_mm=12.5).apply(panel_plan()), opened=False)


def count(image, colour):
    """Return how many pixels of a picture are about that colour."""
    plain = image.convertToFormat(QImage.Format.Format_RGB32)
    rows = np.frombuffer(plain.constBits(), np.uint8).reshape(plain.height(), -1, 4)[:, :, :3].astype(int)
    near = QColor(colour)
    away = np.abs(rows - np.array([near.blue(), near.green(), near.red()])).sum(axis=2)
    return int((away < 60).sum())


def test_a_part_snaps_to_the_spacing_of_the_panel_it_is_dragged_over(plan_desk):
    plan_desk.look(2.0, 200, 300)
    plan_desk.drag((240, 330), (226, 342))
    part = plan_desk.plan.parts[LAMP]
    assert ((part.x_mm - 100) / 12.5, (part.y_mm - 300) / 12.5) == (10, 3)
    plan_desk.drag((225, 337.5), (229, 345), CTRL)
    assert plan_desk.plan.parts[LAMP].x_mm == 229


def test_a_misfit_is_ringed_while_it_is_in_hand_and_not_before(plan_desk):
    danger = resolve("danger", LIGHT)
    plan_desk.look(3.0, 200, 340)
    plan_desk.move(240, 330)
    plan_desk.press(240, 330)
    plan_desk.move(230, 330)
    calm = count(plan_desk.shot(), danger)
    plan_desk.move(200, 349)
    assert plan_desk.view._acting.preview.plan is not None
    alarmed = count(plan_desk.shot(), danger)
    plan_desk.release(240, 330)
    assert alarmed > calm + 60


def test_nothing_is_looked_for_on_a_plan_without_panels(plan_desk):
    from app.canvas.gestures.pointer import Preview

    sight = plan_desk.view.sight()._replace(plan=plan_desk.plan.with_changes(panels={}))
    paint_misfits(None, sight, Preview(touched=frozenset({SWITCH})))  # would need a painter if it found any


def test_track_lines_are_seen_on_the_plan(plan_desk):
    plan_desk.look(2.0, 200, 350)
    before = count(plan_desk.shot(), "#7b3f9d")
    plan_desk.session.do(add_line(PANEL, [(10, 90), (190, 90)], 6, "VT"))
    assert count(plan_desk.shot(), "#7b3f9d") > before + 1000


def test_a_harness_is_tied_and_counted_on_the_plan(plan_desk, monkeypatch):
    said = []
    real = type(PLATE).pixmap
    monkeypatch.setattr(
        type(PLATE), "pixmap", lambda self, words, *a: (said.append(words), real(self, words, *a))[1]
    )
    plan_desk.session.do(bring_out(PANEL))
    plan_desk.shot()
    assert "4 wires" in said


def test_a_plug_dragged_on_the_plan_takes_its_bundle_along_while_it_is_in_hand_and_after(plan_desk):
    plan_desk.session.do(bring_out(PANEL))
    plan, look = plan_desk.plan, plan_desk.view
    (plug,) = plugs_of(plan, KINDS, PANEL)
    (way,) = plan.wireways.values()
    plan_desk.look(2.0, 200, 300)
    at = plug.x_mm, plug.y_mm
    plan_desk.move(*at)
    plan_desk.press(*at)
    plan_desk.move(at[0] - 20, at[1] - 20)
    plan_desk.move(at[0] - 60, at[1] - 40)
    shown = look._acting.preview.plan.wireways[way.id].points[-1]
    plan_desk.release(at[0] - 60, at[1] - 40)
    moved, end = plan_desk.plan.parts[plug.id], plan_desk.plan.wireways[way.id].points[-1]
    assert moved.x_mm < plug.x_mm - 40
    assert end == shown and end[0] - way.points[-1][0] == moved.x_mm - plug.x_mm
    inner = [w for w in plan_desk.plan.wires.values() if w.along == (way.id,)]
    assert inner and all(w.bends[-1] == end for w in inner)
    plan_desk.session.undo()
    assert plan_desk.plan is plan


def test_a_panel_that_is_moved_takes_plug_and_bundle_along_and_wires_stay_square(plan_desk):
    plan_desk.session.do(bring_out(PANEL))
    plan_desk.session.do(change_panel(PANEL, x_mm=140, y_mm=320))
    plan = plan_desk.plan
    (plug,), (way,) = plugs_of(plan, KINDS, PANEL), plan.wireways.values()
    assert all(w.bends[-1] == way.points[-1] for w in plan.wires.values() if w.along)
    for wire in (w for w in plan.wires.values() if plug.id == w.start.part and w.bends):
        start = plan_desk.view.sight().geometry.raw_path(wire.id)[0]
        assert wire.bends[0][0] == start[0] or wire.bends[0][1] == start[1]
