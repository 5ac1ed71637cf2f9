"""Hands on a whole editor: real keys, words and mouse events; places are given in millimetres of the plan."""

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QKeySequence, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from support.editors import field
from support.surfaces import CTRL, LEFT, PLAIN, SHIFT

from app.start import Editor
from wiring.plan.names import TerminalRef

NO_BUTTON = Qt.MouseButton.NoButton
HELD = {PLAIN: "", SHIFT: "Shift and ", CTRL: "Ctrl and "}


class Hands:
    """What a person does to an editor, one act a method; `_did` is told each act in words."""

    def __init__(self, editor: Editor) -> None:
        self.editor, self.window, self.view = editor, editor.window, editor.window.plan_view
        self.window.activateWindow()

    def _did(self, words: str) -> None:
        QApplication.processEvents()

    def key(self, keys: str) -> None:
        """Press one key, with what is held down beside it, where the focus is."""
        combination = QKeySequence(keys)[0]
        QTest.keyClick(self._focus(), combination.key(), combination.keyboardModifiers())
        self._did(f"press {keys}")

    def word(self, text: str) -> None:
        """Type one word where the focus is."""
        assert " " not in text, "each word is an act"
        QTest.keyClicks(self._focus(), text)
        self._did(f"type “{text}”")

    def words(self, text: str) -> None:
        """Type several words; a space belongs to the word before it."""
        words = text.split(" ")
        for word in words[:-1]:
            QTest.keyClicks(self._focus(), f"{word} ")
            self._did(f"type “{word}”")
        self.word(words[-1])

    def click(self, x: float, y: float, keys: Qt.KeyboardModifier = PLAIN) -> None:
        """Click on the plan."""
        self.move(x, y, keys=keys)
        QTest.mouseClick(self.view, LEFT, keys, self.view.px(x, y))
        self._did(f"{HELD[keys]}click at {x:g}, {y:g} mm")

    def double_click(self, x: float, y: float) -> None:
        """Click twice on the plan."""
        self.move(x, y)
        QTest.mouseClick(self.view, LEFT, PLAIN, self.view.px(x, y))
        QTest.mouseDClick(self.view, LEFT, PLAIN, self.view.px(x, y))
        self._did(f"double-click at {x:g}, {y:g} mm")

    def drag(self, a: tuple[float, float], b: tuple[float, float], keys: Qt.KeyboardModifier = PLAIN) -> None:
        """Press on the plan, move on and let go."""
        self.press(*a, keys)
        for share in (0.5, 1.0):
            self.move(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, LEFT, keys)
        self.release(*b, keys)
        self._did(f"{HELD[keys]}drag from {a[0]:g}, {a[1]:g} to {b[0]:g}, {b[1]:g} mm")

    def click_field(self, name: str) -> None:
        """Click a line of the inspector's card."""
        self.click_widget(field(self.editor, name), f"the field {name}")

    def click_widget(self, widget: QWidget, words: str = "") -> None:
        """Click a widget where a hand could: in the middle of what is to be seen of it."""
        seen = widget.visibleRegion().boundingRect()
        assert not seen.isEmpty(), f"{words or widget.objectName()} is not in sight"
        QTest.mouseClick(widget, LEFT, PLAIN, seen.center())
        self._did(f"click {words or widget.objectName()}")

    def press(self, x: float, y: float, keys: Qt.KeyboardModifier = PLAIN) -> None:
        """Press the mouse on the plan and hold it."""
        self.move(x, y, keys=keys)
        QTest.mousePress(self.view, LEFT, keys, self.view.px(x, y))

    def release(self, x: float, y: float, keys: Qt.KeyboardModifier = PLAIN) -> None:
        """Let the mouse go on the plan."""
        QTest.mouseRelease(self.view, LEFT, keys, self.view.px(x, y))

    def move(
        self, x: float, y: float, held: Qt.MouseButton = NO_BUTTON, keys: Qt.KeyboardModifier = PLAIN
    ) -> None:
        """Move the pointer over the plan; moving alone is no act."""
        assert self.in_sight(x, y), f"{x:g}, {y:g} mm is not in sight"
        at = self.view.px(x, y)
        where = self.view.mapToGlobal(at)
        event = QMouseEvent(QEvent.Type.MouseMove, QPointF(at), QPointF(where), NO_BUTTON, held, keys)
        QApplication.sendEvent(self.view, event)

    def in_sight(self, x: float, y: float) -> bool:
        """Whether the view shows a place of the plan."""
        return self.view.rect().contains(self.view.px(x, y))

    def place(self, search: str, *spots: tuple[float, float]) -> None:
        """Search the tray for a kind, take the first one found and set it down."""
        self.key("Ctrl+F")
        self.words(search)
        self.key("Return")
        for spot in spots:
            self.click(*spot)

    def at(self, designation: str, terminal: str = "") -> tuple[float, float]:
        """Where a part or one of its terminals lies on the plan."""
        plan = self.editor.session.plan
        part = next(p for p in plan.parts.values() if p.designation == designation)
        if not terminal:
            return part.x_mm, part.y_mm
        x, y = self.view.sight().geometry.terminals.get(TerminalRef(part.id, terminal)).tolist()
        return x, y

    def _focus(self) -> QWidget:
        return QApplication.focusWidget() or self.window  # as the window system hands keys out
