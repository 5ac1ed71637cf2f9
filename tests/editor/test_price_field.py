"""A price is typed in a part's card and stands in the parts list; no currency is assumed."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import open_demo

from wiring.sheets.parts_list import part_rows


def typed(editor, name, text):
    line = editor.window.findChild(object, name)
    line.setFocus()
    line.selectAll()
    QTest.keyClicks(line, text)
    QTest.keyClick(line, Qt.Key.Key_Return)
    return line


def test_a_price_typed_for_one_lamp_counts_for_all_of_its_sort(editor):
    open_demo(editor)
    session = editor.session
    lamps = [i for i, p in session.plan.parts.items() if p.designation in ("E1", "E2")]
    editor.selection.select(lamps[:1])
    typed(editor, "part_price", "0,35")
    rows = [r for r in part_rows(session.plan, session.kinds) if "-E1" in r.designations]
    assert [r.each for r in rows] == [0.35] and "-E2" in rows[0].designations
    assert all(r.each is None for r in part_rows(session.plan, session.kinds) if r not in rows)
    line = typed(editor, "part_price", "much")
    assert "no price" in line.accessibleDescription()
    QTest.keyClick(line, Qt.Key.Key_Escape)
    session.undo()
    assert not session.plan.prices


def test_the_currency_is_what_the_builder_writes(editor):
    open_demo(editor)
    assert editor.session.plan.habits.currency == ""
    typed(editor, "habit_currency", "kr")
    assert editor.session.plan.habits.currency == "kr"
