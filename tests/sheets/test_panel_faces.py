"""Track lines and legends on paper: on the front, on the template, on plans and for a phone."""

import math

import pytest
from support.benches import BUTTON, LAMP, PANEL, SWITCH, panel_plan
from support.editing import KINDS, done

from wiring.drawings.plan_view import plan_view
from wiring.edits.face_items import add_line, add_text
from wiring.edits.panel_harness import bring_out
from wiring.edits.panels import change_panel
from wiring.edits.set_value import set_field
from wiring.findings.panel_fit import find
from wiring.findings.situation import examine
from wiring.pictures.metrics import cap_mm, overlap, words_box
from wiring.pictures.picture import Disc, Path, Words
from wiring.pictures.svg import svg_text
from wiring.plan.panel_bodies import bodies_on, gap_mm
from wiring.sheets.carry.carry_sheet import carry_sheet
from wiring.sheets.panel_front import front_view
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.panel_template import faces

RED, GREEN = "#c8281e", "#2b8a3e"


def painted():
    return done(
        panel_plan(),
        add_line(PANEL, [(10, 20), (190, 20)], 5, "RD"),
        add_line(PANEL, [(60, 20), (90, 70), (250, 70)], 3, "GN"),
        add_text(PANEL, "QUAY ROAD", 150, 80, high_mm=4, colour="BK"),
        add_text(PANEL, "UP", 12, 60, turn_deg=90, colour="WH"),
    )


def lines_of(items, colour):
    return [i for i in items if isinstance(i, Path) and i.pen.colour == colour and not i.fill]


def words_of(items, text):
    (found,) = (i for i in items if isinstance(i, Words) and i.text == text)
    return found


def test_the_front_of_a_small_panel_is_printed_at_full_size_with_lines_as_wide_and_letters_as_high_as_told():
    (face,) = faces(painted(), KINDS)
    picture, scale = front_view(face, 260.0, 150.0)
    assert scale == 1.0
    (line,) = lines_of(picture.items, RED)
    assert line.points == ((10, 20), (190, 20)) and line.pen.width_mm == 5
    words = words_of(picture.items, "QUAY ROAD")
    assert words.at == (150, 80)
    assert cap_mm(words.size_mm, words.weight) == pytest.approx(4)


def test_what_reaches_over_the_face_is_cut_at_its_edge():
    (face,) = faces(painted(), KINDS)
    picture, _ = front_view(face, 260.0, 150.0)
    (line,) = lines_of(picture.items, GREEN)
    assert line.points[-1] == pytest.approx((200, 70))


def test_a_reduced_front_shrinks_lines_letters_and_places_alike():
    plan = change_panel(PANEL, width_mm=600).apply(painted())
    (face,) = faces(plan, KINDS)
    picture, scale = front_view(face, 260.0, 150.0)
    assert scale < 1
    assert lines_of(picture.items, RED)[0].pen.width_mm == pytest.approx(5 * scale)
    assert words_of(picture.items, "QUAY ROAD").at == pytest.approx((150 * scale, 80 * scale))


def test_a_face_with_legends_bears_no_label_beside_them_and_one_without_bears_them_all():
    plan = set_field([SWITCH], label="quay lamps").apply(panel_plan())
    (bare,) = faces(plan, KINDS)
    assert words_of(front_view(bare, 260.0, 150.0)[0].items, "quay lamps")
    (said,) = faces(add_text(PANEL, "LIGHTS", 40, 70).apply(plan), KINDS)
    texts = {i.text for i in front_view(said, 260.0, 150.0)[0].items if isinstance(i, Words)}
    assert "LIGHTS" in texts and "quay lamps" not in texts


def test_the_template_shows_them_in_pencil_only_at_full_size_under_the_holes():
    (leaf,) = (
        x for x in panel_sections(painted(), KINDS, "A4")[0].leaves if x.scale == "1:1" and "templ" in x.kind
    )
    assert not lines_of(leaf.items, RED) and not lines_of(leaf.items, GREEN)
    words = words_of(leaf.items, "QUAY ROAD")
    assert words.colour == "quiet" and cap_mm(words.size_mm, "semibold") == pytest.approx(4)
    hole = next(i for i in leaf.items if isinstance(i, Disc))
    switch = painted().parts[SWITCH]
    dx, dy = words.at[0] - hole.centre[0], words.at[1] - hole.centre[1]
    assert (dx, dy) == pytest.approx((100 + 150 - switch.x_mm, 300 + 80 - switch.y_mm))
    order = [i for i, item in enumerate(leaf.items) if item is words or item is hole]
    assert leaf.items[order[0]] is words


def test_the_plan_from_above_shows_the_face_and_from_below_only_its_pencil():
    above = plan_view(painted(), KINDS).items
    below = plan_view(painted(), KINDS, below=True).items
    assert lines_of(above, GREEN)[0].pen.width_mm > 0
    # a red or green wire is drawn with an edge in ink before it; the face's lines are gone from below
    wires = len(lines_of(plan_view(panel_plan(), KINDS, below=True).items, GREEN))
    assert len(lines_of(below, GREEN)) == wires < len(lines_of(above, GREEN))


def test_legends_reach_the_svg_and_the_carry_sheet():
    plan = add_text(PANEL, "NORTH BAY", 100, 50, high_mm=12).apply(painted())
    assert "NORTH BAY" in svg_text(plan_view(plan, KINDS))
    assert "NORTH BAY" in carry_sheet(examine(plan, KINDS, outlooks=False))


def test_the_harness_is_a_table_of_ways_and_a_row_of_the_harness_list():
    from wiring.sheets.harness_list import harness_rows

    plan = bring_out(PANEL).apply(painted())
    leaves = panel_sections(plan, KINDS, "A4")[0].leaves
    texts = [i.text for leaf in leaves for i in leaf.items if isinstance(i, Words)]
    assert "Quay panel: harness" in texts
    (row,) = harness_rows(plan, KINDS)
    assert row.name == "Quay panel harness" and len(row.labels) == 4 and row.fits
    for label in row.labels:
        assert label in texts


def test_barrels_are_round_and_boxes_are_not():
    plan = panel_plan()
    switch, button, lamp = bodies_on(plan, KINDS, plan.panels[PANEL])
    assert [b.part.id for b in (switch, button, lamp)] == [SWITCH, BUTTON, LAMP]
    assert switch.radius_mm == 0 and (button.radius_mm, lamp.radius_mm) == (6, 4)
    assert gap_mm(button, lamp) == pytest.approx(math.hypot(50, 20) - 10)
    assert gap_mm(switch, button) == pytest.approx(50 - 6.5 - 6)


@pytest.mark.parametrize(("room_mm", "told"), [(0, 0), (30, 0), (29, 1), (24, 1)])
def test_a_part_deeper_than_the_room_behind_the_face_is_told(room_mm, told):
    plan = change_panel(PANEL, room_mm=room_mm).apply(panel_plan())
    found = list(find(examine(plan, KINDS, outlooks=False)))
    assert len(found) == told
    if told:
        deep = {p for p in (SWITCH, BUTTON, LAMP) if KINDS[plan.parts[p].kind].behind_mm > room_mm}
        assert set(found[0].parts) == deep
        assert f"where there are {room_mm:g} mm" in found[0].what


@pytest.mark.parametrize(("apart", "told"), [(11.9, True), (12.1, False)])
def test_two_barrels_need_two_millimetres_between_their_rims_however_they_stand(apart, told):
    plan = panel_plan()
    x, y = plan.parts[BUTTON].x_mm, plan.parts[BUTTON].y_mm
    off = apart / math.sqrt(2)
    plan = set_field([LAMP], x_mm=x + off, y_mm=y + off).apply(plan)
    assert bool(list(find(examine(plan, KINDS, outlooks=False)))) is told


def test_no_legend_of_the_front_lies_on_another_word_of_it_in_the_demos():
    from pathlib import Path as FilePath

    from wiring.files.store import load

    for name in ("siding", "harbour"):
        plan = load(FilePath(__file__).parents[2] / "demo_layouts" / f"{name}.underboard")
        for face in faces(plan, KINDS):
            picture, _ = front_view(face, 255.0, 140.0)
            boxes = [words_box(w) for w in picture.items if isinstance(w, Words)]
            for i, one in enumerate(boxes):
                assert not any(overlap(one, other, 0.3) for other in boxes[i + 1 :])


def test_the_back_of_a_panel_is_shown_with_its_plug_which_no_other_sheet_shows_again():
    from wiring.drawings.plan_windows import windows
    from wiring.sheets.plan_sheets import rear_areas

    plan = bring_out(PANEL).apply(painted())
    (plug,) = (p for p in plan.parts.values() if p.kind.startswith("plug-"))
    back, *others = (w.area for w in windows(plan, KINDS, ((255.0, 153.0),)))
    assert rear_areas(plan, KINDS) == (back,)
    assert back.holds(plug.x_mm, plug.y_mm)
    assert others and not any(w.holds(plug.x_mm, plug.y_mm) for w in others)
