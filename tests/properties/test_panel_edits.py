"""What always holds for edits of a panel: sound, undone and redone whole, harness true to the wires."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.benches import BUTTON, LAMP, PANEL, STRIP, SWITCH, panel_plan
from support.editing import KINDS, done

from wiring.circuit.solve import solve
from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.face_items import (
    add_line,
    add_text,
    change_item,
    move_items,
    move_line_corner,
)
from wiring.edits.face_legends import legends_from_labels
from wiring.edits.face_shift import remove_from_face
from wiring.edits.history import Step, begun, recorded, redone, undone
from wiring.edits.move import move
from wiring.edits.panel_harness import bring_out
from wiring.edits.panel_spacing import in_steps, onto_spacing
from wiring.edits.panels import add_panel, change_panel
from wiring.edits.place_part import place
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable
from wiring.plan.harness import harness_of, leaving
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.plan.soundness import unsound

PLACES = st.floats(-300, 500)
INDICES = st.integers(-1, 3)
EDITS = st.one_of(
    st.builds(
        add_line,
        st.just(PANEL),
        st.lists(st.tuples(PLACES, PLACES), min_size=1, max_size=4),
        st.sampled_from([0.0, 0.5, 4.0, 60.0]),
        st.sampled_from(["BK", "wh", "GNYE", "RDWH"]),
    ),
    st.builds(add_text, st.just(PANEL), st.sampled_from(["DOCK", " ", "A\nB"]), PLACES, PLACES),
    st.builds(change_item, st.just(PANEL), st.just("line"), INDICES, colour=st.sampled_from(["RD", "x"])),
    st.builds(
        change_item,
        st.just(PANEL),
        st.just("text"),
        INDICES,
        high_mm=st.sampled_from([0.1, 2.0]),
        text=st.just("B"),
    ),
    st.builds(move_line_corner, st.just(PANEL), INDICES, INDICES, PLACES, PLACES),
    st.builds(move_items, st.just(PANEL), st.sets(INDICES), st.sets(INDICES), PLACES, PLACES),
    st.builds(remove_from_face, st.just(PANEL), st.just(()), st.sets(INDICES), st.sets(INDICES)),
    st.builds(change_panel, st.just(PANEL), spacing_mm=st.sampled_from([0, 0.5, 10, 12.5]), x_mm=PLACES),
    st.builds(onto_spacing, st.just(PANEL), st.sets(st.sampled_from([SWITCH, BUTTON, LAMP]))),
    st.builds(in_steps, st.just(PANEL), st.sets(st.sampled_from([SWITCH, BUTTON])), st.just("across")),
    st.builds(bring_out, st.just(PANEL)),
    st.builds(legends_from_labels, st.just(PANEL)),
    st.builds(move, st.sets(st.sampled_from([SWITCH, LAMP, STRIP])), PLACES, PLACES),
)


@settings(deadline=None, max_examples=35)
@given(st.lists(EDITS, max_size=12))
def test_any_edits_of_a_panel_are_sound_and_undone_and_redone_whole(edits):
    history = begun(panel_plan())
    first = history.now.plan
    for edit in edits:
        try:
            new = edit.apply(history.now.plan)
        except EditRefused as refusal:
            assert str(refusal).endswith(".") and "\n" not in str(refusal)
            continue
        if new is not history.now.plan:
            assert new != history.now.plan, edit.label
            assert unsound(new, KINDS) == ()
            assert decode(encode(new)) == new
            history = recorded(history, Step(edit.label, new))
    last = history.now.plan
    while history.undo_label is not None:
        history = undone(history)
    assert history.now.plan is first
    while history.redo_label is not None:
        history = redone(history)
    assert history.now.plan is last


def fed() -> Plan:
    """Return the panel with its strip fed from a battery, so that currents flow through the harness."""
    plan = done(
        panel_plan(), place(KINDS["supply-regulated"], 200, -100), place(KINDS["lamp-12v"], 300, -100)
    )
    supply, lamp = list(plan.parts)[-2:]
    return done(
        plan,
        connect(TerminalRef(supply, "+"), TerminalRef(STRIP, "1"), colour="RD"),
        connect(TerminalRef(STRIP, "2"), TerminalRef(lamp, "1"), colour="GN"),
        connect(TerminalRef(lamp, "2"), TerminalRef(supply, "-"), colour="BK"),
        connect(TerminalRef(STRIP, "4"), TerminalRef(supply, "+"), colour="BU"),
        connect(TerminalRef(LAMP, "K"), TerminalRef(supply, "-"), colour="BK"),
    )


def test_every_wire_that_left_goes_through_one_way_with_its_colour_and_size():
    before = fed()
    panel = before.panels[PANEL]
    out = leaving(before, KINDS, panel)
    plan = bring_out(PANEL).apply(before)
    assert leaving(plan, KINDS, panel) == ()
    harness = harness_of(plan, KINDS, panel)
    assert harness is not None and len(harness.plugs) == 1
    assert len(harness.inner) == len(out) == 5
    ways = {way.outer.label: way for way in harness.ways if way.outer is not None}
    for wire in out:
        inner, outer = ways[wire.label].inner, ways[wire.label].outer
        assert (inner.colour, inner.size) == (outer.colour, outer.size) == (wire.colour, wire.size)
        own = wire.start if wire.start.part in (SWITCH, BUTTON, LAMP) else wire.end
        assert own in (inner.start, inner.end)
        assert {wire.start, wire.end} - {own} <= {outer.start, outer.end}
    assert set(harness.wireways) == {w for i in harness.inner for w in i.along} and len(harness.wireways) == 1


def test_the_harness_changes_no_light_by_more_than_its_contacts_cost():
    before = fed()
    plan = bring_out(PANEL).apply(before)
    old, new = (solve(p, KINDS, in_use(p, KINDS)) for p in (before, plan))
    assert new.problems == old.problems == ()
    lit = [i for i, figure in old.parts.items() if figure.light]
    assert len(lit) == 2
    for part in lit:
        assert new.parts[part].light == pytest.approx(old.parts[part].light, rel=0.02)


def test_a_second_time_fills_free_ways_and_then_adds_a_plug():
    plan = bring_out(PANEL).apply(panel_plan())
    (plug,) = harness_of(plan, KINDS, plan.panels[PANEL]).plugs
    assert plug.kind == "plug-4"
    with pytest.raises(EditRefused, match="No wire leads from the panel Quay panel"):
        bring_out(PANEL).apply(plan)
    more = connect(TerminalRef(BUTTON, "14"), TerminalRef(STRIP, "6"), colour="VT").apply(plan)
    again = bring_out(PANEL).apply(more)
    plugs = harness_of(again, KINDS, again.panels[PANEL]).plugs
    assert [p.kind for p in plugs] == ["plug-4", "plug-2"]
    eight = fed()
    roomy = bring_out(PANEL).apply(eight)
    (plug,) = harness_of(roomy, KINDS, roomy.panels[PANEL]).plugs
    assert plug.kind == "plug-8"
    added = connect(TerminalRef(BUTTON, "14"), TerminalRef(STRIP, "6"), colour="VT").apply(roomy)
    filled = bring_out(PANEL).apply(added)
    assert [p.id for p in harness_of(filled, KINDS, filled.panels[PANEL]).plugs] == [plug.id]
    assert len(harness_of(filled, KINDS, filled.panels[PANEL]).inner) == 6


@pytest.mark.parametrize("shift", [(0, -400), (0, 700), (-700, 250), (800, 250)])
def test_the_plug_stands_free_beyond_the_edge_that_faces_the_layout(shift):
    plan = move([STRIP], shift[0], shift[1]).apply(panel_plan())
    new = bring_out(PANEL).apply(plan)
    panel = new.panels[PANEL]
    (plug,) = harness_of(new, KINDS, panel).plugs
    strip = new.parts[STRIP]
    inside_x = panel.x_mm <= plug.x_mm <= panel.x_mm + panel.width_mm
    inside_y = panel.y_mm <= plug.y_mm <= panel.y_mm + panel.height_mm
    assert not (inside_x and inside_y)
    middle = panel.x_mm + panel.width_mm / 2, panel.y_mm + panel.height_mm / 2
    towards = (plug.x_mm - middle[0]) * (strip.x_mm - middle[0]) + (plug.y_mm - middle[1]) * (
        strip.y_mm - middle[1]
    )
    assert towards > 0


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (b'"width_mm": 7', b'"wide_mm": 7', "field “wide_mm”"),
        (b'"high_mm": 9', b'"high": 9', "field “high”"),
        (b'"width_mm": 7', b'"width_mm": 70', "between 0.2 and 50 mm wide"),
        (b'"colour": "RD"', b'"colour": "RDWH"', "one colour of IEC 60757"),
    ],
)
def test_a_face_with_a_slip_in_its_file_is_refused_in_one_sentence_that_names_the_panel(old, new, said):
    plan = done(
        panel_plan(),
        add_line(PANEL, [(0, 0), (9, 9)], 7, "RD"),
        add_text(PANEL, "DOCK", 5, 5, high_mm=9),
    )
    data = encode(plan)
    assert decode(data) == plan and old in data
    with pytest.raises(NotReadable) as refusal:
        decode(data.replace(old, new))
    words = str(refusal.value)
    assert said in words and (PANEL in words or "Quay panel" in words) and words.endswith(".")


def test_a_panel_takes_its_harness_along_when_it_is_moved():
    plan = bring_out(PANEL).apply(panel_plan())
    harness = harness_of(plan, KINDS, plan.panels[PANEL])
    (way_id,) = harness.wireways
    new = change_panel(PANEL, x_mm=plan.panels[PANEL].x_mm + 30, y_mm=plan.panels[PANEL].y_mm - 7).apply(plan)
    for old_points, points in [
        (plan.wireways[way_id].points, new.wireways[way_id].points),
        *((w.bends, new.wires[w.id].bends) for w in harness.inner),
    ]:
        assert points == tuple((x + 30, y - 7) for x, y in old_points)
    moved = new.parts[harness.plugs[0].id]
    assert (moved.x_mm, moved.y_mm) == (harness.plugs[0].x_mm + 30, harness.plugs[0].y_mm - 7)
    assert change_panel(PANEL, name="Other").apply(plan).wireways is plan.wireways


def test_a_face_with_nothing_but_paint_has_its_sheets():
    from wiring.pictures.picture import Words
    from wiring.sheets.panel_sheets import panel_sections

    plan = done(
        Plan(), add_panel("Name plate", 0, 0, 150, 40), add_text(PANEL, "KELP BAY", 75, 20, high_mm=12)
    )
    (leaf,) = panel_sections(plan, KINDS, "A4")[0].leaves
    assert "KELP BAY" in [i.text for i in leaf.items if isinstance(i, Words)]
