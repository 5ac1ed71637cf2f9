"""What always holds when a plug, a panel or a part of it is moved: its harness goes with it, whole."""

import itertools
import math

import msgspec
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from support.benches import BUTTON, LAMP, PANEL, STRIP, SWITCH, panel_plan
from support.editing import KINDS, done
from support.findings import found, rules

from app.canvas.sub_plan import sub_plan
from wiring.edits.align import align
from wiring.edits.connect import reconnect
from wiring.edits.distribute import distribute
from wiring.edits.face_shift import shift_each_on_face
from wiring.edits.harness_bundle import frame_of_plug
from wiring.edits.harness_follow import with_harness_of
from wiring.edits.laying import body_box
from wiring.edits.mirror import mirror
from wiring.edits.move import move
from wiring.edits.panel_harness import bring_out
from wiring.edits.panel_spacing import in_steps, onto_spacing
from wiring.edits.panels import change_panel
from wiring.edits.place_part import place as place_part
from wiring.edits.tables import with_records
from wiring.edits.turn import turn
from wiring.edits.wireways import move_corner
from wiring.plan.harness import harness_of
from wiring.plan.names import TerminalRef
from wiring.plan.panel_places import holds
from wiring.plan.places import terminal_at
from wiring.plan.soundness import unsound

OUT = bring_out(PANEL).apply(panel_plan())
(PLUG,) = harness_of(OUT, KINDS, OUT.panels[PANEL]).plugs
(WAY,) = harness_of(OUT, KINDS, OUT.panels[PANEL]).wireways
BY_HAND = move_corner(WAY, 1, OUT.wireways[WAY].points[1][0], OUT.wireways[WAY].points[1][1] + 7).apply(OUT)
STEPS = st.integers(-300, 300).map(float)
QUICK = settings(max_examples=40, deadline=None)


def inner(plan):
    return harness_of(plan, KINDS, plan.panels[PANEL]).inner


def outer(plan):
    ways = harness_of(plan, KINDS, plan.panels[PANEL]).ways
    return [way.outer for way in ways if way.outer is not None]


def place(plan, ref):
    part = plan.parts[ref.part]
    return terminal_at(part, KINDS[part.kind], ref.terminal)


def legs(plan, wire):
    points = [place(plan, wire.start), *wire.bends, place(plan, wire.end)]
    return list(itertools.pairwise(points))


def is_square(leg):
    (ax, ay), (bx, by) = leg
    return abs(ax - bx) < 0.01 or abs(ay - by) < 0.01


@QUICK
@given(st.sampled_from([OUT, BY_HAND]), STEPS, STEPS)
def test_wherever_the_plug_goes_the_bundle_ends_at_it(plan, dx, dy):
    there = plan.parts[PLUG.id].x_mm + dx, plan.parts[PLUG.id].y_mm + dy
    assume(not holds(plan.panels[PANEL], *there))
    new = move([PLUG.id], dx, dy).apply(plan)
    assert unsound(new, KINDS) == () and new.parts[PLUG.id].panel == PANEL
    end = new.wireways[WAY].points[-1]
    assert all(wire.bends[-1] == end and wire.along == (WAY,) for wire in inner(new))
    before = math.dist(plan.wireways[WAY].points[-1], (PLUG.x_mm, PLUG.y_mm))
    assert math.dist(end, there) <= before + abs(dx) + abs(dy)
    if plan is BY_HAND:
        assert math.dist(end, there) == pytest.approx(before, abs=0.01)


@QUICK
@given(STEPS, st.integers(-200, 30).map(float))
def test_a_bundle_as_it_was_brought_out_is_brought_out_anew_and_comes_back_the_same(dx, dy):
    new = move([PLUG.id], dx, dy).apply(OUT)
    for wire in inner(new):
        assert all(map(is_square, legs(new, wire)[:-1])), wire.label
    back = move([PLUG.id], -dx, -dy).apply(new)
    assert back.wireways[WAY] == OUT.wireways[WAY]
    assert [w.bends for w in inner(back)] == [w.bends for w in inner(OUT)]


@QUICK
@given(st.sampled_from([OUT, BY_HAND]), STEPS, STEPS)
def test_a_panel_takes_its_harness_along_and_the_wires_to_the_layout_stay_square_at_the_plug(plan, dx, dy):
    panel = plan.panels[PANEL]
    new = change_panel(PANEL, x_mm=panel.x_mm + dx, y_mm=panel.y_mm + dy).apply(plan)
    assert new.wireways[WAY].points == tuple((x + dx, y + dy) for x, y in plan.wireways[WAY].points)
    for old, wire in zip(inner(plan), inner(new), strict=True):
        assert wire.bends == tuple((x + dx, y + dy) for x, y in old.bends)
    for old, wire in zip(outer(plan), outer(new), strict=True):
        if wire.bends and is_square(legs(plan, old)[0]):
            assert is_square(legs(new, wire)[0]), wire.label


@QUICK
@given(st.sampled_from([SWITCH, BUTTON, LAMP]), st.integers(-20, 20), st.integers(-20, 20))
def test_a_part_moved_on_the_face_leaves_no_slanted_wire_behind(part, dx, dy):
    new = move([part], dx, dy).apply(OUT)
    for wire in inner(new):
        assert all(map(is_square, legs(new, wire)[:-1])), wire.label


def test_bends_made_by_hand_stay_where_neither_end_has_moved():
    bent = inner(BY_HAND)[0]
    new = move([LAMP], 5, 0).apply(BY_HAND)
    for old, wire in zip(inner(BY_HAND), inner(new), strict=True):
        assert (wire.bends != old.bends) == (LAMP in (old.start.part, old.end.part))
    assert new.wireways == BY_HAND.wireways and bent in inner(new)


def test_aligning_and_turning_take_the_bundle_along_too():
    new = align([PLUG.id, STRIP], "column").apply(OUT)
    assert new.parts[PLUG.id].x_mm != PLUG.x_mm
    assert all(wire.bends[-1] == new.wireways[WAY].points[-1] for wire in inner(new))
    beside = done(OUT, move([PLUG.id], 160, 140), turn([PLUG.id], 90))
    end, panel = beside.wireways[WAY].points[-1], beside.panels[PANEL]
    assert end[0] == panel.x_mm + panel.width_mm + 12  # out over the right edge, to which the plug is turned


def test_a_plug_that_was_laid_on_the_face_for_a_while_stays_the_panels_own():
    on = move([PLUG.id], 150 - PLUG.x_mm, 350 - PLUG.y_mm).apply(OUT)
    off = move([PLUG.id], 300, -200).apply(on)
    assert off.parts[PLUG.id].panel == PANEL and len(inner(off)) == len(inner(OUT))


@QUICK
@given(st.sampled_from([PLUG.id, SWITCH]), STEPS, STEPS)
def test_the_preview_of_a_drag_shows_what_will_be(part, dx, dy):
    touched = frozenset({part}) | with_harness_of(OUT, {part}, KINDS)
    some = move([part], dx, dy).apply(sub_plan(OUT, touched))
    whole = move([part], dx, dy).apply(OUT)
    assert {w: some.wires[w] for w in some.wires} == {w: whole.wires[w] for w in some.wires}
    assert some.wireways == whole.wireways


def test_nothing_is_touched_on_a_plan_without_a_harness():
    plain = panel_plan()
    assert with_harness_of(plain, {SWITCH}, KINDS) == frozenset()
    new = move([SWITCH], 5, 5).apply(plain)
    assert {i for i in new.wires if new.wires[i] is not plain.wires[i]} == set()


def test_a_switch_of_a_kind_nobody_knows_any_more_keeps_its_place_in_the_bundle():
    fewer = {key: kind for key, kind in KINDS.items() if key != "toggle-on-off"}
    new = move([PLUG.id], -40, -10, kinds=fewer).apply(OUT)
    assert all(wire.bends[-1] == new.wireways[WAY].points[-1] for wire in inner(new))
    assert new.wireways[WAY].points[-1] == (
        OUT.wireways[WAY].points[-1][0] - 40,
        OUT.wireways[WAY].points[-1][1] - 10,
    )


OWN_KEY = "own-toggle"
OWN_KINDS = {**KINDS, OWN_KEY: msgspec.structs.replace(KINDS["toggle-on-off"], key=OWN_KEY)}
EDITS = {
    "move": lambda kinds: move([PLUG.id], -40, -10, kinds=kinds),
    "turn": lambda kinds: turn([PLUG.id], 180, kinds=kinds),
    "turn several": lambda kinds: turn([PLUG.id, STRIP], 90, kinds=kinds),
    "align": lambda kinds: align([PLUG.id, STRIP], "column", kinds=kinds),
    "space out": lambda kinds: distribute([PLUG.id, SWITCH, STRIP], "across", kinds=kinds),
    "onto the spacing": lambda kinds: onto_spacing(PANEL, [SWITCH, BUTTON], kinds=kinds),
    "in steps": lambda kinds: in_steps(PANEL, [SWITCH, BUTTON, LAMP], "across", kinds=kinds),
    "on the face": lambda kinds: shift_each_on_face("", PANEL, {SWITCH: (7, 3)}, {}, {}, kinds=kinds),
    "panel": lambda kinds: change_panel(PANEL, x_mm=130.0, width_mm=230.0, kinds=kinds),
    "mirror": lambda kinds: mirror([SWITCH, BUTTON, LAMP], "across", kinds=kinds),
}


@pytest.mark.parametrize("name", EDITS)
def test_a_switch_of_the_users_own_kind_goes_with_its_bundle_as_a_built_in_one_does(name):
    switch = msgspec.structs.replace(OUT.parts[SWITCH], kind=OWN_KEY)
    own = with_records(OUT, [switch])
    there = EDITS[name](OWN_KINDS).apply(own)
    same = EDITS[name](KINDS).apply(OUT)
    assert dict(there.wires) == dict(same.wires) and dict(there.wireways) == dict(same.wireways)


@pytest.mark.parametrize("to", [(360, 350), (40, 350), (200, 460), (360, 420)])
def test_round_another_edge_the_wires_to_the_layout_leave_the_plug_square_and_apart(to):
    new = move([PLUG.id], to[0] - PLUG.x_mm, to[1] - PLUG.y_mm, kinds=KINDS).apply(OUT)
    assert new.parts[PLUG.id].turn_deg != PLUG.turn_deg
    first = []
    for wire in outer(new):
        ends = legs(new, wire) if wire.start.part == PLUG.id else legs(new, wire)[::-1]
        leg = ends[0] if wire.start.part == PLUG.id else ends[0][::-1]
        assert is_square(leg) and is_square(ends[1])
        first.append(leg)
    assert len({corner for _, corner in first}) == len(first)
    lanes = {round(c[0], 2) if is_level(leg) else round(c[1], 2) for leg in first for c in [leg[1]]}
    assert len(lanes) == len(first)  # each in a lane of its own
    assert unsound(new, KINDS) == ()


@pytest.mark.parametrize("x", [150, 200, 260])
def test_beyond_the_far_edge_the_wires_to_the_layout_go_round_the_face_apart_and_come_back_from_it(x):
    far = move([PLUG.id], x - PLUG.x_mm, 460 - PLUG.y_mm, kinds=KINDS).apply(OUT)
    face = far.panels[PANEL]
    lines = []
    for wire in outer(far):
        assert not any(holds(face, *at) for leg in legs(far, wire) for at in along(*leg))
        lines += [tuple(sorted(leg)) for leg in legs(far, wire)[1:-1]]
    assert len(set(lines)) == len(lines)
    body = body_box(far.parts[PLUG.id], KINDS[far.parts[PLUG.id].kind])
    for wire in outer(far):
        for leg in legs(far, wire):
            assert not any(body[0] < x < body[2] and body[1] < y < body[3] for x, y in along(*leg))
    back = move([PLUG.id], PLUG.x_mm - x, PLUG.y_mm - 460, kinds=KINDS).apply(far)
    for wire in outer(back):
        assert len(wire.bends) <= len(OUT.wires[wire.id].bends) + 1
        assert not any(holds(face, *at) for leg in legs(back, wire) for at in along(*leg))


def along(a, b):
    return [(a[0] + (b[0] - a[0]) * n / 50, a[1] + (b[1] - a[1]) * n / 50) for n in range(51)]


def test_a_plug_on_the_side_away_from_the_layout_earns_a_note_that_tells_where_it_belongs():
    far = move([PLUG.id], 0, 460 - PLUG.y_mm, kinds=KINDS).apply(OUT)
    note = found(far, "plug-far-side")
    assert note.parts == (PLUG.id,) and len(note.wires) == 4 and "beyond the lower edge" in note.what
    assert note.mend.startswith("Move -X2 beyond the upper edge")
    assert "plug-far-side" not in rules(OUT)
    beside = move([PLUG.id], 360 - PLUG.x_mm, 350 - PLUG.y_mm, kinds=KINDS).apply(OUT)
    assert "plug-far-side" not in rules(beside)


def test_the_plug_comes_beyond_the_edge_that_most_wires_lead_over_whatever_one_far_part_does():
    plan = done(
        panel_plan(),
        place_part(KINDS["terminal-strip-4"], 200, 3000),
        reconnect("w9", "end", TerminalRef("p11", "1")),
    )
    assert frame_side(done(plan, bring_out(PANEL))) == "top"
    assert "plug-far-side" not in rules(done(plan, bring_out(PANEL)))


def frame_side(plan):
    panel = plan.panels[PANEL]
    (plug,) = harness_of(plan, KINDS, panel).plugs
    return frame_of_plug(panel, plug).side


def is_level(leg):
    return abs(leg[0][1] - leg[1][1]) < 0.01
