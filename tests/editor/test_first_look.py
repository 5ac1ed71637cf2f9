"""What is in sight stays in sight: a view of another size brings nothing nearer that was set down since."""

import pytest
from PySide6.QtWidgets import QApplication, QPushButton
from support.hands import Hands

from wiring.edits.place_part import place


@pytest.mark.parametrize("act", ["findings", "another page", "window"])
def test_a_part_on_an_empty_plan_is_not_brought_nearer(editor, act):
    hands, window = Hands(editor), editor.window
    hands.view.show_all()
    before = hands.view.sight().camera.scale
    editor.session.do(place(editor.session.kinds["battery-alkaline"], 300.0, 500.0))
    if act == "findings":
        window.strip.unfold()
    elif act == "another page":
        window.show_view("circuit")
        window.show_view("plan")
    else:
        window.resize(window.width() - 60, window.height() - 40)
    QApplication.processEvents()
    after = hands.view.sight()
    assert after.camera.scale <= before
    assert after.visible.left <= 0 and after.visible.right >= 1200
    window.strip.unfold(False)
    window.resize(1280, 800)
    hands.let_go()


def test_the_card_of_a_supply_and_lamps_feeds_them_with_one_press(editor):
    hands, kinds = Hands(editor), editor.session.kinds
    for key, x in (("supply-regulated", 100.0), ("lamp-12v", 500.0), ("lamp-12v", 700.0)):
        editor.session.do(place(kinds[key], x, 300.0))
    editor.selection.select(tuple(editor.session.plan.parts))
    buttons = hands.window.inspector.card.findChildren(QPushButton)
    hands.click_widget(next(b for b in buttons if b.text() == "Feed these" and b.isVisible()), "Feed these")
    hands.key("Return")
    assert len(editor.session.plan.wires) == 4
    hands.let_go()
