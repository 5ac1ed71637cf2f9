"""Hands on a whole editor: real keys, words and mouse events; places are given in millimetres of the plan."""

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QKeySequence, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit, QMenu, QScrollArea, QWidget
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

    def let_go(self) -> None:
        """Close what a test that failed has left open."""
        while (menu := QApplication.activePopupWidget()) is not None:
            menu.close()

    def _did(self, words: str) -> None:
        QApplication.processEvents()

    def key(self, keys: str) -> None:
        """Press one key, with what is held down beside it, where the focus is."""
        combination = QKeySequence(keys)[0]
        QTest.keyClick(self._focus(), combination.key(), combination.keyboardModifiers())
        self._did(f"press {keys}")

    def act(self, name: str) -> None:
        """Press the key of an act of the window."""
        self.key(self.window.acts[name].shortcut().toString())

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
        """Click a line of the inspector's card, named as a screen reader tells it or as in code."""
        lines = self.window.inspector.card.findChildren(QLineEdit)
        line = next((w for w in lines if name in (w.accessibleName(), w.objectName())), None)
        assert line is not None, f"no line is called {name}"
        self.click_widget(line, f"the field {name}")

    def click_widget(self, widget: QWidget, words: str = "") -> None:
        """Scroll to a widget and click it in the middle of what is to be seen of it."""
        for area in self.window.findChildren(QScrollArea):
            if area.isAncestorOf(widget):
                area.ensureWidgetVisible(widget)
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

    def menu(self, x: float, y: float, *entries: str) -> None:
        """Click with the right button on the plan, then entries of its menus by their first words."""
        self.move(x, y)
        at = self.view.px(x, y)
        event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, at, self.view.mapToGlobal(at))
        QApplication.sendEvent(self.view, event)
        self._did(f"right-click at {x:g}, {y:g} mm")
        for entry in entries:
            self._click_entry(entry)

    def menu_bar(self, *entries: str) -> None:
        """Click an entry of the menu bar, then what hangs below it, each by its first words."""
        bar = self.window.header.menu_bar
        (first,) = (a for a in bar.actions() if a.text().replace("&", "") == entries[0])
        QTest.mouseClick(bar, LEFT, PLAIN, bar.actionGeometry(first).center())
        self._did(f"click {entries[0]}")
        for entry in entries[1:]:
            self._click_entry(entry)

    def _click_entry(self, words: str) -> None:
        menu = QApplication.activePopupWidget()
        assert isinstance(menu, QMenu), f"no menu is open for {words}"
        offered = {a.text().split("\t")[0].replace("&", ""): a for a in menu.actions()}
        name = next((name for name in offered if name.startswith(words)), "")
        assert name, f"{words} is not among {list(offered)}"
        QTest.mouseClick(menu, LEFT, PLAIN, menu.actionGeometry(offered[name]).center())
        below = offered[name].menu()
        if below is not None:
            for _ in range(100):  # a menu below another opens after a moment
                if QApplication.activePopupWidget() is not below:
                    QTest.qWait(20)
        self._did(f"click {name}")

    def pick(self, name: str, words: str) -> None:
        """Open a box of choices of the card and choose one by arrow keys."""
        boxes = self.window.inspector.card.findChildren(QComboBox)
        box = next(b for b in boxes if b.accessibleName().startswith(name))
        self.click_widget(box, name)
        steps = box.findText(words, Qt.MatchFlag.MatchContains) - box.currentIndex()
        for _ in range(abs(steps)):
            QTest.keyClick(box.view(), Qt.Key.Key_Down if steps > 0 else Qt.Key.Key_Up)
        QTest.keyClick(box.view(), Qt.Key.Key_Return)
        self._did(f"choose {words}")

    def in_sight(self, x: float, y: float) -> bool:
        """Whether the view shows a place of the plan."""
        return self.view.rect().contains(self.view.px(x, y))

    def place(self, search: str, *spots: tuple[float, float]) -> None:
        """Search the tray for a kind, take the first one found and set it down."""
        self.act("find_kind")
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
