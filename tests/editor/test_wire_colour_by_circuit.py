"""A wire pulled by hand has the colour of its circuit until one is chosen."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editing import KINDS, done
from support.hands import Hands

from wiring.edits.place_part import place
from wiring.edits.pole_colour import pole_colour
from wiring.edits.recolour import set_circuit_colours
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

SUPPLY, SWITCH, LAMP = "p1", "p2", "p3"


@pytest.fixture
def hands(editor):
    plan = done(
        Plan(),
        place(KINDS["supply-regulated"], 100, 450),
        place(KINDS["toggle-on-off"], 350, 450),
        place(KINDS["building-led"], 600, 200),
    )
    editor.session.open(plan, None)
    hands = Hands(editor)
    hands.view.show_all()
    hands.view.setFocus()
    hands.act("farther")
    yield hands
    hands.let_go()


def pull(hands, a, b):
    """Pull one wire by clicks; return its colour, and the one it had while it was pulled."""
    ends = [hands.view.sight().geometry.terminals.get(TerminalRef(*end)).tolist() for end in (a, b)]
    hands.act("wire")
    hands.click(*ends[0])
    hands.move(*ends[1])
    shown = hands.view._acting.preview.look[1]
    hands.click(*ends[1])
    hands.key("Esc")
    hands.key("Esc")
    return list(hands.editor.session.plan.wires.values())[-1].colour, shown


def test_feed_switched_feed_and_return_have_each_their_colour_from_either_end(hands):
    plus, minus = (t.name for t in KINDS["supply-regulated"].terminals)
    assert pull(hands, (SUPPLY, plus), (SWITCH, "13")) == ("RD", "RD")
    assert pull(hands, (LAMP, "A"), (SWITCH, "14")) == ("RDWH", "RDWH")
    assert pull(hands, (LAMP, "K"), (SUPPLY, minus)) == ("BK", "BK")


def test_the_colours_chosen_for_a_circuit_are_taken_and_a_colour_in_hand_outranks_them(hands):
    plus, minus = (t.name for t in KINDS["supply-regulated"].terminals)
    hands.editor.session.do(set_circuit_colours(SUPPLY, plus="YE", minus="BU"))
    assert pull(hands, (SUPPLY, plus), (SWITCH, "13"))[0] == "YE"
    box = hands.window.plan_page.wire_colour
    assert box.currentText() == "as its circuit"
    hands.act("wire")
    box.setFocus()
    while box.value != "GN":
        QTest.keyClick(box, Qt.Key.Key_Down)
    hands.view.setFocus()
    assert pull(hands, (LAMP, "K"), (SUPPLY, minus)) == ("GN", "GN")


def test_what_no_supply_reaches_is_black(hands):
    assert pull(hands, (SWITCH, "14"), (LAMP, "A")) == ("BK", "BK")
    plan = hands.editor.session.plan
    assert pole_colour(plan, KINDS, [TerminalRef(LAMP, "A")]) == ""
