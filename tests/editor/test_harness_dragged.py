"""A plug dragged on the plan: its wireway goes along while it is in hand, and it is turned to its panel."""

import pytest
from support.benches import PANEL, BenchDesk, panel_plan
from support.editing import KINDS

from wiring.edits.panel_harness import bring_out
from wiring.edits.turn import turn
from wiring.plan.panel_places import plugs_of

OUT = bring_out(PANEL, kinds=KINDS).apply(panel_plan())
(PLUG,) = plugs_of(OUT, KINDS, PANEL)
(WAY,) = OUT.wireways
PATCH_PX, BESIDE_MM = 1, 4.0  # from the middle of the bundle, where the band is bare


@pytest.fixture
def desk(qtbot):
    desk = BenchDesk(qtbot, OUT, opened=False)
    desk.look(1.4, 260, 330)
    return desk


def drag_plug(desk, by, *, release=True):
    at = desk.plan.parts[PLUG.id].x_mm, desk.plan.parts[PLUG.id].y_mm
    there = at[0] + by[0], at[1] + by[1]
    desk.move(*at)
    desk.press(*at)
    desk.move(at[0] + by[0] / 2, at[1] + by[1] / 2)
    desk.move(*there)
    if release:
        desk.release(*there)


def end_of_band(plan):
    """Return a place in the middle of the bundle, bare of ties, where it leaves the face towards the plug."""
    x, y = plan.wireways[WAY].points[-1]
    return x + BESIDE_MM, y + BESIDE_MM


def patch(desk, at):
    """Return the pixels about a place, as the screen shows them."""
    place = desk.px(*at)
    across = range(-PATCH_PX, PATCH_PX + 1)
    shot = desk.shot()
    return [shot.pixel(place.x() + x, place.y() + y) for x in across for y in across]


def test_the_wireway_shown_while_dragging_is_the_one_that_will_be(desk):
    old = end_of_band(OUT)
    before = patch(desk, old)
    drag_plug(desk, (-70, -30), release=False)
    would = desk.view._acting.preview.plan
    new = end_of_band(would)
    left, come = patch(desk, old), patch(desk, new)
    assert left != before
    desk.release(PLUG.x_mm - 70, PLUG.y_mm - 30)
    desk.selection.clear()
    desk.move(40, 120)
    assert desk.plan.wireways[WAY] == would.wireways[WAY]
    assert (patch(desk, old), patch(desk, new)) == (left, come)


def test_leaving_the_drag_puts_the_wireway_back(desk):
    old = end_of_band(OUT)
    before = patch(desk, old)
    drag_plug(desk, (-70, -30), release=False)
    desk.view._acting.cancel()
    desk.move(40, 120)
    assert patch(desk, old) == before


@pytest.mark.parametrize(
    ("to", "turn_deg"), [((350, 350), 0.0), ((50, 350), 180.0), ((200, 450), 90.0), ((200, 250), 270.0)]
)
def test_a_plug_dragged_round_to_another_edge_faces_the_panel_in_the_same_step(desk, to, turn_deg):
    drag_plug(desk, (to[0] - PLUG.x_mm, to[1] - PLUG.y_mm), release=False)
    assert desk.view._acting.preview.plan.parts[PLUG.id].turn_deg == turn_deg
    desk.release(*to)
    assert desk.plan.parts[PLUG.id].turn_deg == turn_deg
    assert desk.session.revision == 1
    desk.session.undo()
    assert desk.plan.parts[PLUG.id] == PLUG


def test_a_plug_turned_by_hand_stays_so_turned(desk):
    desk.session.do(turn([PLUG.id], 90, kinds=KINDS))
    by_hand = desk.plan.parts[PLUG.id].turn_deg
    drag_plug(desk, (350 - PLUG.x_mm, 350 - PLUG.y_mm))
    assert desk.plan.parts[PLUG.id].turn_deg == by_hand
