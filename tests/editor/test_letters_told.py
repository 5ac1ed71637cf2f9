"""Letters no sheet can print are told where they are typed: under a field, under the line on the plan."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QInputMethodEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel
from support.editors import field, open_demo, part_id

RULE = "letters-not-printed"
SENTENCE = "The sheets cannot print “灯”; an empty box stands there on paper."


def rules(editor):
    return {finding.rule for finding in editor.solving.answer.situation.findings}


def compose(line, text, *, enter=True):
    """Type as an input method does, in place of what is there."""
    line.setFocus()
    line.selectAll()
    event = QInputMethodEvent()
    event.setCommitString(text)
    QApplication.sendEvent(line, event)
    if enter:
        QTest.keyClick(line, Qt.Key.Key_Return)


def notes(widget):
    return [w.text() for w in widget.findChildren(QLabel) if w.isVisible() and "cannot print" in w.text()]


def test_a_label_with_such_a_letter_is_taken_and_told_under_its_field_and_in_the_strip(editor):
    open_demo(editor)
    lamp = part_id(editor, "E1")
    editor.selection.select((lamp,))
    line, card = field(editor, "part_label"), editor.window.inspector.card
    compose(line, "灯 lamp")
    assert editor.session.plan.parts[lamp].label == "灯 lamp"
    assert notes(card) == [SENTENCE] and line.accessibleDescription() == SENTENCE
    assert RULE in rules(editor)
    compose(line, "Школа Łódź")
    assert notes(card) == [] and line.accessibleDescription() == ""
    assert RULE not in rules(editor)
    compose(line, "灯")
    editor.selection.select((part_id(editor, "E2"),))
    assert notes(editor.window.inspector.card) == []


def test_typed_on_the_plan_it_is_told_while_it_is_typed(editor):
    open_demo(editor)
    editor.selection.select((part_id(editor, "E1"),))
    view = editor.window.plan_view
    view.begin_rename()
    typing = view.typing
    compose(typing.line, "lamp", enter=False)
    assert notes(typing) == []
    compose(typing.line, "灯", enter=False)
    assert notes(typing) == [SENTENCE]
    QTest.keyClick(typing.line, Qt.Key.Key_Escape)
    view.begin_rename()
    assert typing.isVisible() and notes(typing) == []
    typing.leave()
