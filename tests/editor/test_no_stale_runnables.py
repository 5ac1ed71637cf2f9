"""Work in other threads leaves no Python object behind whose Qt object is deleted already.

Such an object answers for whatever comes to lie at its address: menus failed on it, and the window crashed.
"""

import shiboken6
from PySide6.QtCore import QObject, QRunnable
from support.editing import KINDS
from support.editors import close_editor, made_editor

from app.making import Making
from wiring.edits.place_part import place


def left_over() -> int:
    return sum(isinstance(each, QRunnable) for each in shiboken6.getAllValidWrappers())


def test_making_leaves_nothing_behind(qtbot):
    owner, made = QObject(), []
    making = Making(owner)
    making.made.connect(made.append)
    before = left_over()
    for number in range(5):
        making.ask(lambda number=number: number)
        qtbot.waitUntil(lambda number=number: made[-1:] == [number])
    making.close()
    assert left_over() == before


def test_solving_leaves_nothing_behind(qtbot, tmp_path):
    editor = made_editor(tmp_path, at_once=False)
    before = left_over()
    for number in range(3):
        with qtbot.waitSignal(editor.solving.answered, timeout=20_000):
            editor.session.do(place(KINDS["lamp-12v"], 100.0 * number, 0))
    assert left_over() == before
    close_editor(editor)
