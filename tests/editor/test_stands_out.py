"""What stands out still does after the look has changed or a tool is chosen again."""

from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QLabel
from support.editors import open_demo

from app.window.actions import TOOLS


def test_the_figure_of_a_supply_stays_strong_in_another_look_and_in_larger_words(editor):
    open_demo(editor)
    card = editor.window.inspector.card
    value = next(w for w in card.findChildren(QLabel) if w.text().startswith("123 mA"))
    other = next(w for w in card.findChildren(QLabel) if w.text() == "15")
    for change in (lambda: None, editor.look.toggle, lambda: editor.look.write_at(1.1)):
        change()
        QApplication.processEvents()
        assert value.font().weight() == QFont.Weight.DemiBold > other.font().weight()


def test_a_tool_chosen_twice_stays_pressed(editor):
    for name in (*TOOLS, *TOOLS):
        for _ in range(2):
            editor.window.acts[name].trigger()
            assert [n for n in TOOLS if editor.window.acts[n].isChecked()] == [name]
