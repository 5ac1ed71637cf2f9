"""The card of a coil motor says how well it throws, and follows the plan."""

import pytest
from support.editors import open_demo, part_id

from wiring.edits.set_value import set_setting


def line(editor):
    return editor.window.inspector.card.throw


@pytest.fixture
def harbour(editor, qtbot):
    open_demo(editor, "harbour")
    editor.selection.select([part_id(editor, "M15")])
    qtbot.waitUntil(lambda: bool(line(editor).text()), timeout=5_000)
    return editor


def test_it_says_how_much_of_what_a_throw_needs_the_coil_gets(harbour):
    assert line(harbour).isVisible() and line(harbour).isEnabled()
    assert line(harbour).text().startswith("Throws well: the weaker coil gets 1.5 times what a throw needs")


def test_a_coil_of_more_ohms_throws_worse(harbour, qtbot):
    motor = part_id(harbour, "M15")
    session = harbour.session
    session.do(set_setting((motor,), "rated_v", 30.0, title="Volts", kinds=session.kinds))
    qtbot.waitUntil(lambda: line(harbour).text().startswith("Does not throw safely"), timeout=5_000)


def test_other_parts_have_no_such_line(harbour):
    harbour.selection.select([part_id(harbour, "E1")])
    assert not line(harbour).isVisible()
