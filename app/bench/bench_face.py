"""The face with its menu and its tips: nothing of what is meant for it reaches the plan underneath."""

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QContextMenuEvent,
    QFocusEvent,
    QHelpEvent,
    QNativeGestureEvent,
)
from PySide6.QtWidgets import QToolTip

from app.bench.face_keys import KEYS, TypedFace
from app.bench.face_menu import face_menu, face_tip
from app.bench.face_things import taken
from app.bench.face_words import chosen_words

PINCH = Qt.NativeGestureType.ZoomNativeGesture


class BenchFace(TypedFace):
    """Answers for itself whatever would else go on to the plan it covers."""

    _told_words = ""

    def tell(self) -> None:
        """Say what is chosen, and describe the face by it."""
        sight = self.sight()
        words = chosen_words(sight) if sight is not None else ""
        if words == self._told_words or not words:
            return
        self._told_words = words
        self.setAccessibleDescription(f"{words}. {KEYS}")
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, words))

    def takes_first(self, event: QEvent) -> bool:
        """Take keys before others do, show tips, zoom with two fingers."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            self.at_px = float(event.pos().x()), float(event.pos().y())
            words = face_tip(self, self.pointer_here("move").hit) if self.panel is not None else ""
            QToolTip.showText(event.globalPos(), "" if self.acting.preview.hint else words, self)
            return True
        if event.type() == QEvent.Type.NativeGesture and isinstance(event, QNativeGestureEvent):
            if event.gestureType() == PINCH:
                at = event.position().x(), event.position().y()
                self.look(self.camera.zoomed(1.0 + event.value(), at))
            return True
        return super().takes_first(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leave what the hand is doing; a tool stays in hand."""
        if self.acting.tool == "select":
            self.acting.cancel()
        super().focusOutEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Leave the gesture, or show the small menu."""
        event.accept()
        if self.panel is None or self.acting.cancel():
            return
        if event.reason() != QContextMenuEvent.Reason.Keyboard:
            place = QPointF(event.pos())
            self.at_px = place.x(), place.y()
        hit = self.pointer_here("press").hit
        one = hit.part or hit.wire
        if one and one not in self.selection.ids:
            self.bench.choose(())
            self.selection.select(taken(self.around(), hit).ids)
        elif hit.item is not None and hit.item not in self.bench.items:
            self.selection.clear()
            self.bench.choose((hit.item,))
        menu = face_menu(self, hit)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(event.globalPos())
