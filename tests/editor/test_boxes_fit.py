"""No box of choices cuts what is chosen in it, in a narrow window and with larger words."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QStyleOptionComboBox
from support.editors import field, open_demo, part_id

from app.inspector.fitted_box import FittedBox
from app.theme.words import factor
from wiring.edits.set_wire import set_wire
from wiring.standards.colours import COLOURS


@pytest.fixture(params=[1.0, 1.5])
def narrow(request, editor):
    plan = open_demo(editor)
    editor.session.do(set_wire(plan.wires, colour="RDWH"))
    editor.window.resize(1024, 768)
    editor.look.write_at(request.param)
    QApplication.processEvents()
    yield editor
    editor.look.write_at(1.0)


def cut(editor):
    QApplication.processEvents()
    boxes = [b for b in editor.window.findChildren(FittedBox) if b.isVisible()]
    assert boxes
    return [(b.currentText(), b.objectName()) for b in boxes if b.width() < b.needed_px()]


def test_on_the_cards_of_a_wire_a_part_a_panel_and_the_plan(narrow):
    plan = narrow.session.plan
    found = []
    for ids in ([next(iter(plan.wires))], [part_id(narrow, "G1")], [part_id(narrow, "S1")], []):
        narrow.selection.select(ids)
        found += cut(narrow)
    narrow.window.plan_view.bench.open(next(iter(plan.panels)))
    found += cut(narrow)
    narrow.window.plan_view.bench.bench.lay("")
    assert found == []


def test_a_colour_with_a_long_name_takes_a_line_of_its_own_and_a_short_one_goes_back(narrow):
    narrow.selection.select([next(iter(narrow.session.plan.wires))])
    box = next(b for b in narrow.window.inspector.card.findChildren(FittedBox) if b.value in COLOURS)
    QApplication.processEvents()
    below = box.y()
    assert box.currentText().startswith("RDWH") and box.width() >= box.needed_px() and below > 0
    narrow.session.do(set_wire(narrow.selection.ids, colour="BK"))
    QApplication.processEvents()
    assert box.width() >= box.needed_px()
    assert box.y() < below or factor() > 1.0


def test_over_the_plan_the_next_wires_colour_shows_its_letters_rather_than_half_its_name(narrow):
    narrow.window.acts["wire"].trigger()
    box = narrow.window.plan_page.wire_colour
    box.show_value("RDWH")
    QApplication.processEvents()
    option = QStyleOptionComboBox()
    box.initStyleOption(option)
    assert box.isVisible() and option.currentText == "RDWH" and box.currentText() == "RDWH  red and white"
    box.resize(400, box.height())
    box.initStyleOption(option)
    assert option.currentText == "RDWH  red and white"
    narrow.window.acts["select"].trigger()


def test_the_list_drops_down_as_wide_as_its_widest_line(narrow):
    narrow.selection.select([part_id(narrow, "G1")])
    box = field(narrow, "setting_cell")
    box.showPopup()
    QApplication.processEvents()
    assert box.view().width() >= box.view().sizeHintForColumn(0)
    QTest.keyClick(box.view(), Qt.Key.Key_Escape)
