"""What is in sight stays in sight: a view of another size brings nothing nearer that was set down since."""

import pytest
from PySide6.QtWidgets import QApplication
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
