"""The plan's card: wire colours by circuit, and the picture under the plan."""

import base64

import pytest
from PySide6.QtCore import QBuffer, QIODevice, Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editors import field, open_demo, part_id, type_into, wire_id

from app.inspector.colour_rows import FIRST_SHOWN
from wiring.edits.backdrop import lay_backdrop
from wiring.edits.place_part import place
from wiring.edits.set_built import set_built
from wiring.plan.backdrop import Backdrop
from wiring.plan.plan import Plan

LEFT = Qt.MouseButton.LeftButton
Key = Qt.Key


def press(editor, name):
    button = field(editor, name)
    QTest.mouseClick(button, LEFT)
    QApplication.processEvents()


def choose(box, letters):
    box.setFocus()
    box.setCurrentIndex(box.findData(letters))
    box.activated.emit(box.currentIndex())


def test_wires_of_several_colours_say_so(editor):
    open_demo(editor)
    editor.selection.select((wire_id(editor, "W1"), wire_id(editor, "W4")))
    box = editor.window.inspector.card._colour
    assert box.currentIndex() == -1 and box.placeholderText() == "several"


def test_colours_are_chosen_by_supply_and_all_its_wires_follow_in_one_step(editor):
    open_demo(editor)
    before = editor.session.plan
    rows = editor.window.inspector.card.colours.rows
    (supply,) = rows
    assert supply == part_id(editor, "G1") and rows[supply].name.text().startswith("-G1")
    assert rows[supply].boxes["plus"].value == "RD"
    choose(rows[supply].boxes["plus"], "OG")
    assert editor.session.plan.circuit_colours[supply].plus == "OG"
    assert editor.session.plan.wires is before.wires  # nothing is coloured before it is asked for
    press(editor, "recolour")
    colours = {w.colour for w in editor.session.plan.wires.values()}
    assert "OG" in colours and "RD" not in colours and not any(c.startswith("RD") for c in colours)
    assert editor.session.undo_label == "Colour wires by rule"
    assert not field(editor, "recolour").isEnabled()
    editor.session.undo()
    assert editor.session.plan.wires == before.wires


def test_built_wires_keep_their_colour_until_the_box_is_ticked(editor):
    open_demo(editor)
    editor.selection.clear()
    red = next(w.id for w in editor.session.plan.wires.values() if w.colour == "RD")
    editor.session.do(set_built([red], built=True))
    editor.selection.clear()
    choose(next(iter(editor.window.inspector.card.colours.rows.values())).boxes["plus"], "VT")
    press(editor, "recolour")
    assert editor.session.plan.wires[red].colour == "RD"
    box = field(editor, "recolourBuilt")
    box.setFocus()
    QTest.keyClick(box, Key.Key_Space)
    press(editor, "recolour")
    assert editor.session.plan.wires[red].colour == "VT" and wire_id(editor, "W1")


def test_what_is_fed_next_takes_the_circuits_colours(editor):
    open_demo(editor, "quay")
    choose(next(iter(editor.window.inspector.card.colours.rows.values())).boxes["minus"], "WH")
    from wiring.edits.feed import feed
    from wiring.edits.place_part import place

    editor.session.do(place(editor.session.kinds["lamp-12v"], 700, 420))
    lamp = list(editor.session.plan.parts)[-1]
    editor.session.do(feed([part_id(editor, "G1"), lamp], kinds=editor.session.kinds))
    minus = [w for w in editor.session.plan.wires.values() if lamp in (w.start.part, w.end.part)]
    assert "WH" in {w.colour for w in minus}


@pytest.fixture
def pictured(editor):
    image = QImage(40, 20, QImage.Format.Format_RGB32)
    image.fill(QColor("#ff0000"))
    kept = QBuffer()
    kept.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(kept, "PNG")
    data = base64.b64encode(kept.data().data()).decode()
    picture = Backdrop(media="image/png", data=data, width_px=40, height_px=20, mm_per_px=10.0)
    editor.session.do(lay_backdrop(picture))
    editor.selection.clear()
    return editor


def test_the_picture_is_dimmed_by_keys_in_one_step_and_turned_about_its_middle(pictured):
    slider = field(pictured, "backdropStrength")
    slider.setFocus()
    for _ in range(5):
        QTest.keyClick(slider, Key.Key_Right)
    assert pictured.session.plan.backdrop.strength == pytest.approx(0.5)
    pictured.session.undo()
    assert pictured.session.plan.backdrop.strength == pytest.approx(0.45)
    type_into(field(pictured, "backdropTurn"), "90°")
    lain = pictured.session.plan.backdrop
    assert lain.turn_deg == 90 and (lain.x_mm, lain.y_mm) == pytest.approx((300, -100))
    press(pictured, "backdropQuarter")
    assert abs(pictured.session.plan.backdrop.turn_deg) == 180
    type_into(field(pictured, "backdropTurn"), "round")
    assert abs(pictured.session.plan.backdrop.turn_deg) == 180


def test_without_a_picture_there_is_nothing_to_set(editor):
    editor.selection.clear()
    assert not editor.window.inspector.card.picture.isVisible()


def test_many_supplies_are_folded_until_they_are_asked_for(editor):
    editor.session.open(Plan(), None)
    for i in range(9):
        editor.session.do(place(editor.session.kinds["supply-regulated"], 200.0 * i, 0))
    editor.selection.clear()
    colours = editor.window.inspector.card.colours
    assert len(colours.rows) == FIRST_SHOWN and colours.more.text() == "The other 3 supplies"
    QTest.mouseClick(colours.more, Qt.MouseButton.LeftButton)
    assert len(colours.rows) == 9 and colours.more.isHidden()
