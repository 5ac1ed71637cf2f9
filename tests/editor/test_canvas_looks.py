import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor
from support.gesture_runs import BATTERY, BLACK, KINDS, LAMP, RED, SWITCH
from support.surfaces import Desk, desk

from app.canvas.camera import Camera
from app.canvas.geometry import Box
from app.canvas.painting.flag_painter import flag_shape
from app.canvas.painting.label_places import label_places
from app.canvas.painting.label_room import LabelRoom
from app.canvas.painting.part_painter import shown_boxes
from app.canvas.painting.rulers import ruler_words
from app.canvas.painting.surface_painter import grid_steps_mm
from app.canvas.painting.wire_pens import thickness_mm, wire_pens
from app.canvas.wire_paths import along
from app.solving import Solving
from wiring.edits.connect import connect
from wiring.edits.set_plan import set_habits
from wiring.findings.finding import Rank
from wiring.pictures.theme import DARK, LIGHT
from wiring.plan.names import TerminalRef

__all__ = ["desk"]


def colour_at(desk, x, y) -> QColor:
    return desk.shot().pixelColor(desk.px(x, y))


def distance(a: QColor, b: QColor) -> int:
    return abs(a.red() - b.red()) + abs(a.green() - b.green()) + abs(a.blue() - b.blue())


def solved(desk):
    solving = Solving(desk.session, at_once=True, parent=desk.view)
    solving.answered.connect(desk.view.set_answer)
    solving.request()
    return solving


def whole_circuit(desk):
    """Close the circuit of the bench: battery, toggle and lamp."""
    desk.session.do(connect(TerminalRef(BATTERY, "+"), TerminalRef(SWITCH, "13"), colour="BU"))
    return solved(desk)


def test_a_wire_is_painted_in_its_insulation_colour(qtbot):
    desk = Desk(qtbot, scale=4.0, centre=(400, 250))
    assert distance(colour_at(desk, 400, 250), QColor("#c8281e")) < 30
    assert distance(colour_at(desk, 385, 245), QColor(LIGHT["paper"])) < 40


def test_a_pale_wire_has_an_edge_darker_than_the_paper():
    for letters in ("WH", "YE"):
        pens = wire_pens("22 AWG", letters, 4.0, False)
        assert pens.edge.color().lightnessF() < pens.core.color().lightnessF() - 0.2
        assert pens.edge.widthF() > pens.core.widthF()


def test_a_black_wire_stands_out_on_slate_and_a_stripe_shows_where_there_are_two_colours():
    black = wire_pens("22 AWG", "BK", 2.0, True)
    assert black.edge.color().lightnessF() > QColor(DARK["paper"]).lightnessF() + 0.2
    assert wire_pens("22 AWG", "GNWH", 2.0, False).stripe is not None
    assert wire_pens("22 AWG", "GN", 2.0, False).stripe is None


def test_thicker_wire_is_painted_thicker_and_what_nobody_knows_in_grey():
    assert thickness_mm("14 AWG") > thickness_mm("18 AWG") > thickness_mm("24 AWG")
    odd = wire_pens("a bit of string", "XQ", 2.0, False)
    assert odd.core.color().saturation() == 0


def test_light_and_dark_differ_and_paint_the_same_plan(desk):
    light = desk.shot()
    desk.view.set_theme(DARK)
    dark = desk.shot()
    spot = desk.px(150, 450)
    assert light.pixelColor(spot).lightness() > 200
    assert dark.pixelColor(spot).lightness() < 80
    desk.view.set_theme(LIGHT)
    assert desk.shot() == light


def test_a_lit_lamp_shines_on_the_paper_and_the_switch_puts_it_out(desk):
    solving = whole_circuit(desk)
    assert solving.answer.situation.figures.parts[LAMP].light > 0.1
    desk.move(800, 500)
    edge = desk.plan.parts[LAMP].x_mm - KINDS["building-led"].width_mm / 2 - 4
    lit = colour_at(desk, edge, 100)
    desk.session.throw(SWITCH, "off")
    solving.request()
    assert solving.answer.situation.figures.parts[LAMP].light < 0.01
    dark = colour_at(desk, edge, 100)
    assert dark.blue() - lit.blue() > 8  # lamplight takes the blue out of the paper


def test_figures_stand_beside_what_is_selected_and_go_with_it(desk):
    whole_circuit(desk)
    desk.move(800, 500)
    plain = desk.shot()
    desk.selection.select([RED])
    selected = desk.shot()
    assert selected != plain
    desk.selection.clear()
    assert desk.shot() == plain


@pytest.mark.parametrize("scale", [0.05, 0.3, 0.9, 2.5, 12.0])
def test_every_distance_and_both_units_can_be_painted(desk, scale):
    whole_circuit(desk)
    desk.selection.select([LAMP, RED])
    for units in ("metric", "us"):
        desk.session.do(set_habits(units=units))
        desk.look(scale, 300, 200)
        assert not desk.shot().isNull()


def test_a_part_of_an_unknown_kind_is_painted_and_can_be_moved(qtbot):
    import msgspec
    from support.gesture_runs import bench_plan

    plan = bench_plan()
    odd = msgspec.structs.replace(plan.parts[LAMP], kind="steam-organ")
    desk = Desk(qtbot, plan=plan.with_changes(parts={**plan.parts, LAMP: odd}))
    assert not desk.shot().isNull()
    desk.drag((500, 100), (560, 140))
    assert (desk.plan.parts[LAMP].x_mm, desk.plan.parts[LAMP].y_mm) == (560, 140)


def test_nothing_is_painted_anew_while_the_pointer_only_moves(desk):
    desk.shot()
    before = desk.view.repaints
    for x in range(100, 500, 40):
        desk.move(x, 300)
        desk.shot()
    assert desk.view.repaints == before


def test_a_drag_takes_what_moves_out_of_the_picture_once(desk):
    desk.shot()
    before = desk.view.repaints
    desk.press(100, 300)
    for x in range(110, 210, 10):
        desk.move(x, 300)
        desk.shot()
    assert desk.view.repaints == before + 1
    desk.release(200, 300)
    desk.shot()
    assert desk.view.repaints == before + 2


def test_the_view_shows_everything_and_goes_to_what_it_is_asked_for(desk):
    desk.view.show_all()
    seen = desk.view.sight().visible
    everything = desk.view.sight().geometry.everything()
    assert seen.left < everything.left
    assert seen.bottom > everything.bottom
    desk.look(3.0, 5000, 5000)
    desk.view.show_ids([BLACK])
    seen = desk.view.sight().visible
    wire = desk.view.sight().geometry.around([BLACK])
    assert seen.left <= wire.left
    assert seen.right >= wire.right


def test_boxes_on_the_screen_never_shrink_below_what_a_hand_can_hit(desk):
    desk.look(0.1, 300, 200)
    boxes = shown_boxes(desk.view.sight(), list(desk.plan.parts))
    assert (np.maximum(boxes[:, 2] - boxes[:, 0], boxes[:, 3] - boxes[:, 1]) >= 19.9).all()


def test_labels_keep_off_parts_and_each_other():
    parts = np.array([[100.0 * i, 0, 100.0 * i + 20, 20] for i in range(4)] + [[0, 26, 20, 46]])
    sizes = np.full((5, 2), (60.0, 15.0))
    places = label_places(parts, sizes, parts)
    assert all(p is not None for p in places)
    room = LabelRoom()
    for box in [Box(*row) for row in parts.tolist()] + places:
        assert room.is_free(box)
        room.take(box)


def test_a_label_with_no_room_is_left_out():
    part = np.array([[0.0, 0, 10, 10]])
    walls = np.array([[-200.0, 11, 200, 40], [-200, -40, 200, -1], [11, -40, 40, 40], [-40, -40, -1, 40]])
    assert label_places(part, np.array([(30.0, 15.0)]), walls) == [None]


def test_letters_stand_so_far_along_a_wire_whatever_its_corners():
    path = [(0.0, 0.0), (10.0, 0.0), (10.0, 40.0)]
    assert along(path, 4) == (4, 0)
    assert along(path, 15) == (10, 5)
    assert along(path, 26) is None  # it would stand nearer to the other end


def test_the_shape_of_a_flag_tells_its_rank():
    rect = QRectF(0, 0, 20, 20)
    corner, side = (1, 1), (1, 10)
    shapes = {rank: flag_shape(rank, rect) for rank in Rank}
    inside = {
        rank: tuple(shape.contains(QRectF(x, y, 0.1, 0.1)) for x, y in (corner, side, (17, 17), (5, 5)))
        for rank, shape in shapes.items()
    }
    assert len(set(inside.values())) == 3


@pytest.mark.parametrize(
    ("value", "units", "step", "words"),
    [
        (350, "metric", 50, "350"),
        (1200, "metric", 200, "1.2 m"),
        (-100, "metric", 100, "−100"),
        (0, "metric", 2000, "0 m"),
        (76.2, "us", 76.2, '3"'),
        (304.8, "us", 76.2, "1'"),
        (1371.6, "us", 76.2, "4' 6\""),
        (-381, "us", 76.2, "−1' 3\""),
    ],
)
def test_rulers_read_in_the_units_of_the_plan(value, units, step, words):
    assert ruler_words(value, units, step) == words


@pytest.mark.parametrize(("scale", "steps"), [(5.0, (10, 50)), (0.8, (50, 100)), (0.1, (100, 500))])
def test_the_grid_gets_wider_with_distance(scale, steps):
    assert grid_steps_mm("metric", scale) == steps
    assert all(step * scale >= 9 for step in grid_steps_mm("us", scale))


def test_a_camera_is_kept_when_the_window_grows_only_after_somebody_zoomed(desk):
    desk.view.show_all()
    first = desk.view.sight().camera
    desk.view.resize(500, 400)
    assert desk.view.sight().camera != first
    desk.view.zoom(1.5)
    zoomed = desk.view.sight().camera
    desk.view.resize(900, 640)
    assert isinstance(zoomed, Camera)
    assert desk.view.sight().camera == zoomed
