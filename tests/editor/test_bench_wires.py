"""Wires pulled, chosen, bent and taken away behind a panel on the bench, by mouse and by keys."""

import pytest
from PySide6.QtCore import Qt
from support.benches import BUTTON, LAMP, PANEL, STRIP, SWITCH, BenchDesk
from support.editing import KINDS
from support.surfaces import CTRL, SHIFT

from app.bench.face_hit import next_terminal, terminal_places
from app.bench.face_items import back_words
from app.bench.face_wires import courses
from wiring.edits.panel_harness import bring_out
from wiring.edits.place_part import place
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Words
from wiring.plan.changes import changes_between
from wiring.plan.names import TerminalRef
from wiring.plan.panel_places import plugs_of

Key = Qt.Key


@pytest.fixture
def back(qtbot):
    """The panel with its back up."""
    bench = BenchDesk(qtbot)
    bench.face_key(Key.Key_B)
    return bench


def spot(bench, part, name):
    return terminal_places(bench.face.sight())[TerminalRef(part, name)]


def added(bench, before):
    (new,) = changes_between(before, bench.plan).wires.added
    return bench.plan.wires[new]


def on(bench, wire_id):
    """A place on the first leg of a wire, a little way from its start."""
    a, b = courses(bench.face.sight())[wire_id][:2]
    return a[0] + (b[0] - a[0]) * 0.2, a[1] + (b[1] - a[1]) * 0.2


def label(items, text):
    return [i for i in items if isinstance(i, Words) and i.text == text]


def test_w_turns_the_panel_over_and_two_clicks_make_a_wire_in_the_colour_in_hand(qtbot):
    bench = BenchDesk(qtbot)
    bench.view.set_wire_choice("20 AWG", "VT")
    bench.face_key(Key.Key_W)
    assert bench.bench.behind and bench.face.acting.tool == "wire" and bench.view.tool == "select"
    before = bench.plan
    bench.face_click(*spot(bench, SWITCH, "14"))
    bench.face_move(80, 40)
    assert len(bench.face.acting.preview.line) >= 2
    bench.face_click(*spot(bench, LAMP, "A"))
    wire = added(bench, before)
    assert (wire.start, wire.end) == (TerminalRef(SWITCH, "14"), TerminalRef(LAMP, "A"))
    assert (wire.size, wire.colour) == ("20 AWG", "VT")
    assert bench.selection.ids == {wire.id}
    bench.session.undo()
    assert bench.plan is before


def test_a_wire_is_dragged_from_a_terminal_without_a_tool_and_snaps_onto_the_next(back):
    before = back.plan
    a, b = spot(back, BUTTON, "14"), spot(back, LAMP, "K")
    back.face_move(*a)
    back.face_press(*a)
    back.face_move((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    back.face_move(b[0] + 2, b[1] + 2)  # near enough
    assert back.face.acting.preview.landing == TerminalRef(LAMP, "K")
    back.face_release(b[0] + 2, b[1] + 2)
    assert added(back, before).end == TerminalRef(LAMP, "K")


def test_escape_leaves_the_wire_then_the_tool_and_never_the_bench_with_them(back):
    before = back.plan
    back.face_key(Key.Key_W)
    back.face_click(*spot(back, SWITCH, "14"))
    back.face_click(90, 70)
    back.face_key(Key.Key_Escape)
    assert back.face.acting.tool == "wire" and back.face.acting.preview.line == ()
    back.face_key(Key.Key_Escape)
    assert back.face.acting.tool == "select"
    assert back.bench.panel == PANEL and back.plan is before


def test_a_wire_is_pulled_by_keys_alone(back):
    before = back.plan
    back.face_key(Key.Key_W)
    back.face_key(Key.Key_Tab)
    first = back.face.acting.preview.landing
    back.face_key(Key.Key_Return)
    for _ in range(4):
        back.face_key(Key.Key_Tab)
    last = back.face.acting.preview.landing
    back.face_key(Key.Key_Return)
    wire = added(back, before)
    assert (wire.start, wire.end) == (first, last) == (TerminalRef(SWITCH, "13"), TerminalRef(LAMP, "A"))


def test_bends_lie_on_the_spacing_of_the_face_or_a_fraction_of_it(back):
    before = back.plan
    back.face_key(Key.Key_W)
    back.face_click(*spot(back, SWITCH, "14"))
    back.face_click(93.4, 81.2)
    back.face_click(*spot(back, LAMP, "A"))
    assert (100 + 95, 300 + 80) in added(back, before).bends


def test_a_wire_cannot_end_where_it_begins_and_says_so(back):
    before = back.plan
    place_ = spot(back, SWITCH, "14")
    back.face_key(Key.Key_W)
    back.face_click(*place_)
    back.face_move(90, 70)
    back.face_move(*place_)
    assert back.face.acting.preview.cursor == "no" and back.hints[-1].endswith("choose another terminal.")
    back.face_click(*place_)
    assert back.plan is before


def test_a_click_chooses_a_wire_and_delete_takes_it_away(back):
    (wire,) = (w for w in back.plan.wires.values() if w.colour == "OG")
    back.face_click(*on(back, wire.id))
    assert back.selection.ids == {wire.id}
    back.face_key(Key.Key_Delete)
    assert wire.id not in back.plan.wires
    back.session.undo()
    assert wire.id in back.plan.wires


def test_two_clicks_put_a_bend_into_a_wire_and_its_bend_is_dragged(back):
    (wire,) = (w for w in back.plan.wires.values() if w.colour == "OG")
    back.face_double(*on(back, wire.id))
    (bend,) = back.plan.wires[wire.id].bends
    back.selection.select((wire.id,))
    here = bend[0] - 100, bend[1] - 300
    back.face_drag(here, (here[0], here[1] + 20))
    assert back.plan.wires[wire.id].bends == ((bend[0], bend[1] + 20),)


def test_tab_walks_over_the_wires_too_and_the_band_takes_them(back):
    seen = set()
    for _ in range(3 + len(courses(back.face.sight()))):
        back.face_key(Key.Key_Tab)
        seen |= back.selection.ids
    assert seen >= set(courses(back.face.sight()))
    back.face_drag((-5, -5), (205, 105))
    (inner,) = (w.id for w in back.plan.wires.values() if w.colour == "OG")
    assert back.selection.ids == {SWITCH, BUTTON, LAMP, inner}


def test_every_wire_bears_its_label_and_letters_clear_of_terminals(back):
    items = back_words(back.face.sight())
    (wire,) = (w for w in back.plan.wires.values() if w.colour == "OG")
    (words,) = label(items, f"-{wire.label} OG")
    left, top, right, bottom = words_box(words)
    assert not any(
        left < x < right and top < y < bottom for x, y in terminal_places(back.face.sight()).values()
    )
    assert not label(items, "-W99 OG")


def test_the_hole_to_drill_stands_beside_the_designation_from_behind_only(back):
    words = [i.text for i in back_words(back.face.sight())]
    assert any(w.startswith("-S1  ⌀") for w in words)
    back.face_key(Key.Key_B)
    from app.bench.face_items import front_items

    assert "-S1" in [i.text for i in front_items(back.face.sight()) if isinstance(i, Words)]


def test_the_plug_beside_the_face_is_seen_wired_and_dragged_with_its_bundle(back):
    back.session.do(bring_out(PANEL))
    (plug,) = plugs_of(back.plan, KINDS, PANEL)
    back.face.fit()
    sight = back.face.sight()
    assert plug.id in {p.id for p in sight.at_back} and TerminalRef(plug.id, "1a") in terminal_places(sight)
    way = next(iter(back.plan.wireways.values()))
    at = plug.x_mm - 100, plug.y_mm - 300
    back.face_drag(at, (at[0] - 20, at[1]))
    there = back.plan.parts[plug.id]
    assert there.x_mm < plug.x_mm - 10 and there.panel == PANEL
    end = back.plan.wireways[way.id].points[-1]
    assert end[0] - way.points[-1][0] == there.x_mm - plug.x_mm


def test_a_strip_on_the_back_is_wired_to_a_switch(back):
    back.session.do(place(KINDS["terminal-strip-4"], 200, 385, panel=PANEL))
    strip = next(reversed(back.plan.parts))
    before = back.plan
    back.face_drag(spot(back, SWITCH, "13"), spot(back, strip, "1"))
    assert added(back, before).end == TerminalRef(strip, "1")


def test_the_front_has_no_terminals_to_pull_from_and_turning_over_puts_the_wire_away(back):
    back.face_key(Key.Key_W)
    assert back.face.acting.tool == "wire"
    back.face_key(Key.Key_B)
    assert not back.bench.behind and back.face.acting.tool == "select"
    before = back.plan
    back.face_drag(spot(back, SWITCH, "14"), spot(back, LAMP, "A"))
    assert back.plan is before


def test_a_slanted_wire_with_ctrl_and_more_choosing_with_shift(back):
    before = back.plan
    a, b = spot(back, BUTTON, "14"), spot(back, LAMP, "K")
    back.face_drag(a, b, CTRL)
    assert added(back, before).bends == ()
    wires = [w.id for w in back.plan.wires.values() if w.end.part != STRIP][:2]
    back.selection.clear()
    for wire_id in wires:
        back.face_click(*on(back, wire_id), SHIFT)
    assert back.selection.ids == set(wires)


def test_terminals_follow_each_other_round_and_round(back):
    sight = back.face.sight()
    places = terminal_places(sight)
    last = list(places)[-1]
    assert next_terminal(sight, None, 1) == next(iter(places.values()))
    assert next_terminal(sight, last, 1) == next(iter(places.values()))
    assert next_terminal(sight, None, -1) == places[last]
