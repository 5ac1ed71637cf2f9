"""The keyboard on the drawing surface, and the tips."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QFocusEvent, QHelpEvent, QKeyEvent, QNativeGestureEvent
from PySide6.QtWidgets import QToolTip

from app.canvas.keys import TO_GESTURE, is_ours, pressed
from app.canvas.touched_surface import TouchedSurface
from app.canvas.words import tip_words


class TypedSurface(TouchedSurface):
    """Gives keys to the gesture that runs, or to the selection."""

    def event(self, event: QEvent) -> bool:
        """Take keys before the window's shortcuts and before Tab moves the focus; show tips."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            if is_ours(event, self._acting):
                event.accept()
                return True
        elif event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            step = {Qt.Key.Key_Tab: 1, Qt.Key.Key_Backtab: -1}.get(Qt.Key(event.key()))
            if step is not None and not self._acting.runs and self._deeds.next_part(step):
                self.bring_into_sight(self._selection.ids)
                return True
        elif event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            words = tip_words(self.sight(), self._hit(event.pos().x(), event.pos().y()))
            QToolTip.showText(event.globalPos(), "" if self._acting.preview.hint else words, self)
            return True
        elif event.type() == QEvent.Type.NativeGesture and isinstance(event, QNativeGestureEvent):
            return self._pointing.pinch(event)
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Give a key to the gesture, or to the selection."""
        combination = pressed(event)
        if combination[0] == Qt.Key.Key_Escape:
            if not self._acting.cancel():
                self._selection.clear()
        elif self._acting.runs and combination in TO_GESTURE:
            self._acting.send(self._pointing.key_pointer(TO_GESTURE[combination]))
        elif combination[0] == Qt.Key.Key_Space:
            self._pointing.space_down, self._pointing.space_used = True, event.isAutoRepeat()
            self._shape_cursor()
        elif self._acting.runs or not self._keys.press(event, self._session.plan.habits.units):
            super().keyPressEvent(event)

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
        self._pointing.space_down = False
        if self._acting.tool == "select":
            self._acting.cancel()
        super().focusOutEvent(event)
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus."""
        super().focusInEvent(event)
        self.update()
