import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.gesture_runs import BUTTON, SWITCH, around, at, bench_plan, key, run
from support.surfaces import LEFT, PLAIN, Desk, desk

from app.canvas.gestures.area import TOO_SMALL, draw_area
from app.canvas.gestures.outline import draw_outline
from app.canvas.gestures.pointer import Do
from app.canvas.hits.area_hit import area_grip_at
from app.canvas.painting.area_names import area_names
from wiring.edits.panels import add_panel
from wiring.edits.scenes import add_scene, change_scene

__all__ = ["desk"]
SCENE, PANEL = "s7", "n8"


def with_areas():
    """Return the bench with a scene over the button and a panel under the switch."""
    plan = add_scene("Fish quay", 200, 20, 200, 160).apply(bench_plan())
    return add_panel("Quay panel", 200, 220, 200, 160).apply(plan)


@pytest.fixture
def areas(qtbot):
    return Desk(qtbot, plan=with_areas())


@pytest.mark.parametrize(
    ("place", "grip"),
    [
        ((210, 10), "move"),
        ((200, 100), "left"),
        ((400, 100), "right"),
        ((300, 20), "top"),
        ((400, 180), "right bottom"),
        ((201, 21), "left top"),
        ((300, 100), ""),
        ((150, 100), ""),
    ],
)
def test_an_area_is_held_by_its_name_and_its_edges(place, grip):
    assert area_grip_at(with_areas(), place, 1.0).grip == grip


def test_a_scene_is_moved_by_its_name_and_undone(areas):
    areas.drag((210, 10), (250, 40))
    scene = areas.plan.scenes[SCENE]
    assert (scene.x_mm, scene.y_mm, scene.width_mm, scene.height_mm) == (240, 50, 200, 160)
    areas.session.undo()
    assert areas.plan.scenes[SCENE].x_mm == 200


def test_a_panel_takes_its_parts_along(areas):
    before = areas.plan.parts[SWITCH]
    assert before.panel == PANEL
    areas.drag((210, 210), (310, 210))
    assert areas.plan.panels[PANEL].x_mm == 300
    assert areas.plan.parts[SWITCH].x_mm == before.x_mm + 100


def test_an_edge_resizes_and_never_turns_the_area_inside_out(areas):
    areas.drag((400, 100), (430, 100))
    assert areas.plan.scenes[SCENE].width_mm == 230
    areas.drag((430, 100), (100, 100))
    assert areas.plan.scenes[SCENE].width_mm == 20


def test_a_click_on_the_name_selects_what_is_in_it(areas):
    areas.click(210, 10)
    assert areas.selection.ids == {BUTTON}
    areas.click(210, 210)
    assert areas.selection.ids == {SWITCH}


@pytest.mark.parametrize("what", ["scene", "panel"])
def test_an_area_is_drawn_once_and_the_arrow_comes_back(desk, what):
    desk.selection.select((SWITCH,))
    desk.view.begin_draw(what)
    assert desk.view.tool == what
    desk.drag((250, 50), (352, 148))
    table = desk.plan.scenes if what == "scene" else desk.plan.panels
    (area,) = table.values()
    assert (area.x_mm, area.y_mm, area.width_mm, area.height_mm) == (250, 50, 100, 100)
    assert area.name.endswith("1")
    assert desk.view.tool == "select"
    part = desk.plan.parts[BUTTON]
    assert area.id in (part.scene, part.panel)
    assert not desk.selection.ids  # so that the card shows the new area's hours or size


def test_a_slip_of_the_hand_is_no_area():
    here = around()
    act, previews = run(draw_area(here, "scene"), at(here, "press", 50, 50), at(here, "release", 54, 90))
    assert act is ...
    assert previews[-1].hint == TOO_SMALL


def test_escape_leaves_a_drawing_and_its_tool(desk):
    before = desk.plan
    desk.view.begin_draw("board")
    desk.click(100, 400)
    desk.click(300, 400)
    desk.key(Qt.Key.Key_Escape)
    assert desk.plan is before
    assert desk.view.tool == "select"


def test_the_board_is_closed_at_its_first_corner(desk):
    desk.view.begin_draw("board")
    for corner in ((0, 0), (600, 0), (600, 400), (0, 400), (2, 1)):
        desk.click(*corner)
    assert desk.plan.board == ((0, 0), (600, 0), (600, 400), (0, 400))
    assert desk.view.tool == "select"


def test_a_track_ends_with_a_double_click(desk):
    desk.view.begin_draw("track")
    desk.click(50, 400)
    desk.click(250, 400)
    desk.click(400, 450)
    QTest.mouseDClick(desk.view, LEFT, PLAIN, desk.px(400, 450))
    assert desk.plan.tracks == (((50, 400), (250, 400), (400, 450)),)


def test_backspace_takes_a_point_back_and_enter_ends_a_track():
    here = around()
    act, previews = run(
        draw_outline(here, "track"),
        at(here, "press", 0, 0),
        at(here, "press", 100, 0),
        at(here, "press", 100, 90),
        key("back", 100, 90),
        key("enter", 100, 90),
    )
    assert (100, 90) in previews[3].outline
    assert isinstance(act, Do)
    assert act.edit.apply(here.plan).tracks == (((0, 0), (100, 0)),)


def test_a_gesture_that_leads_where_no_part_may_be_ends_with_a_sentence(desk):
    said = []
    desk.session.refused.connect(said.append)
    before = desk.plan
    desk.look(0.02, 0, 0)
    desk.view._state.camera = desk.view._state.camera._replace(left_mm=-1e9 + 100)
    from app.canvas.gestures.drag import drag_parts
    from app.canvas.gestures.pointer import Pointer
    from app.canvas.hits.hit import Hit

    desk.view._acting.begin(drag_parts(desk.view._around(), (0, 0), SWITCH, frozenset({SWITCH})))
    desk.view._acting.send(Pointer("move", (1e12, 0), Hit((1e12, 0))))
    desk.view._acting.send(Pointer("release", (1e12, 0), Hit((1e12, 0))))
    assert len(said) == 1
    assert desk.plan is before
    assert not desk.view._acting.runs


def test_a_name_wider_than_its_scene_is_shortened_and_held_no_wider_than_it_shows(areas):
    long = "The long quay with the fish market"
    areas.session.do(change_scene(SCENE, name=long))
    for scale, shown in ((4.0, True), (0.5, True), (0.25, False)):
        areas.look(scale, 300, 100)
        panels = {panel.name for panel in areas.plan.panels.values()}
        names = [n for n in area_names(areas.view.sight()) if n.name not in panels]
        assert bool(names) is shown
        for name in names:
            assert (name.name == long) is (scale > 1)
            assert name.box.right - name.box.left <= 200 * scale
            assert long.startswith(name.name.rstrip("\u2026"))
    areas.look(0.5, 300, 100)
    assert area_grip_at(areas.plan, (399, 5), 0.5).area == SCENE
    assert area_grip_at(areas.plan, (415, 5), 0.5).area != SCENE
