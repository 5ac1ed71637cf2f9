"""The card of several joists, typed into by keys."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from support.editing import done
from support.editors import field, type_into

from app.ground_keys import joist_key
from app.inspector.joists_card import CROSSED, JoistsCard
from wiring.edits.joists import add_joist, change_joist
from wiring.plan.plan import Plan

THREE = done(
    Plan(),
    add_joist((100, 0), (100, 800)),
    add_joist((300, 0), (300, 800)),
    add_joist((700, 800), (700, 0)),
    change_joist(1, width_mm=40),
)


@pytest.fixture
def three(editor):
    editor.session.open(THREE, None)
    editor.selection.select((), map(joist_key, range(3)))
    assert isinstance(editor.window.inspector.card, JoistsCard)
    return editor


def middles(editor):
    return [(j.start[0] + j.end[0]) / 2 for j in editor.session.plan.joists]


def test_one_distance_from_middle_to_middle_is_typed_for_all_and_undone_at_once(three):
    box = field(three, "joists_middles")
    assert box.text() == "" and box.placeholderText() == "several"
    type_into(box, "400 mm")
    assert middles(three) == [100, 500, 900]
    assert [j.start[1] for j in three.session.plan.joists] == [0, 0, 800]  # each keeps its ends
    assert field(three, "joists_clear").placeholderText() == ""
    assert field(three, "joists_clear").text() == "37 cm"
    three.session.undo()
    assert three.session.plan is THREE


def test_a_clear_distance_reckons_with_how_thick_each_is(three):
    type_into(field(three, "joists_clear"), "300 mm")
    assert middles(three) == [100, 430, 760]


def test_so_near_that_they_would_lie_in_one_another_is_refused_beside_the_field(three):
    type_into(field(three, "joists_middles"), "20 mm")
    assert three.session.plan is THREE
    assert "lie in one another" in three.window.inspector.card._apart[False].fault


def test_size_and_place_hold_for_all_and_they_go_in_one_step(three):
    assert field(three, "joists_width_mm").placeholderText() == "several"
    type_into(field(three, "joists_width_mm"), "18 mm")
    assert {j.width_mm for j in three.session.plan.joists} == {18}
    type_into(field(three, "joists_edge0"), "0 mm")
    assert middles(three) == [0, 200, 600]
    type_into(field(three, "joists_edge1"), "50 mm")
    assert min(j.start[1] for j in three.session.plan.joists) == 50
    button = three.window.inspector.card.findChild(QPushButton, "joistsAway")
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    assert three.session.plan.joists == () and three.session.undo_label == "Remove 3 joists"


def test_of_joists_that_cross_no_distance_is_asked(three):
    three.session.do(add_joist((0, 100), (800, 100)))
    three.selection.select((), map(joist_key, (0, 3)))
    card = three.window.inspector.card
    assert not field(three, "joists_middles").isVisible()
    assert card._crossed.isVisible() and card._crossed.text() == CROSSED
