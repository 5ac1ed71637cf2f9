"""The keyboard on the drawing surface, and the tips."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QFocusEvent, QHelpEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QToolTip, QWidget

from app.canvas.hands.key_hints import FIRST
from app.canvas.hands.keys import (
    ARROWS,
    MENU_KEYS,
    PLAIN,
    ROW_KEYS,
    TO_GESTURE,
    ZOOM_KEYS,
    arrow_mm,
    is_for_gesture,
    is_ours,
    pressed,
)
from app.canvas.hands.menued_surface import MenuedSurface
from app.canvas.hits.hit import next_terminal
from app.canvas.naming import name_of
from app.canvas.painting.ground_marks import ground_box, ground_middle
from app.canvas.words import tip_words
from app.selection import Selection
from app.session import Session
from wiring.plan.names import TerminalRef
from wiring.plan.places import Point

PAN_PX = 80.0
BY_KEYBOARD = (
    Qt.FocusReason.TabFocusReason,
    Qt.FocusReason.BacktabFocusReason,
    Qt.FocusReason.ShortcutFocusReason,
)


class TypedSurface(MenuedSurface):
    """Gives keys to the gesture that runs, or to the selection."""

    def __init__(self, session: Session, selection: Selection, parent: QWidget | None = None) -> None:
        super().__init__(session, selection, parent)
        self.installEventFilter(self)
        self.choices.chosen.connect(self._chosen)
        self.choices.agreed.connect(lambda: self._acting.send(self._pointing.key_pointer("enter")))
        self.choices.left.connect(self._acting.cancel)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take keys before the window's shortcuts and before Tab moves the focus; show tips.

        Not `event` itself: a fault in a handler below an overridden `event` would end the whole program.
        """
        return watched is self and self._takes_first(event)

    def _takes_first(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            if is_ours(event, self._acting):
                event.accept()
                return True
        elif event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            step = {Qt.Key.Key_Tab: 1, Qt.Key.Key_Backtab: -1}.get(Qt.Key(event.key()))
            if step is not None and self._walk(step):
                return True
        elif event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            words = tip_words(self.sight(), self._hit(event.pos().x(), event.pos().y()))
            QToolTip.showText(event.globalPos(), "" if self._acting.preview.hint else words, self)
            return True
        return self.by_fingers(event)

    def _chosen(self, index: int) -> None:
        self._acting.send(self._pointing.key_pointer("")._replace(choice=index))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Give a key to the gesture, or to the selection."""
        one, running = pressed(event), self._acting.runs
        self._scrolling.stop()
        if is_for_gesture(event, self._acting.preview):
            self._acting.send(self._pointing.key_pointer("")._replace(text=event.text()))
        elif one[0] == Qt.Key.Key_Escape:
            self._escape()
        elif running and one in TO_GESTURE:
            self._acting.send(self._pointing.key_pointer(TO_GESTURE[one]))
        elif running and one in ROW_KEYS:
            self._acting.send(self._pointing.key_pointer("")._replace(phase="press", adds=True))
        elif self._acting.tool != "select" and one[0] in ARROWS:
            dx, dy = arrow_mm(one, self._session.plan.habits.units)
            self._pointing.steer(dx, dy, (self.width(), self.height()))
        elif one in ZOOM_KEYS:
            self.zoom(ZOOM_KEYS[one])
        elif one == (Qt.Key.Key_Home, PLAIN):
            self.show_all()
        elif one in MENU_KEYS and one[0] != Qt.Key.Key_Menu:  # for Menu itself Qt sends an event of its own
            self.show_menu()
        elif one[0] in ARROWS and not self._roaming.chosen and not running:
            dx, dy = ARROWS[one[0]]
            self._look(self._state.camera.panned(-dx * PAN_PX, -dy * PAN_PX))
        elif one[0] == Qt.Key.Key_Space:
            self._pointing.space_down, self._pointing.space_used = True, event.isAutoRepeat()
            self._shape_cursor()
        elif running or not self._keys.press(event, self._session.plan.habits.units):
            super().keyPressEvent(event)
        else:
            self._keep_in_sight()

    def _escape(self) -> None:
        """Leave the gesture, the tool, the corner that is held, then what is selected."""
        if self._acting.cancel():
            return
        if self._roaming.let_go():
            self.say("")
            self.update()
        else:
            self._selection.clear()

    def _keep_in_sight(self) -> None:
        """Follow what a key has selected or moved."""
        ids, grounds = self._selection.ids, self._selection.grounds
        if len(ids) + len(grounds) == 1:
            self.bring_into_sight(ids, [ground_box(self._session.plan, g) for g in grounds])
        self.update()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Let the name of a scene be typed where it stands."""
        hit = self._hit(event.position().x(), event.position().y())
        named = hit.area in self._session.plan.scenes and hit.grip == "move"
        if named and event.button() == Qt.MouseButton.LeftButton and not self._acting.runs:
            self._selection.select((), (hit.area,))
            self.begin_rename()
        else:
            super().mouseDoubleClickEvent(event)

    def begin_rename(self) -> None:
        """Let the name of what is selected be typed on the plan."""
        ids = self._selection.ids
        one = next(iter(ids)) if len(ids) == 1 else self._selection.ground
        question = name_of(self._session, one)
        if question is None:
            self._session.refused.emit("Select one part, wire or wireway to name it.")
            return
        place = ground_middle(self._session.plan, one) or self._middle_of(ids)
        at = QPointF(*self._state.camera.to_px(*place))
        self.typing.ask(question.caption, question.text, at, question.commit)

    def ask_beside(
        self, caption: str, text: str, commit: Callable[[str], str], *, even_as_is: bool = False
    ) -> None:
        """Let something be typed beside what is selected; `even_as_is` takes the text that is offered too."""
        at = QPointF(*self._state.camera.to_px(*self._middle_of(self._selection.ids)))
        self.typing.ask(caption, text, at, commit, even_as_is=even_as_is)

    def _middle_of(self, ids: frozenset[str]) -> Point:
        box = self._state.geometry.around(ids)
        return (0.0, 0.0) if box is None else ((box.left + box.right) / 2, (box.top + box.bottom) / 2)

    def _walk(self, step: int) -> bool:
        """Go to the next part, or with the wire in hand to the next terminal; False past the last part."""
        if self._acting.tool == "wire":
            preview = self._acting.preview
            begins = preview.landing is None and not preview.line
            after = self._first_terminal() if begins and step > 0 else preview.landing
            found = next_terminal(self._state.geometry, after, step)
            if found is not None:
                self._pointing.go_to(found, (self.width(), self.height()))
            return found is not None
        if self._acting.runs or not self._roaming.go(step):
            return False
        self._keep_in_sight()
        return True

    def _first_terminal(self) -> TerminalRef | None:
        """Return a terminal just before those of the selected part, so that the next one is its first."""
        keys = self._state.geometry.terminals.keys()
        own = next((n for n, ref in enumerate(keys) if ref.part in self._selection.ids), 0)
        return keys[own - 1] if keys else None

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """End a pull of the paper, or throw what is selected."""
        if event.key() != Qt.Key.Key_Space or event.isAutoRepeat():
            super().keyReleaseEvent(event)
            return
        if self._pointing.space_down and not self._pointing.space_used:
            self._deeds.throw()
        self._pointing.space_down = False
        self._shape_cursor()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leave the gesture; a tool stays in hand."""
        self._pointing.space_down, self._frame_focus = False, False
        if self._acting.tool == "select":
            self._acting.cancel()
        super().focusOutEvent(event)
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus when it came by keyboard."""
        self._frame_focus = event.reason() in BY_KEYBOARD
        if self._frame_focus and not self._acting.runs:
            self.wished.emit(FIRST)
        super().focusInEvent(event)
        self.update()
