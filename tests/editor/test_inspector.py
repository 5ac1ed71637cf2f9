"""The inspector shows what is selected, commits once, and keeps what was typed when it cannot be."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton, QToolButton
from support.editors import field, open_demo, part_id, type_into, wire_id

from app.inspector.part_card import PartCard
from app.inspector.plan_card import PlanCard
from app.inspector.several_card import SeveralCard
from app.inspector.value_field import value_words
from app.inspector.wire_card import WireCard
from wiring.edits.set_plan import set_habits
from wiring.quantities.reading import read


@pytest.fixture
def quay(editor):
    open_demo(editor)
    return editor


def select(editor, *names):
    ids = [wire_id(editor, n) if n.startswith("W") else part_id(editor, n) for n in names]
    editor.selection.select(ids)
    return ids


def figures(editor) -> dict[str, str]:
    return {f.name: f.value for f in editor.window.inspector.card._figures.figures}


@pytest.mark.parametrize(
    ("names", "card"),
    [
        ((), PlanCard),
        (("E1",), PartCard),
        (("E1", "E2"), PartCard),
        (("E1", "S1"), SeveralCard),
        (("W1",), WireCard),
        (("E1", "W1"), SeveralCard),
    ],
)
def test_the_card_fits_the_selection(quay, names, card):
    select(quay, *names)
    assert type(quay.window.inspector.card) is card


def test_a_value_typed_with_another_unit_is_set_in_si(quay):
    (lamp,) = select(quay, "E1")
    type_into(field(quay, "setting_series_ohm"), "1k5")
    assert quay.session.plan.parts[lamp].settings["series_ohm"] == 1500
    assert field(quay, "setting_series_ohm").text() == "1.5 kΩ"
    assert quay.session.undo_label is not None


def test_leaving_the_field_commits_as_enter_does(quay):
    (lamp,) = select(quay, "E1")
    type_into(field(quay, "setting_series_ohm"), "820", enter=False)
    field(quay, "part_label").setFocus()
    assert quay.session.plan.parts[lamp].settings["series_ohm"] == 820


def test_escape_puts_the_old_value_back(quay):
    select(quay, "E1")
    line = field(quay, "setting_series_ohm")
    before, plan = line.text(), quay.session.plan
    type_into(line, "12", enter=False)
    QTest.keyClick(line, Qt.Key.Key_Escape)
    assert line.text() == before
    field(quay, "part_label").setFocus()
    assert quay.session.plan is plan


@pytest.mark.parametrize("typed", ["plenty", "-5", "3 A", ""])
def test_wrong_input_keeps_the_text_and_says_one_sentence(quay, typed):
    select(quay, "E1")
    plan = quay.session.plan
    line = field(quay, "setting_series_ohm")
    type_into(line, typed or "x")
    row = line.parent()
    if typed:
        assert line.text() == typed
        assert row.fault.endswith(".") and row.fault.count(".") >= 1
        assert row._fault.isVisible()
    assert quay.session.plan is plan
    type_into(line, "910")
    assert row.fault == ""


def test_an_emptied_setting_goes_back_to_the_typical_value(quay):
    (lamp,) = select(quay, "E1")
    kind = quay.session.kinds[quay.session.plan.parts[lamp].kind]
    line = field(quay, "setting_series_ohm")
    type_into(line, "1k")
    line.setFocus()
    line.selectAll()
    QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert quay.session.plan.parts[lamp].settings.get("series_ohm", kind.setting("series_ohm").default) == (
        kind.setting("series_ohm").default
    )


def test_a_setting_of_several_is_set_on_all_in_one_step(quay):
    ids = select(quay, "E1", "E2", "E3")
    type_into(field(quay, "setting_series_ohm"), "1k2")
    assert {quay.session.plan.parts[i].settings["series_ohm"] for i in ids} == {1200}
    quay.session.undo()
    assert all(quay.session.plan.parts[i].settings.get("series_ohm") != 1200 for i in ids)


def test_values_that_differ_say_so(quay):
    select(quay, "E1")
    type_into(field(quay, "setting_series_ohm"), "1k2")
    select(quay, "E1", "E2")
    line = field(quay, "setting_series_ohm")
    assert (line.text(), line.placeholderText()) == ("", "several")


def test_a_designation_already_taken_is_refused_under_the_field(quay):
    select(quay, "E1")
    line = field(quay, "part_designation")
    type_into(line, "E2")
    assert "designation" in line.parent().fault
    assert line.text() == "E2"


def test_figures_follow_the_settings(quay):
    select(quay, "E1")
    before = figures(quay)["Current"]
    type_into(field(quay, "setting_series_ohm"), "2k")
    after = figures(quay)["Current"]
    assert read(after, "current") < read(before, "current")


def test_a_switch_is_thrown_from_the_inspector_and_put_back(quay):
    (switch,) = select(quay, "S1")
    card = quay.window.inspector.card
    off = next(b for b in card.findChildren(QToolButton) if b.text() == "off")
    plan = quay.session.plan
    off.click()
    assert quay.session.positions[switch] == "off"
    assert quay.session.plan is plan
    select(quay, "E1")
    assert figures(quay)["Current"] in ("0 A", "0 mA")
    assert quay.window.acts["put_back"].isEnabled()
    quay.window.acts["put_back"].trigger()
    assert quay.session.positions[switch] == "on"


def test_a_thrown_position_can_be_kept(quay):
    (switch,) = select(quay, "S1")
    quay.session.throw(switch, "off")
    buttons = quay.window.inspector.card.findChildren(QPushButton)
    keep = next(b for b in buttons if b.text().startswith("Keep this"))
    assert keep.isVisible()
    keep.click()
    assert quay.session.plan.parts[switch].position == "off"
    assert not keep.isVisible()


def test_wire_fields_set_size_colour_and_length(quay):
    (wire,) = select(quay, "W1")
    card = quay.window.inspector.card
    for box, value in ((card._size, "18 AWG"), (card._colour, "BU")):
        box.show_value(value)
        box.chosen.emit()
    type_into(card._length.line, "1.5 m")
    made = quay.session.plan.wires[wire]
    assert (made.size, made.colour, made.length_m) == ("18 AWG", "BU", 1.5)
    card._length.line.setFocus()
    card._length.line.selectAll()
    QTest.keyClick(card._length.line, Qt.Key.Key_Delete)
    QTest.keyClick(card._length.line, Qt.Key.Key_Return)
    assert quay.session.plan.wires[wire].length_m is None


def test_a_bare_number_is_read_in_the_units_of_the_plan(quay):
    quay.session.do(set_habits(units="us"))
    (wire,) = select(quay, "W1")
    type_into(quay.window.inspector.card._length.line, "8")
    assert quay.session.plan.wires[wire].length_m == pytest.approx(8 * 0.3048)


def test_scenes_can_be_added_renamed_used_and_taken_away(quay):
    quay.selection.clear()
    card = quay.window.inspector.card
    card.findChild(QPushButton, "addScene").click()
    QApplication.processEvents()  # the layout shows the new row
    scene_id = list(quay.session.plan.scenes)[-1]
    row = card.scenes.rows[scene_id]
    type_into(row.name.line, "Lighthouse")
    type_into(row.hours.line, "90 min")
    type_into(row.sessions.line, "6")
    scene = quay.session.plan.scenes[scene_id]
    assert (scene.name, scene.use.hours_per_session, scene.use.sessions_per_month) == ("Lighthouse", 1.5, 6)
    type_into(row.hours.line, "30 h")
    assert row._fault.isVisible()
    assert "30 h" in row.hours.line.text()
    assert quay.session.plan.scenes[scene_id].use.hours_per_session == 1.5
    next(b for b in row.findChildren(QToolButton)).click()
    assert scene_id not in quay.session.plan.scenes
    assert scene_id not in card.scenes.rows


def test_undo_shows_the_old_value_in_the_field(quay):
    select(quay, "E1")
    before = field(quay, "setting_series_ohm").text()
    type_into(field(quay, "setting_series_ohm"), "2k")
    quay.session.undo()
    assert field(quay, "setting_series_ohm").text() == before


@pytest.mark.parametrize(
    ("value", "quantity", "units"),
    [
        (1.234, "charge", "metric"),
        (0.0123456, "current", "metric"),
        (1234.5, "resistance", "metric"),
        (2.3456, "length", "us"),
        (0.1, "fraction", "metric"),
        (21.5, "temperature", "us"),
        (3.75, "duration", "metric"),
        (470.0, "resistance", "metric"),
    ],
)
def test_what_a_field_shows_reads_back_as_the_same_value(value, quantity, units):
    assert read(value_words(value, quantity, units), quantity) == pytest.approx(value, rel=2e-3)


def test_what_only_experts_touch_is_folded_until_asked_for_or_changed(editor):
    open_demo(editor)
    fuse = part_id(editor, "F1")
    editor.selection.select([fuse])
    assert not field(editor, "setting_cold_ohm").isVisible()
    assert field(editor, "setting_rating_a").isVisible()
    editor.window.inspector.card._more.button.click()
    assert field(editor, "setting_cold_ohm").isVisible()
    type_into(field(editor, "setting_cold_ohm"), "0.3")
    editor.selection.clear()
    editor.selection.select([fuse])
    assert field(editor, "setting_cold_ohm").isVisible()
    assert "1 changed" in editor.window.inspector.card._more.button.text()


def test_a_nought_that_stands_for_something_is_said_in_words(editor):
    open_demo(editor)
    editor.selection.select([part_id(editor, "G1")])
    line = field(editor, "setting_capacity")
    assert (line.text(), line.placeholderText()) == ("", "typical")
    type_into(line, "2500 mAh")
    assert line.text() == "2.5 Ah"
    type_into(line, "0")
    assert (line.text(), line.placeholderText()) == ("", "typical")


def test_captions_of_settings_fit_on_one_line(editor):
    from PySide6.QtGui import QFontMetricsF

    from app.inspector.field_row import CAPTION_WIDTH
    from app.theme.fonts import screen_font

    metrics = QFontMetricsF(screen_font(13))
    for kind in editor.session.kinds.values():
        for setting in kind.settings:
            assert metrics.horizontalAdvance(setting.title) <= CAPTION_WIDTH, setting.title
