"""The inspector keeps its cards: nothing typed, pressed or open for one thing reaches the next one."""

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QListView, QToolButton, QWidget
from support.editors import field, open_demo, part_id, type_into, wire_id
from support.rows_of_parts import row_of_parts

from app.inspector.field_row import FieldRow
from wiring.edits.remove import remove
from wiring.edits.set_plan import set_habits
from wiring.edits.set_value import set_field
from wiring.edits.set_wire import set_wire

LEFT, PLAIN = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
LAMPS, TOGGLES = ("p0", "p6"), ("p4", "p10")


@pytest.fixture(autouse=True)
def swept():
    yield
    # Cards of the plans that were open go now, not all of them at the end.
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)


@pytest.fixture
def row(editor):
    editor.session.open(row_of_parts(), None)
    QApplication.processEvents()
    return editor


def choose(editor, *ids):
    editor.selection.select(ids)
    QApplication.processEvents()
    return editor.window.inspector.card


def place_of(editor, widget: QWidget) -> QPoint:
    return widget.mapTo(editor.window, widget.rect().center())


def press(editor, widget):
    QTest.mousePress(editor.window.windowHandle(), LEFT, PLAIN, place_of(editor, widget))


def release(editor, place):
    QTest.mouseMove(editor.window.windowHandle(), place + QPoint(1, 1))
    QTest.mouseRelease(editor.window.windowHandle(), LEFT, PLAIN, place)
    QApplication.processEvents()


def button_named(card, words) -> QToolButton:
    return next(b for b in card.findChildren(QToolButton) if b.isVisible() and b.text() == words)


def test_one_card_serves_all_parts(row):
    cards = {id(choose(row, one)) for one in ("p0", "p1", "p4", "p5", "p0")}
    assert len(cards) == 1
    assert choose(row, "w0") is choose(row, "w3")


def test_a_press_that_began_on_one_switch_does_not_throw_the_next(row):
    first, second = TOGGLES
    button = button_named(choose(row, first), "off")
    before, place = dict(row.session.positions), place_of(row, button)
    press(row, button)
    assert button.isDown()
    choose(row, second)
    release(row, place)
    assert row.session.positions == before
    press(row, button)
    release(row, place)
    assert row.session.positions == {**before, second: "off"}


def test_a_list_that_is_open_closes_and_sets_nothing(row):
    card = choose(row, "w0")
    card._colour.showPopup()
    QApplication.processEvents()
    assert QApplication.activePopupWidget() is not None
    plan = row.session.plan
    choose(row, "w1")
    assert QApplication.activePopupWidget() is None
    assert not isinstance(QApplication.focusWidget(), QListView)
    assert card._colour.value == plan.wires["w1"].colour != plan.wires["w0"].colour
    assert row.session.plan is plan


def test_what_is_half_typed_counts_for_the_part_it_was_typed_for(row):
    first, second = LAMPS
    choose(row, first)
    type_into(field(row, "part_label"), "Kiosk", enter=False)
    choose(row, second)
    parts = row.session.plan.parts
    assert (parts[first].label, parts[second].label) == ("Kiosk", "")
    assert field(row, "part_label").text() == ""


def test_what_was_refused_is_gone_with_its_sentence(row):
    first, second = LAMPS
    choose(row, first)
    type_into(field(row, "part_designation"), "E1")
    kept = field(row, "part_designation").parent()
    assert kept.fault and kept.editor.property("wrong")
    choose(row, second)
    assert (kept.fault, kept.editor.property("wrong"), kept.editor.text()) == ("", False, "E6")
    assert not kept.editor.accessibleDescription()
    choose(row, first)
    assert (kept.fault, kept.editor.text()) == ("", "E0")


def test_a_part_that_goes_while_it_is_typed_for_takes_the_words_with_it(row):
    choose(row, "p0")
    type_into(field(row, "part_label"), "Kiosk", enter=False)
    row.session.do(remove(("p0",)))
    QApplication.processEvents()
    assert choose(row).findChild(QWidget, "addScene") is not None
    assert choose(row, "p6") and field(row, "part_label").text() == ""


def test_undo_that_leads_to_another_part_drops_what_is_half_typed(row):
    first, second = LAMPS
    row.session.do(set_field((second,), label="Signal box"))
    choose(row, first)
    type_into(field(row, "part_label"), "Kiosk", enter=False)
    row.session.undo()
    assert row.selection.ids == {second}
    parts = row.session.plan.parts
    assert (parts[first].label, parts[second].label) == ("", "")
    assert field(row, "part_label").text() == ""


def test_another_plan_gets_nothing_that_was_typed_for_the_old_one(row):
    choose(row, "p0")
    type_into(field(row, "part_label"), "Kiosk", enter=False)
    row.session.open(row_of_parts(12), None)
    QApplication.processEvents()
    assert row.session.plan.parts["p0"].label == ""
    assert not row.session.unsaved
    choose(row, "p0")
    assert field(row, "part_label").text() == ""


def test_undo_keys_take_back_typing_first_and_then_the_plan(row):
    choose(row, "p0")
    line = field(row, "part_label")
    type_into(line, "Kiosk")
    assert row.session.plan.parts["p0"].label == "Kiosk"
    QTest.keyClicks(line, "s")
    handle = row.window.windowHandle()
    QTest.keyClick(handle, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert line.text() == "Kiosk" and row.session.plan.parts["p0"].label == "Kiosk"
    QTest.keyClick(handle, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert line.text() == "" and row.session.plan.parts["p0"].label == ""


def test_escape_puts_back_what_the_plan_has_now(row):
    choose(row, "p0")
    line = field(row, "part_label")
    type_into(line, "Kiosk", enter=False)
    row.session.do(set_field(("p0",), label="Mill"))
    assert line.text() == "Kiosk"
    QTest.keyClick(line, Qt.Key.Key_Escape)
    assert line.text() == "Mill"


def test_no_figures_of_the_last_part_stand_on_the_next_while_none_are_known(editor):
    open_demo(editor)
    card = choose(editor, part_id(editor, "E1"))
    assert card._figures.figures and card._terminals.figures
    editor.window.inspector._answer = None
    choose(editor, part_id(editor, "E2"))
    assert card._figures.figures == card._terminals.figures == ()
    assert not card._figures.isVisible() and not card._terminals.isVisible()


def test_a_size_that_only_one_wire_has_is_not_offered_for_others(row):
    card = choose(row, "w0")
    usual = card._size.count()
    row.session.do(set_wire(("w0",), size="23 AWG"))
    assert card._size.value == "23 AWG"
    choose(row, "w1")
    assert card._size.count() == usual and card._size.value != "23 AWG"


def test_lengths_follow_the_units_of_the_plan_while_the_card_is_shown(row):
    card = choose(row, "w0")
    type_into(card._length.line, "1 m")
    row.session.do(set_habits(units="us"))
    assert "ft" in card._length.line.text()


def test_folded_settings_are_folded_again_for_the_next_part(editor):
    open_demo(editor)
    card = choose(editor, part_id(editor, "F1"))
    card._more.button.click()
    assert field(editor, "setting_cold_ohm").isVisible()
    choose(editor, part_id(editor, "E1"))
    choose(editor, part_id(editor, "F1"))
    assert not field(editor, "setting_cold_ohm").isVisible()


def test_tab_leads_down_the_card_whatever_was_shown_before(editor):
    open_demo(editor)
    for name in ("S1", "E1", "G1", "F1", "E1"):
        card = choose(editor, part_id(editor, name))
        if card._more.isVisible():
            card._more.button.setChecked(True)
        QApplication.processEvents()
        chain, widget = [], card.nextInFocusChain()
        while widget is not card:
            if (
                card.isAncestorOf(widget)
                and widget.isVisible()
                and widget.focusPolicy() & Qt.FocusPolicy.TabFocus
            ):
                chain.append(widget.mapTo(card, QPoint(0, 0)).toTuple())
            widget = widget.nextInFocusChain()
        assert len(chain) > 3
        assert chain == sorted(chain, key=lambda at: (at[1], at[0])), name


def test_rows_out_of_use_answer_to_no_name(editor):
    open_demo(editor)
    seen = set()
    for part in {p.kind: p for p in editor.session.plan.parts.values()}.values():
        card = choose(editor, part.id)
        names = [e.objectName() for e in card.findChildren(QWidget) if e.objectName().startswith("setting_")]
        kind = editor.session.kinds[part.kind]
        assert sorted(names) == sorted(f"setting_{s.name}" for s in kind.settings), part.kind
        assert all(isinstance(field(editor, name).parent(), FieldRow) for name in names)
        seen.add(len(names))
    assert len(seen) > 2


def test_a_card_filled_again_shows_what_a_new_one_would(editor):
    open_demo(editor, "quay")
    plan, inspector = editor.session.plan, editor.window.inspector
    ones = [p.id for p in {p.kind: p for p in plan.parts.values()}.values()]
    kept = {
        one: shown_on(choose(editor, one)) for one in [*ones, wire_id(editor, "W2"), wire_id(editor, "W1")]
    }
    for one, before in kept.items():
        choose(editor)
        make_cards_anew(inspector)
        assert shown_on(choose(editor, one)) == before, one


def test_the_plans_card_keeps_nothing_of_the_plan_that_was_open(editor):
    open_demo(editor, "harbour")
    card = editor.window.inspector.card
    for row in (*card.scenes.rows.values(), card.scenes._outside):
        row.details.line.click()
        row.details.always.click()
    card.colours.built.setChecked(True)
    if card.colours.more.isVisible():
        card.colours.more.click()
    type_into(field(editor, "habit_slack_m"), "no length", enter=True)
    assert field(editor, "habit_slack_m").accessibleDescription()
    for name in ("harbour", "quay", "siding"):
        open_demo(editor, name)
        assert editor.window.inspector.card is card
        kept = shown_on(card)
        assert not card.scenes._outside.details.line.isChecked() and not card.colours.built.isChecked()
        make_cards_anew(editor.window.inspector)
        assert shown_on(choose(editor)) == kept, name
        card = editor.window.inspector.card


def make_cards_anew(inspector) -> None:
    for card in inspector._cards.values():
        card.hide()
        card.deleteLater()
    inspector._cards, inspector._shown, inspector.card = {}, None, None
    inspector._choose()


def shown_on(card) -> list[list[str]]:
    """All that is to be seen and heard of a card, from top to bottom."""
    found = []
    for widget in card.findChildren(QWidget):
        if widget.isVisible():
            text = widget.currentText() if isinstance(widget, QComboBox) else getattr(widget, "text", str)()
            hint = getattr(widget, "placeholderText", str)()
            at = widget.mapTo(card, QPoint(0, 0)).toTuple()
            names = widget.accessibleName(), widget.accessibleDescription(), widget.toolTip()
            found.append((at[::-1], type(widget).__name__, text, hint, *names))
    return [words for _at, *words in sorted(found)]
