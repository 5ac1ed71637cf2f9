"""Wireways on the drawing surface: drawn, grabbed by corners, wires led along them side by side."""

import math
from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.gesture_runs import KINDS
from support.surfaces import Desk

from app.canvas.hands.wireway_menu import route_all
from app.canvas.hits.hit import Hit
from app.canvas.wireway_lanes import IN_WAY_MM
from wiring.edits.connect import connect
from wiring.edits.place_part import place
from wiring.edits.place_row import place_row
from wiring.edits.wireways import add_wireway
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

Key = Qt.Key


def beam_plan() -> Plan:
    plan = Plan()
    edits = (
        place_row(KINDS["lamp-12v"], (100, 100), (500, 100), count=3),
        place(KINDS["terminal-strip-4"], 300, 400),
        *(connect(TerminalRef("p4", str(n)), TerminalRef(f"p{n}", "1")) for n in (1, 2, 3)),
    )
    for edit in edits:
        plan = edit.apply(plan)
    return plan


@pytest.fixture
def desk(qtbot):
    return Desk(qtbot, beam_plan(), centre=(300, 250))


def draw_beam(desk):
    desk.view.begin_draw("wireway")
    for x, y in ((50, 250), (300, 250), (550, 250)):
        desk.click(x, y)
    desk.key(Key.Key_Return)


def menu_of(desk, way_id, corner=-1, at=(180, 250)) -> dict:
    menu = desk.view.menu_for(Hit(at, way=way_id, corner=corner), desk.px(*at))
    return {action.text().split(":")[0].split("\t")[0]: action for action in menu.actions()}


def test_a_wireway_is_drawn_corner_by_corner_and_the_arrow_comes_back(desk):
    draw_beam(desk)
    (way,) = desk.plan.wireways.values()
    assert way.points == ((50, 250), (300, 250), (550, 250)) and way.name == "Wireway 1"
    assert desk.view.tool == "select" and desk.session.undo_label == "Draw wireway"


def test_wires_are_led_along_it_each_in_a_lane_of_its_own(desk):
    draw_beam(desk)
    route_all(desk.session)
    assert [w.along for w in desk.plan.wires.values()] == [("y8",)] * 3
    geometry = desk.view.sight().geometry
    heights = [y for w in desk.plan.wires for (_, y), (_, z) in pairwise(geometry.paths[w]) if y == z]
    assert sorted(round(y - 250, 3) for y in heights) == [-IN_WAY_MM, 0, IN_WAY_MM]


def test_a_corner_is_dragged_and_the_wires_follow_in_the_same_step(desk):
    draw_beam(desk)
    route_all(desk.session)
    before = desk.plan
    desk.drag((550, 250), (550, 300))
    (way,) = desk.plan.wireways.values()
    assert way.points[2] == (550, 300)
    ends = [w.bends[-1] for w in desk.plan.wires.values()]
    assert ends[2] != before.wires["w7"].bends[-1]
    slope = (300 - 250) / (550 - 300)
    assert math.isclose(ends[2][1], 250 + slope * (ends[2][0] - 300), abs_tol=0.01)
    desk.session.undo()
    assert desk.plan is before


def test_escape_leaves_the_corner_where_it_was(desk):
    draw_beam(desk)
    before = desk.plan
    desk.press(550, 250)
    desk.move(550, 320)
    assert desk.view._acting.preview.outline[-1] == (550, 320)
    desk.key(Key.Key_Escape)
    desk.release(550, 320)
    assert desk.plan is before


def test_its_words_tell_the_bundle(desk):
    draw_beam(desk)
    desk.move(180, 250)
    assert desk.view.words(desk.view._hovered) == "Wireway “Wireway 1”, hole 20 mm, empty"
    route_all(desk.session)
    hit = desk.view._hit(desk.px(530, 256).x(), desk.px(530, 256).y())
    assert "3 wires fill" in desk.view.words(hit)


def typed(desk, entry, words, key=Key.Key_Return):
    menu_of(desk, "y8")[entry].trigger()
    QTest.keyClicks(desk.view.typing.line, words)
    QTest.keyClick(desk.view.typing.line, key)


def test_its_menu_sets_hole_and_drops_in_any_unit_names_and_removes_it(desk):
    draw_beam(desk)
    typed(desk, "Narrowest hole", "1 in")
    assert desk.plan.wireways["y8"].hole_mm == 25.4
    typed(desk, "Drop to the terminals", "wide")
    assert desk.view.typing._fault.text() and desk.plan.wireways["y8"].drop_mm == 80
    QTest.keyClick(desk.view.typing.line, Key.Key_Escape)
    typed(desk, "Drop to the panels", "25 cm")
    assert desk.plan.wireways["y8"].fascia_drop_mm == 250
    typed(desk, "Rename wireway…", "Back beam")
    assert desk.plan.wireways["y8"].name == "Back beam"
    menu_of(desk, "y8")["Remove wireway"].trigger()
    assert not desk.plan.wireways


def test_a_corner_is_added_by_two_clicks_and_taken_away_from_the_menu(desk):
    draw_beam(desk)
    place = desk.px(180, 250)
    QTest.mouseDClick(desk.view, Qt.MouseButton.LeftButton, pos=place)
    assert desk.plan.wireways["y8"].points == ((50, 250), (180, 250), (300, 250), (550, 250))
    menu_of(desk, "y8", corner=2)["Remove this corner"].trigger()
    assert desk.plan.wireways["y8"].points == ((50, 250), (180, 250), (550, 250))
    menu_of(desk, "y8", at=(400, 252))["A corner here"].trigger()
    assert desk.plan.wireways["y8"].points[2] == (400, 250)


def test_a_click_selects_it_arrows_shift_it_and_delete_removes_it(desk):
    draw_beam(desk)
    route_all(desk.session)
    desk.click(60, 252)
    assert desk.selection.ground == "y8" and not desk.selection.ids
    desk.key(Key.Key_Down)
    assert {y for _, y in desk.plan.wireways["y8"].points} == {260}
    assert all(w.bends[0][1] == 260 for w in desk.plan.wires.values())
    desk.key(Key.Key_Escape)
    assert desk.selection.ground == ""
    desk.click(60, 262)
    desk.key(Key.Key_Delete)
    assert not desk.plan.wireways and all(not w.along for w in desk.plan.wires.values())


def test_routing_without_a_wireway_says_what_to_do(desk):
    told = []
    desk.session.refused.connect(told.append)
    route_all(desk.session)
    assert told == ["The plan has no wireway yet; draw one first, along a beam for example."]


def test_what_is_fed_follows_the_wireways_at_once(qtbot):
    plan = Plan()
    for edit in (
        place(KINDS["supply-regulated"], 60, 420),
        place_row(KINDS["lamp-12v"], (200, 100), (500, 100), count=3),
        add_wireway([(120, 400), (120, 250), (560, 250)], "Beam"),
    ):
        plan = edit.apply(plan)
    desk = Desk(qtbot, plan, centre=(300, 250))
    desk.selection.select(plan.parts)
    desk.view.begin_feed()
    desk.key(Key.Key_Return)
    along = [w.along for w in desk.plan.wires.values()]
    assert len(along) == 6 and along.count(("y5",)) == 2


def test_the_menu_of_a_wire_routes_it_lays_it_anew_and_swaps_its_ends(desk):
    draw_beam(desk)
    desk.selection.select(["w5"])
    before = desk.plan.wires["w5"]

    def entry(words):
        menu = desk.view.menu_for(Hit((0, 0), wire="w5"), desk.px(0, 0))
        return next(a for a in menu.actions() if a.text().split("\t")[0] == words)

    entry("Route along wireways").trigger()
    assert desk.plan.wires["w5"].along == ("y8",) and desk.plan.wires["w6"].along == ()
    entry("Lay anew, clear of others").trigger()
    laid = desk.plan.wires["w5"]
    assert laid.along == () and all(x == z or y == w for (x, y), (z, w) in pairwise(laid.bends))
    entry("Swap its ends").trigger()
    assert (desk.plan.wires["w5"].start, desk.plan.wires["w5"].end) == (before.end, before.start)
