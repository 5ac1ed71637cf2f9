"""The gestures of the bench fed with pointers only: no window, no events."""

from support.benches import BUTTON, LAMP, PANEL, SWITCH, panel_plan
from support.editing import KINDS, done
from support.gesture_runs import run

from app.bench.bench import FaceItem, Pencil
from app.bench.face_camera import FaceCamera
from app.bench.face_gestures import BESIDE, double, draw_line, place_on_face, pressed, put_text
from app.bench.face_hit import hit_on_face, terminal_places
from app.bench.face_pointer import FaceAround, FaceDo, FacePick, FacePointer, FaceWrite
from app.bench.face_sight import FaceSight
from app.bench.face_wiring import on_grid_of_face, pull_on_face
from app.canvas.camera import Camera
from app.canvas.geometry import Geometry
from app.canvas.gestures.pointer import Around
from app.canvas.painting.shades import shades
from app.canvas.sight import Sight
from wiring.edits.face_items import add_line, add_text
from wiring.edits.panels import change_panel
from wiring.pictures.theme import LIGHT
from wiring.plan.changes import changes_between
from wiring.plan.names import TerminalRef

PAINTED = done(panel_plan(), add_line(PANEL, [(20, 20), (60, 20)]), add_text(PANEL, "QUAY", 40, 75))


def around(plan=PAINTED, *, behind=False, selected=frozenset(), items=frozenset()):
    geometry = Geometry(plan, KINDS)
    whole = Sight(plan, KINDS, geometry, Camera(), shades(LIGHT), 900.0, 600.0)
    camera = FaceCamera(4.0, 50.0, 80.0, 200.0, behind)
    sight = FaceSight(plan, plan.panels[PANEL], camera, whole, selected, items)
    on_plan = Around(plan, KINDS, geometry, wire_size="20 AWG", wire_colour="GN")
    return FaceAround(sight, Pencil(), on_grid_of_face(on_plan, sight))


def at(here, phase, x, y, *, landing=False, **fields):
    return FacePointer(phase, (x, y), hit_on_face(here.sight, (x, y), landing=landing), **fields)


def key(name, x=0.0, y=0.0):
    from app.bench.face_hit import FaceHit

    return FacePointer("key", (x, y), FaceHit((x, y)), key=name)


def test_a_wire_is_pulled_by_the_plans_own_gesture_in_millimetres_of_the_face():
    here = around(behind=True)
    a = terminal_places(here.sight)[TerminalRef(BUTTON, "14")]
    b = terminal_places(here.sight)[TerminalRef(LAMP, "K")]
    act, previews = run(
        pull_on_face(here),
        at(here, "press", *a, landing=True),
        at(here, "move", *b, landing=True),
        at(here, "press", *b, landing=True),
    )
    assert previews[0].lands and previews[-1].landing == TerminalRef(LAMP, "K")
    assert previews[-1].line[0] == a and previews[-1].line[-1] == b
    assert isinstance(act, FaceDo) and act.pick_new
    new = act.edit.apply(here.plan)
    (wire,) = changes_between(here.plan, new).wires.added
    assert (new.wires[wire].size, new.wires[wire].colour) == ("20 AWG", "GN")


def test_a_press_on_a_terminal_behind_begins_a_wire_and_in_front_does_not():
    behind, front = around(behind=True), around()
    a = terminal_places(behind.sight)[TerminalRef(SWITCH, "14")]
    _, previews = run(pressed(behind, at(behind, "press", *a)), at(behind, "move", a[0] + 9, a[1]))
    assert previews[-1].lands
    _, previews = run(pressed(front, at(front, "press", *a)), at(front, "move", a[0] + 9, a[1]))
    assert not previews[-1].lands


def test_the_grid_of_wires_starts_at_the_corner_of_the_face_and_is_fine():
    here = around(done(PAINTED, change_panel(PANEL, x_mm=103, spacing_mm=12.5)))
    assert here.whole.grid_mm == 6.25 and here.whole.on_grid((103 + 7, 300 + 6)) == (103 + 6.25, 300 + 6.25)


def test_a_drag_takes_parts_lines_and_legends_and_stops_at_the_edge_for_all_of_them():
    items = frozenset({FaceItem("line", 0), FaceItem("text", 0)})
    here = around(selected=frozenset({SWITCH}), items=items)
    act, previews = run(
        pressed(here, at(here, "press", 40, 50)),
        at(here, "move", 60, 50),
        at(here, "move", 20, -100),
        at(here, "release", 20, -100),
    )
    assert previews[1].plan is not None
    new = act.edit.apply(here.plan)
    panel = new.panels[PANEL]
    # the line lies 20 mm from the upper edge, and nothing goes farther than that
    assert (new.parts[SWITCH].y_mm, panel.lines[0].points[0], panel.texts[0].y_mm) == (330, (0, 0), 55)


def test_the_hint_names_what_is_in_the_way_and_what_reaches_over_the_edge():
    here = around(done(PAINTED, change_panel(PANEL, room_mm=20)))
    grab = at(here, "press", 40, 50)
    for to, said in (
        ((80, 50), "-S1 needs 2 mm between its body and that of -S2."),
        ((0, 50), "-S1 reaches over the edge of the face."),
        ((40, 80), "-S1 reaches 30 mm behind the face, where there are 20 mm."),
    ):
        _, previews = run(pressed(here, grab), at(here, "move", 44, 50), at(here, "move", *to))
        assert (previews[-1].hint, previews[-1].cursor) == (said, "no")


def test_a_click_chooses_and_shift_adds_or_takes_out():
    here = around(behind=True, selected=frozenset({LAMP}))
    press = at(here, "press", 40, 50, adds=True)
    act, _ = run(pressed(here, press), at(here, "release", 40, 50, adds=True))
    assert act == FacePick(frozenset({LAMP, SWITCH}), frozenset())
    here = around(selected=frozenset({LAMP, SWITCH}))
    act, _ = run(pressed(here, at(here, "press", 40, 50, adds=True)), at(here, "release", 40, 50))
    assert act.ids == {LAMP}


def test_a_part_in_hand_is_turned_and_set_down_on_the_spacing_of_the_face_only():
    here = around()
    act, previews = run(
        place_on_face(here, KINDS["toggle-on-off"], str),
        at(here, "move", 101, 78),
        key("turn", 101, 78),
        at(here, "move", 230, 50),
        at(here, "press", 230, 50),
        at(here, "move", 101, 78),
        at(here, "press", 101, 78),
    )
    assert previews[1].ghost.x_mm == 200 and previews[2].ghost.turn_deg == 90
    assert previews[4].hint == BESIDE
    new = act.edit.apply(here.plan)
    part = new.parts[list(new.parts)[-1]]
    assert (part.x_mm, part.y_mm, part.turn_deg, part.panel) == (200, 380, 90, PANEL)


def test_a_line_ends_with_two_clicks_however_slow_and_one_point_is_taken_back():
    here = around()
    act, previews = run(
        draw_line(here),
        at(here, "press", 11, 21),
        at(here, "press", 100, 50),
        key("back", 100, 50),
        at(here, "press", 80, 20),
        at(here, "press", 80, 20),
    )
    assert len(previews[2].outline) == 2
    assert act.edit.apply(here.plan).panels[PANEL].lines[1].points == ((10, 20), (80, 20))


def test_a_legend_is_asked_for_where_the_click_was_and_typed_anew_by_two():
    here = around()
    act, _ = run(put_text(here), at(here, "press", 99, 52))
    assert act == FaceWrite((100, 50))
    assert double(here, at(here, "double", 40, 75)) == FaceWrite((40, 75), 0)
    assert double(here, at(here, "double", 40, 50)) is None


def test_two_clicks_on_a_wire_behind_bend_it():
    here = around(behind=True)
    (wire,) = (w for w in here.plan.wires.values() if w.colour == "OG")
    act = double(here, at(here, "double", 60, 50))
    assert isinstance(act, FaceDo)
    assert len(act.edit.apply(here.plan).wires[wire.id].bends) == 1


def test_closing_a_gesture_leaves_no_trace():
    here = around(behind=True)
    gesture = pull_on_face(here)
    run(gesture, at(here, "press", *terminal_places(here.sight)[TerminalRef(SWITCH, "14")], landing=True))
    gesture.close()
    assert here.plan is PAINTED
