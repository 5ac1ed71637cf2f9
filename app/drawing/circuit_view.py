"""A circuit drawing to point at and to walk through: hover, click, arrows and Tab find parts and wires."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QHelpEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QToolTip, QWidget

from app.drawing.picture_view import MARGIN_PX, PictureView
from app.drawing.walk import first, meant, onward
from app.theme.look import Look

if TYPE_CHECKING:
    from wiring.drawings.circuit_places import Place

WAYS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
_PAD_PX = 3.0


class CircuitView(PictureView):
    """Knows where the parts and wires of its picture are."""

    picked = Signal(object)  # ids: one, or none
    opened = Signal(str)  # the id to be shown on the plan
    pointed = Signal(str)  # the id under the pointer, "" for none

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(look, parent)
        self._places: Sequence[Place] = ()
        self._here: int | None = None  # where the keyboard stands
        self._under: int | None = None  # what the pointer is on
        self.tell: Callable[[str], str] = lambda _one: ""
        self.setMouseTracking(True)
        self.clicked.connect(self._click)
        self.installEventFilter(self)

    def show_places(self, places: Sequence["Place"]) -> None:
        """Take the places of the picture that is shown."""
        self._places = places
        self._here = self._under = None

    def show_chosen(self, ids: frozenset[str]) -> None:
        """Mark what is selected; the keyboard goes on from there."""
        if self._here is None or self._places[self._here].id not in ids:
            self._here = next((n for n, p in enumerate(self._places) if p.id in ids), None)
        self.mark([place.box for place in self._places if place.id in ids])

    def bring_into_sight(self, number: int) -> None:
        """Shift the picture so that a place is seen."""
        left, top, right, bottom = self._places[number].box
        seen = QRectF(self.rect()).adjusted(MARGIN_PX, MARGIN_PX, -MARGIN_PX, -MARGIN_PX)
        box = QRectF(self.pixels(left, top), self.pixels(right, bottom))
        dx = max(seen.left() - box.left(), 0.0) or min(seen.right() - box.right(), 0.0)
        dy = max(seen.top() - box.top(), 0.0) or min(seen.bottom() - box.bottom(), 0.0)
        if dx or dy:
            self.shift(dx, dy)

    def bring_chosen_into_sight(self) -> None:
        """Shift the picture so that what is selected is seen."""
        if self._here is not None:
            self.bring_into_sight(self._here)

    def under(self, place: QPointF) -> str:
        """Return the id at a point of the view, "" for none."""
        number = meant(self._places, *self.millimetres(place))
        return "" if number is None else self._places[number].id

    def _click(self, x_mm: float, y_mm: float) -> None:
        self._here = meant(self._places, x_mm, y_mm)
        self.picked.emit(() if self._here is None else (self._places[self._here].id,))

    def _go(self, number: int | None) -> bool:
        if number is None:
            return False
        self._here = number
        self.bring_into_sight(number)
        self.picked.emit((self._places[number].id,))
        return True

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Shift the picture, or tell what the pointer is on."""
        super().mouseMoveEvent(event)
        if event.buttons() == Qt.MouseButton.NoButton:
            self._point_at(meant(self._places, *self.millimetres(event.position())))

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Show what was clicked on the plan."""
        if one := self.under(event.position()):
            self.opened.emit(one)

    def leaveEvent(self, event: QEvent) -> None:
        """Forget what the pointer was on."""
        self._point_at(None)
        super().leaveEvent(event)

    def _point_at(self, number: int | None) -> None:
        if number != self._under:
            self._under = number
            self.pointed.emit("" if number is None else self._places[number].id)
            self.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Tell the reading of what the pointer rests on.

        Not `event` itself: a fault in a handler below an overridden `event` would end the whole program.
        """
        if watched is self and event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            one = self.under(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), self.tell(one) if one else "", self, QRect())
            return True
        return super().eventFilter(watched, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk with the arrows, with Control shift the picture; Enter shows the part on the plan."""
        key = Qt.Key(event.key())
        plain = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier == Qt.KeyboardModifier.NoModifier
        if plain and key in WAYS and self._places:
            start = self._here is None
            self._go(first(self._places) if start else onward(self._places, self._here or 0, WAYS[key]))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._here is not None:
            self.opened.emit(self._places[self._here].id)
        elif key == Qt.Key.Key_Escape:
            self._here = None
            self.picked.emit(())
        else:
            super().keyPressEvent(event)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk from part to part in drawing order; past the last one Tab leaves the drawing."""
        if self._places and self.hasFocus():
            numbers = self._first_places()
            at = numbers.index(self._start_of(self._here)) if self._here is not None else -1
            to = at + 1 if forward else at - 1
            if at < 0 and not forward:
                return super().focusNextPrevChild(forward)
            if 0 <= to < len(numbers):
                return self._go(numbers[to])
        return super().focusNextPrevChild(forward)

    def _first_places(self) -> list[int]:
        seen: dict[str, int] = {}
        for number, place in enumerate(self._places):
            seen.setdefault(place.id, number)
        return list(seen.values())

    def _start_of(self, number: int | None) -> int:
        one = self._places[number or 0].id
        return next(n for n, place in enumerate(self._places) if place.id == one)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the picture, and a ring round what the pointer is on and where the keyboard stands."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        copper = QColor(self._look.surfaces.copper)
        for number, style in ((self._under, Qt.PenStyle.DotLine), (self._here, Qt.PenStyle.SolidLine)):
            if number is not None and (style == Qt.PenStyle.DotLine or self.hasFocus()):
                left, top, right, bottom = self._places[number].box
                box = QRectF(self.pixels(left, top), self.pixels(right, bottom))
                painter.setPen(QPen(copper, 1.4, style))
                painter.drawRoundedRect(box.adjusted(-_PAD_PX, -_PAD_PX, _PAD_PX, _PAD_PX), 6, 6)
        painter.end()
