"""The quay scene from an empty plan to printed sheets, by hand: every act is one key, click, drag or word."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QKeySequence, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog
from support.editors import field

from app.canvas.camera import Camera
from app.start import Editor

LEFT = Qt.MouseButton.LeftButton
NO_KEYS, SHIFT = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier


class Walk:
    """Acts on a whole editor with real events, and lists what it did."""

    def __init__(self, editor: Editor, after: Callable[[int], None] = lambda _: None):
        self.editor, self.window, self.view = editor, editor.window, editor.window.plan_view
        self.done: list[str] = []
        self._after = after
        self.view._look(Camera(0.62, -60.0, -80.0))  # the size of the quay; nobody has zoomed yet

    def _did(self, words: str) -> None:
        QApplication.processEvents()
        self.done.append(words)
        self._after(len(self.done))

    def key(self, keys: str) -> None:
        combination = QKeySequence(keys)[0]
        target = QApplication.focusWidget() or self.view
        QTest.keyClick(target, combination.key(), combination.keyboardModifiers())
        self._did(f"press {keys}")

    def word(self, text: str) -> None:
        target = QApplication.focusWidget() or self.view
        QTest.keyClicks(target, text)
        self._did(f"type “{text}”")

    def click(self, x: float, y: float) -> None:
        self._move(x, y, Qt.MouseButton.NoButton)
        QTest.mouseClick(self.view, LEFT, NO_KEYS, self.view.px(x, y))
        self._did(f"click at {x:g}, {y:g} mm")

    def drag(self, a, b, keys=NO_KEYS) -> None:
        self._move(*a, Qt.MouseButton.NoButton, keys)
        QTest.mousePress(self.view, LEFT, keys, self.view.px(*a))
        for share in (0.5, 1.0):
            self._move(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, LEFT, keys)
        QTest.mouseRelease(self.view, LEFT, keys, self.view.px(*b))
        held = "Shift and drag" if keys else "drag"
        self._did(f"{held} from {a[0]:g}, {a[1]:g} to {b[0]:g}, {b[1]:g} mm")

    def click_field(self, name: str) -> None:
        line = field(self.editor, name)
        QTest.mouseClick(line, LEFT)
        line.setFocus()
        line.selectAll()
        self._did(f"click the field {name}")

    def _move(self, x, y, button, keys=NO_KEYS) -> None:
        at = QPointF(self.view.px(x, y))
        event = QMouseEvent(QEvent.Type.MouseMove, at, at, Qt.MouseButton.NoButton, button, keys)
        QApplication.sendEvent(self.view, event)

    def place(self, search: str, *spots) -> None:
        self.key("Ctrl+F")
        self.word(search)
        self.key("Return")
        for spot in spots:
            self.click(*spot)


def walk_the_quay(walk: Walk, pdf: Path, monkeypatch) -> None:
    """Battery, fuse, switch, eight lamps and two buildings, fed and printed."""
    walk.place("alkaline", (150, 420))
    walk.key("Esc")
    walk.click_field("setting_in_series")
    walk.word("8")
    walk.key("Return")
    walk.place("fuse", (300, 420))
    walk.place("toggle", (610, 520))
    walk.place("warm white")
    walk.drag((130, 330), (1082, 332), SHIFT)
    walk.word("8")
    walk.key("Return")
    walk.place("building", (330, 230), (830, 230))
    walk.key("Esc")
    walk.key("Shift+S")
    walk.drag((60, 170), (1180, 480))
    walk.key("Ctrl+A")
    walk.key("F")
    walk.key("Return")
    walk.key("Ctrl+4")
    asked = lambda *_args: (str(pdf), "")  # noqa: E731 - the box itself belongs to the system
    monkeypatch.setattr(QFileDialog, "getSaveFileName", asked)
    walk.key("Ctrl+E")
    walk.done += ["type the file's name", "press Return"]
