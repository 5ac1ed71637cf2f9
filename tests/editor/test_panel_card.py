"""Panels in the whole window: the card of the one on the bench, the harness button, menus and keys."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton, QToolButton
from support.benches import BUTTON, LAMP, PANEL, STRIP, SWITCH, panel_plan
from support.editors import field, type_into
from support.surfaces import LEFT

from app.canvas.hits.hit import Hit
from app.inspector.panel_card import PanelCard
from app.inspector.plan_card import PlanCard
from wiring.edits.face_items import add_line, add_text
from wiring.edits.set_plan import set_habits
from wiring.plan.harness import harness_of, leaving

Key, Ctrl, Shift = Qt.Key, Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def window(editor):
    editor.session.open(panel_plan(), None)
    QApplication.processEvents()
    return editor


@pytest.fixture
def benched(window):
    window.window.plan_view.bench.open(PANEL)
    QApplication.processEvents()
    return window


def panel(editor):
    return editor.session.plan.panels[PANEL]


def click(editor, name):
    button = editor.window.inspector.card.findChild(QPushButton, name) or field(editor, name)
    assert button.isEnabled()
    QTest.mouseClick(button, LEFT)
    QApplication.processEvents()


def test_the_button_in_the_list_of_panels_lays_one_on_the_bench(window):
    assert isinstance(window.window.inspector.card, PlanCard)
    button = window.window.inspector.card.findChild(QToolButton, "layOnBench")
    QTest.mouseClick(button, LEFT)
    QApplication.processEvents()
    assert isinstance(window.window.inspector.card, PanelCard)
    assert window.window.plan_view.bench.face.isVisible()
    QTest.keyClick(window.window.plan_view.bench.face, Key.Key_Escape)
    assert isinstance(window.window.inspector.card, PlanCard)


def test_the_key_of_the_window_opens_and_closes_the_bench(window):
    window.window.acts["bench"].trigger()
    assert window.window.plan_view.bench.is_open
    window.window.acts["bench"].trigger()
    assert not window.window.plan_view.bench.is_open


def test_size_spacing_and_depth_are_typed(benched):
    type_into(field(benched, "panel_width_mm"), "240 mm")
    type_into(field(benched, "panel_spacing_mm"), "12.5 mm")
    type_into(field(benched, "panel_room_mm"), "20 mm")
    assert (panel(benched).width_mm, panel(benched).spacing_mm, panel(benched).room_mm) == (240, 12.5, 20)
    card = benched.window.inspector.card
    assert "-S1" in card._fits.text() and "-S2" in card._fits.text()
    line = field(benched, "panel_spacing_mm")
    line.setFocus()
    line.selectAll()
    QTest.keyClick(line, Key.Key_Delete)
    QTest.keyClick(line, Key.Key_Return)
    assert panel(benched).spacing_mm == 0


def test_a_spacing_out_of_bounds_is_refused_in_a_sentence_under_the_field(benched):
    type_into(field(benched, "panel_spacing_mm"), "0.2 mm")
    assert panel(benched).spacing_mm == 10
    assert "must be 1 to 500 mm" in benched.window.inspector.card.sizes["spacing_mm"].fault


def test_the_buttons_set_a_usual_spacing(benched):
    button = field(benched, "spacing_12.5")
    QTest.mouseClick(button, LEFT)
    assert panel(benched).spacing_mm == 12.5


def test_the_side_is_chosen_on_the_card_and_shown_on_the_bench(benched):
    box = field(benched, "panel_side")
    box.setFocus()
    QTest.keyClick(box, Key.Key_Down)
    assert benched.window.plan_view.bench.bench.behind
    QTest.keyClick(box, Key.Key_Up)
    assert not benched.window.plan_view.bench.bench.behind


def test_width_and_colour_are_those_of_the_chosen_line_or_of_the_next_one(benched):
    bench, face = benched.window.plan_view.bench.bench, benched.window.plan_view.bench.face
    type_into(field(benched, "line_width"), "6 mm")
    assert bench.pencil.line_mm == 6 and panel(benched).lines == ()
    benched.session.do(add_line(PANEL, [(10, 10), (90, 10)]))
    QTest.keyClick(face, Key.Key_A, Ctrl)
    benched.selection.clear()
    type_into(field(benched, "line_width"), "2 mm")
    assert panel(benched).lines[0].width_mm == 2 and bench.pencil.line_mm == 6
    box = field(benched, "line_colour")
    box.setFocus()
    QTest.keyClicks(box, "RD")
    QTest.keyClick(box, Key.Key_Return)
    assert panel(benched).lines[0].colour == "RD"


def test_the_words_of_a_chosen_legend_are_changed_on_the_card(benched):
    benched.session.do(add_text(PANEL, "DOCK", 50, 80))
    face = benched.window.plan_view.bench.face
    for _ in range(4):
        QTest.keyClick(face, Key.Key_Tab)
    type_into(field(benched, "legend_words"), "DRY DOCK")
    type_into(field(benched, "legend_high"), "5 mm")
    type_into(field(benched, "legend_turn"), "90")
    (text,) = panel(benched).texts
    assert (text.text, text.high_mm, text.turn_deg) == ("DRY DOCK", 5, 90)


def test_legends_are_made_of_the_labels(benched):
    benched.session.do(add_text(PANEL, "x", 5, 5))
    from wiring.edits.set_value import set_field

    benched.session.do(set_field([SWITCH], label="quay lamps"))
    click(benched, "legendsFromLabels")
    assert [t.text for t in panel(benched).texts] == ["x", "quay lamps"]
    said = []
    benched.session.refused.connect(said.append)
    click(benched, "legendsFromLabels")
    assert len(said) == 1 and said[0].endswith(".")


def test_the_harness_button_leads_all_wires_through_one_plug_in_one_step(benched):
    before = benched.session.plan
    assert len(leaving(before, benched.session.kinds, panel(benched))) == 4
    click(benched, "bringOut")
    plan = benched.session.plan
    harness = harness_of(plan, benched.session.kinds, panel(benched))
    assert len(harness.inner) == 4 and leaving(plan, benched.session.kinds, panel(benched)) == ()
    card = benched.window.inspector.card
    assert "4 wires come out as one harness through -X2" in card._harness.text()
    assert not card._bring_out.isEnabled()
    assert benched.session.undo_label == "Bring out as a harness"
    benched.session.undo()
    assert benched.session.plan is before


def test_the_key_for_the_harness_works_from_the_plan(window):
    window.selection.select((LAMP,))
    QTest.keyClick(window.window, Key.Key_H, Ctrl | Shift)
    assert harness_of(window.session.plan, window.session.kinds, panel(window)) is not None


def test_which_panel_is_meant_is_asked_for_in_a_sentence(window):
    said = []
    window.session.refused.connect(said.append)
    window.selection.select((STRIP,))
    window.window.acts["bring_out"].trigger()
    assert len(said) == 1 and "Click the name of the panel" in said[0]


def test_the_small_menu_of_a_panel_has_bench_and_harness(window):
    menu = window.window.plan_view.menu_for(Hit((110, 295), area=PANEL, grip="move"), window.window.pos())
    words = [a.text() for a in menu.actions()]
    assert "Bring out as a harness" in words
    next(a for a in menu.actions() if a.text().startswith("Lay on the bench")).trigger()
    assert window.window.plan_view.bench.is_open


def test_a_kind_chosen_in_the_tray_goes_to_the_bench(benched):
    benched.window.tray.wanted.emit("indicator-green")
    assert benched.window.plan_view.bench.face.acting.tool == "place"
    assert benched.window.plan_view.tool == "select"
    QTest.keyClick(benched.window.plan_view.bench.face, Key.Key_Escape)
    assert benched.window.plan_view.bench.is_open


def test_parts_selected_on_the_bench_show_their_own_card_and_line_up_by_the_windows_keys(benched):
    benched.selection.select((SWITCH, BUTTON, LAMP))
    assert not isinstance(benched.window.inspector.card, PanelCard)
    benched.window.acts["row"].trigger()
    assert len({benched.session.plan.parts[i].y_mm for i in (SWITCH, BUTTON, LAMP)}) == 1


def test_a_finding_about_something_else_takes_the_bench_away(benched):
    benched.window.show_ids((SWITCH,))
    assert benched.window.plan_view.bench.is_open
    benched.window.show_ids((STRIP,))
    assert not benched.window.plan_view.bench.is_open


def test_in_feet_and_inches_spacings_are_parts_of_an_inch(window):
    from wiring.edits.panel_spacing import spacing_of
    from wiring.edits.panels import change_panel
    from wiring.edits.set_plan import set_habits

    window.session.do(set_habits(units="us"))
    window.session.do(change_panel(PANEL, spacing_mm=0))
    window.window.plan_view.bench.open(PANEL)
    assert spacing_of(window.session.plan, panel(window)) == 6.35
    QTest.mouseClick(field(window, "spacing_1/2"), LEFT)
    assert panel(window).spacing_mm == 12.7


def test_nearer_farther_and_show_all_mean_the_face_while_it_lies_on_the_bench(benched):
    view = benched.window.plan_view
    plan_scale, face = view.sight().camera.scale, view.bench.face
    whole = face.camera.scale
    benched.window.acts["nearer"].trigger()
    assert face.camera.scale == pytest.approx(whole * 1.25)
    benched.window.acts["show_all"].trigger()
    assert face.camera.scale == pytest.approx(whole)
    assert view.sight().camera.scale == plan_scale


@pytest.mark.parametrize(
    ("units", "typed", "wide_mm", "shown"),
    [
        ("metric", "240", 240.0, "240 mm"),
        ("metric", "23.5 cm", 235.0, "235 mm"),
        ("us", "9 1/2", 241.3, '9 1/2"'),
        ("us", "240 mm", 240.0, '9.449"'),
    ],
)
def test_a_face_is_measured_in_millimetres_or_inches_in_its_card_and_among_the_panels(
    benched, units, typed, wide_mm, shown
):
    benched.session.do(set_habits(units=units))
    type_into(field(benched, "panel_width_mm"), typed)
    assert benched.session.plan.panels[PANEL].width_mm == pytest.approx(wide_mm)
    assert field(benched, "panel_width_mm").text() == shown
    benched.window.plan_view.bench.bench.lay("")
    QApplication.processEvents()
    benched.selection.clear()
    assert field(benched, "panel_width_mm").text() == shown
