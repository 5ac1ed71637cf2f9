"""A lit building with its lamps, resistor and plug as one thing, by mouse and keys."""

import pytest
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton
from support.editing import KINDS, done
from support.editors import part_id
from support.hands import Hands
from support.surfaces import SHIFT

from app.canvas.painting.group_marks import AWAY_PX
from app.canvas.painting.mark_painter import selection_box
from app.canvas.told_parts import ToldPlan
from app.window.kept_sets import show_sets
from wiring.edits.connect import connect
from wiring.edits.groups import join
from wiring.edits.place_part import place
from wiring.files.store import load, save
from wiring.plan.groups import members, things_of
from wiring.plan.names import TerminalRef as Ref
from wiring.plan.plan import Plan

BAKERY = ("E1", "E2", "E3", "R1", "X1")


def bakery() -> Plan:
    """Return a building E1, lamps E2 and E3, a resistor, a plug, the wires between, and a lamp E4."""
    return done(
        Plan(),
        place(KINDS["building-led"], 300, 250),
        place(KINDS["led-warm-white-bare"], 420, 200),
        place(KINDS["led-warm-white-bare"], 420, 260),
        place(KINDS["resistor"], 420, 330),
        place(KINDS["plug-2"], 250, 380),
        place(KINDS["lamp-12v"], 650, 380),
        connect(Ref("p5", "1a"), Ref("p1", "A"), bends=[(200, 380), (200, 250)]),
        connect(Ref("p5", "2a"), Ref("p1", "K")),
        connect(Ref("p1", "A"), Ref("p4", "1"), bends=[(380, 330)]),
        connect(Ref("p4", "2"), Ref("p2", "A")),
        connect(Ref("p2", "K"), Ref("p3", "A")),
        connect(Ref("p5", "1b"), Ref("p6", "1"), bends=[(500, 450)]),
    )


@pytest.fixture
def hands(editor):
    made = Hands(editor)
    editor.session.open(bakery(), None)
    QApplication.processEvents()
    yield made
    made.let_go()


@pytest.fixture
def joined(hands):
    """The hands with the bakery joined by them."""
    hands.click(*hands.at("E1"))
    for one in BAKERY[1:]:
        hands.click(*hands.at(one), SHIFT)
    assert names(hands) == set(BAKERY)
    hands.act("join")
    return hands


def names(hands, sort="parts") -> set:
    plan, ids = hands.editor.session.plan, hands.editor.selection.ids
    return (
        {p.designation for p in plan.parts.values() if p.id in ids}
        if sort == "parts"
        else ids & set(plan.wires)
    )


def places(hands, *designations) -> list:
    return [hands.at(one) for one in designations]


def card_words(hands) -> set:
    card = hands.window.inspector.card
    shown = [w for w in (*card.findChildren(QLabel), *card.findChildren(QPushButton)) if w.isVisible()]
    return {w.text() for w in shown}


def click_button(hands, words):
    buttons = hands.window.inspector.card.findChildren(QPushButton)
    hands.click_widget(next(b for b in buttons if b.text() == words and b.isVisible()), words)


def test_a_drag_by_one_part_moves_all_and_the_wires_between_keep_their_shape(joined):
    session, at = joined.editor.session, joined.at("E2")
    assert session.undo_label == "Join as one thing" and len(names(joined, "wires")) == 5
    before = session.plan
    joined.key("Esc")
    joined.drag(at, (at[0] + 100, at[1] + 50))
    after = session.plan
    for one in BAKERY:
        old, new = before.parts[part_id(joined.editor, one)], after.parts[part_id(joined.editor, one)]
        assert (new.x_mm - old.x_mm, new.y_mm - old.y_mm) == (100, 50)
    assert after.parts["p6"] is before.parts["p6"]
    for old in before.wires.values():
        moved = tuple((x + 100, y + 50) for x, y in old.bends)
        assert after.wires[old.id].bends == (old.bends if "p6" in (old.start.part, old.end.part) else moved)
    joined.act("undo")
    assert session.plan is before
    joined.act("undo")
    assert not things_of(session.plan, session.plan.parts)
    joined.act("redo")
    assert session.plan is before


def test_one_click_takes_the_whole_the_next_one_part_and_j_the_whole_again(joined):
    joined.key("Esc")
    joined.click(*joined.at("E3"))
    assert names(joined) == set(BAKERY) and len(names(joined, "wires")) == 5
    QTest.qWait(QApplication.doubleClickInterval() // 10)
    joined.click(*joined.at("R1"))
    assert joined.editor.selection.ids == {part_id(joined.editor, "R1")}
    joined.click(*joined.at("E3"))  # within the thing now
    assert names(joined) == {"E3"}
    joined.key("J")
    assert names(joined) == set(BAKERY) and len(names(joined, "wires")) == 5
    joined.click(650, 200)
    joined.click(*joined.at("E3"))
    assert names(joined) == set(BAKERY)


def test_two_quick_clicks_open_the_circuit_of_the_one_part(joined):
    joined.key("Esc")
    joined.double_click(*joined.at("E3"))
    assert joined.window.view == "circuit" and joined.editor.selection.ids == {part_id(joined.editor, "E3")}
    joined.window.show_view("plan")


def test_one_part_of_it_that_is_selected_moves_alone(joined):
    joined.click(*joined.at("R1"))
    others = places(joined, "E1", "E2", "E3", "X1")
    joined.drag(joined.at("R1"), (460, 400))
    assert joined.at("R1") == (460, 400) and places(joined, "E1", "E2", "E3", "X1") == others


def test_a_bend_within_it_holds_the_whole_until_its_wire_alone_is_selected(joined):
    before = places(joined, *BAKERY)
    joined.drag((200, 250), (230, 250))  # a corner of the wire from the plug to the building
    assert places(joined, *BAKERY) == before and not joined.editor.session.undo_label.startswith("Move bend")
    joined.click(200, 300)
    assert len(joined.editor.selection.ids) == 1 and names(joined, "wires")
    joined.drag((200, 250), (170, 240))
    wire = next(iter(names(joined, "wires")))
    assert joined.editor.session.plan.wires[wire].bends[1] == (170, 240)


def test_shift_puts_the_whole_in_and_takes_it_out(joined):
    joined.click(*joined.at("E4"))
    joined.click(*joined.at("E1"), SHIFT)
    assert names(joined) == {*BAKERY, "E4"}
    joined.click(*joined.at("R1"), SHIFT)
    assert joined.editor.selection.ids == {part_id(joined.editor, "E4")}


def test_a_band_takes_a_thing_only_whole_and_to_the_left_when_it_touches_it(joined):
    joined.key("Esc")
    joined.drag((395, 160), (450, 360))  # both lamps and the resistor, not the building
    assert joined.editor.selection.ids == frozenset()
    joined.drag((450, 360), (395, 300))
    assert names(joined) == set(BAKERY) and len(names(joined, "wires")) == 5
    joined.key("Esc")
    joined.drag((180, 150), (480, 420))
    assert names(joined) == set(BAKERY)


def test_tab_and_the_finder_go_to_single_parts(joined):
    joined.key("Esc")
    joined.view.setFocus()
    joined.key("Tab")
    assert names(joined) == {"E1"}
    joined.window.show_ids([part_id(joined.editor, "R1")])
    assert names(joined) == {"R1"}


def test_the_keys_turn_copy_and_remove_the_whole(joined):
    session = joined.editor.session
    joined.key("Esc")
    joined.click(*joined.at("E1"))
    joined.act("duplicate")
    copy = names(joined)
    assert len(copy) == 5 and not copy & set(BAKERY)
    things = {frozenset(t) for t in things_of(session.plan, session.plan.parts)}
    assert len(things) == 2 and joined.editor.selection.ids >= next(t for t in things if "p1" not in t)
    home = places(joined, *BAKERY)
    joined.key("R")
    joined.key("Right")
    joined.key("Del")
    assert places(joined, *BAKERY) == home
    assert {frozenset(t) for t in things_of(session.plan, session.plan.parts)} == {
        frozenset(members(session.plan, "p1"))
    }


def test_cut_and_paste_into_another_plan_keeps_them_joined(joined):
    joined.key("Esc")
    joined.click(*joined.at("E1"))
    joined.view.setFocus()
    joined.key("Ctrl+X")
    assert QGuiApplication.clipboard().text() and len(joined.editor.session.plan.parts) == 1
    joined.editor.session.open(Plan(), None)
    joined.view.setFocus()
    joined.key("Ctrl+V")
    plan = joined.editor.session.plan
    assert [len(t) for t in things_of(plan, plan.parts)] == [5] and len(plan.wires) == 5


def test_the_menus_join_and_take_apart(joined):
    joined.key("Esc")
    joined.menu(*joined.at("E2"), "Take apart")
    assert not members(joined.editor.session.plan, "p1")
    assert joined.editor.session.undo_label == "Take apart"
    joined.menu_bar("Edit", "Join as one thing")
    assert len(members(joined.editor.session.plan, "p1")) == 5
    joined.act("take_apart")
    assert not members(joined.editor.session.plan, "p1")
    joined.menu(*joined.at("E1"), "Join as one thing")
    assert len(members(joined.editor.session.plan, "p1")) == 5


def test_one_part_alone_is_told_that_two_make_a_thing(hands):
    told = []
    hands.editor.session.refused.connect(told.append)
    hands.click(*hands.at("E1"))
    hands.act("join")
    hands.act("take_apart")
    hands.view.setFocus()
    hands.key("J")
    hands.editor.session.refused.disconnect(told.append)
    assert [words.split(";")[0] for words in told] == [
        "One thing is made of two or more parts",
        "None of what is selected is joined with other parts",
        "What is selected is joined with nothing else",
    ]


def test_the_card_names_the_thing_parts_it_and_joins_it(joined):
    joined.key("Esc")
    joined.click(*joined.at("E1"))
    assert {"One thing of 5 parts", "Take apart", "Keep in the tray"} <= card_words(joined)
    assert "Join as one thing" not in card_words(joined)
    click_button(joined, "Take apart")
    assert {"10 things selected", "Join as one thing"} <= card_words(joined)
    assert not {"Take apart", "Keep in the tray"} & card_words(joined)
    click_button(joined, "Join as one thing")
    assert "One thing of 5 parts" in card_words(joined)


def test_kept_in_the_tray_and_placed_it_is_one_thing_at_once(joined):
    show_sets(joined.window)
    click_button(joined, "Keep in the tray")
    joined.key("Ctrl+A")
    joined.words("Lit bakery")
    joined.key("Return")
    joined.editor.session.open(Plan(), None)
    joined.place("bakery", (300, 250), (700, 250))
    joined.key("Esc")
    joined.key("Esc")
    session = joined.editor.session
    assert sorted(map(len, things_of(session.plan, session.plan.parts))) == [5, 5]
    assert session.undo_label == "Place Lit bakery"
    at, other = joined.at("E1"), joined.at("E4")  # E4 is the building of the second one
    joined.click(*at)
    assert names(joined) == set(BAKERY)
    joined.drag(at, (at[0], at[1] + 60))
    assert joined.at("E1") == (at[0], at[1] + 60) and joined.at("E4") == other


def test_it_is_saved_and_opened_joined(joined, tmp_path):
    save(joined.editor.session.plan, tmp_path / "a.underboard")
    assert load(tmp_path / "a.underboard") == joined.editor.session.plan
    joined.act("take_apart")
    save(joined.editor.session.plan, tmp_path / "b.underboard")
    assert "group" not in (tmp_path / "b.underboard").read_text()


def test_a_reader_is_told_of_the_thing(joined):
    one = part_id(joined.editor, "R1")
    told = ToldPlan(joined.view).told(one)
    from PySide6.QtGui import QAccessible

    assert told.text(QAccessible.Text.Name).endswith("Resistor -R1, in a group of 5")
    joined.key("Esc")
    joined.click(*joined.at("E1"))
    assert joined.view.accessibleDescription() == "One thing of 5 parts and 5 wires selected"


def test_a_frame_is_drawn_round_it_and_hinted_at_under_the_pointer(joined):
    thing, sight = members(joined.editor.session.plan, "p1"), joined.view.sight()
    box, copper = selection_box(sight, frozenset(thing)), sight.shades.copper.getRgb()[:3]

    def coppery() -> int:
        """Count the pixels between the corners of the frame's left edge that are about as copper."""
        image, x = joined.view.grab().toImage(), round(box.left - AWAY_PX)
        found = 0
        for y in range(round(box.top), round(box.bottom)):
            near = (image.pixelColor(x + d, y).getRgb()[:3] for d in (-1, 0))
            found += min(sum(abs(a - b) for a, b in zip(p, copper, strict=True)) for p in near) < 260
        return found

    joined.key("Esc")
    joined.move(650, 150)
    bare = coppery()
    joined.move(*joined.at("E3"))
    hinted = coppery()
    joined.click(*joined.at("E3"))
    joined.move(650, 150)
    whole = coppery()
    assert bare < 20 < 50 < hinted <= whole < (box.bottom - box.top) * 0.8, (bare, hinted, whole)


def test_a_switch_in_it_is_still_thrown_by_a_click(hands):
    session = hands.editor.session
    session.do(place(KINDS["toggle-on-off"], 550, 250))
    hands.click(*hands.at("E1"))
    hands.editor.selection.select(["p1", part_id(hands.editor, "S1")])
    hands.act("join")
    hands.key("Esc")
    switch = part_id(hands.editor, "S1")
    before = session.positions[switch]
    hands.click(*hands.at("S1"))
    assert session.positions[switch] != before and hands.editor.selection.ids == {switch}


def test_equal_parts_without_a_wire_are_taken_apart_by_their_card_too(hands):
    plan = done(
        Plan(), *(place(KINDS["lamp-12v"], x, 300) for x in (300, 400, 500)), join(("p1", "p2", "p3"))
    )
    hands.editor.session.open(plan, None)
    hands.click(*hands.at("E2"))
    assert names(hands) == {"E1", "E2", "E3"} and "Take apart" in card_words(hands)
    assert "Join as one thing" not in card_words(hands)
    click_button(hands, "Take apart")
    assert not things_of(hands.editor.session.plan, ("p1",))
    assert "Join as one thing" in card_words(hands)
