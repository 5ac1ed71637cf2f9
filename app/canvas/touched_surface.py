"""Hands on the drawing surface: mouse, pen, touchpad, and parts dragged in from the tray."""

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import (
    QContextMenuEvent,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QGuiApplication,
    QMouseEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QMenu

from app.bench.bench import bench_of
from app.canvas.feed_ways import feed_title, feed_ways
from app.canvas.gestures.area import draw_area
from app.canvas.gestures.joist import draw_joist
from app.canvas.gestures.outline import EDITS, draw_outline
from app.canvas.gestures.place import place_part
from app.canvas.gestures.trial import try_out
from app.canvas.hit import Hit
from app.canvas.mark_painter import selection_box
from app.canvas.small_menu import MenuDeeds, small_menu
from app.canvas.surface import Surface
from wiring.edits.edit import EditRefused
from wiring.plan.places import Point

MIME = "application/x-underboard-kind"


class TouchedSurface(Surface):
    """Gives what hands do to the gesture that runs, or begins one."""

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a gesture, go on with it, or pull the paper."""
        self._pointing.press(event, self._turn_centre())
        self._shape_cursor()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Bend a wire."""
        self._pointing.double(event, self._turn_centre())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with the gesture and see what is under the pointer."""
        self._pointing.move(event)
        if not self._pointing.pans:
            self._hover(self._hit(event.position().x(), event.position().y()))
        self._shape_cursor()
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the gesture."""
        self._pointing.release(event)
        self._shape_cursor()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom, or pull the paper."""
        self._pointing.wheel(event)
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget what was under the pointer."""
        self._pointing.at_px = None
        self._hover(None)
        self.update()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Leave the gesture, or show the small menu."""
        if self._acting.cancel():
            return
        at = event.pos()
        by_key = event.reason() == QContextMenuEvent.Reason.Keyboard
        chosen = self._state.geometry.around(self._selection.ids) if by_key else None
        if chosen is not None:  # the Menu key means what is selected, wherever the pointer is
            middle = (chosen.left + chosen.right) / 2, (chosen.top + chosen.bottom) / 2
            at = QPointF(*self._state.camera.to_px(*middle)).toPoint()
        hit = self._hit(at.x(), at.y()) if chosen is None else self._chosen_hit()
        if hit.id and hit.id not in self._selection.ids:
            self._selection.select((hit.id,))
        elif hit.ground and not hit.area and not hit.id:
            self._selection.select((), hit.ground)
        menu = self.menu_for(hit, at)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(self.mapToGlobal(at))

    def menu_for(self, hit: Hit, at: QPoint) -> QMenu:
        """Return the small menu for what was hit; what it lets be typed stands beside a pixel."""
        more = MenuDeeds(
            lambda: self._pointing.bend(hit),
            self._paste_at,
            self.begin_draw,
            self.begin_feed,
            lambda question: self.typing.ask(question.caption, question.text, QPointF(at), question.commit),
            bench_of(self._selection).lay,
        )
        return small_menu(self, self._session, self._deeds, hit, more)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a part from the tray in hand."""
        if event.mimeData().hasFormat(MIME):
            kind = self._session.kinds.get(
                bytes(event.mimeData().data(MIME).data()).decode("utf-8", "replace")
            )
            if kind is not None:
                self._acting.begin(place_part(self._around(), kind))
                event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Let its ghost follow."""
        self._acting.send(self._pointing.pointer_at("move", event.position()))
        event.acceptProposedAction()

    def dragLeaveEvent(self, event: QEvent) -> None:
        """Let it go."""
        self._acting.cancel()

    def dropEvent(self, event: QDropEvent) -> None:
        """Set it down."""
        self._acting.send(self._pointing.pointer_at("press", event.position()))
        event.acceptProposedAction()
        self.setFocus()

    def _turn_centre(self) -> Point | None:
        box = selection_box(self.sight(), self._selection.ids)
        if box is None:
            return None
        return self._state.camera.to_plan((box.left + box.right) / 2, (box.top + box.bottom) / 2)

    def begin_draw(self, what: str) -> None:
        """Draw one "scene", "panel", "board", "track" or "wireway" on the plan, or joists until Escape."""
        if what == "joist":  # hardly ever is there only one
            self._acting.take(what, lambda around, _last: draw_joist(around))
            return
        draw = draw_outline if what in EDITS else draw_area
        left = [what]  # one only: the next press with the arrow should not draw another
        self._acting.take(what, lambda around, _last: draw(around, left.pop()) if left else None)

    def begin_feed(self) -> None:
        """Show how what is selected can be fed, and lay the wires when agreed."""
        plan, kinds, ids = self._session.plan, self._session.kinds, self._selection.ids
        try:
            ways = feed_ways(plan, kinds, ids)
        except EditRefused as refusal:
            self._session.refused.emit(str(refusal))
            return
        options = [(way.words, way.tip) for way in ways]
        self.choices.offer(feed_title(plan, kinds, ids), options, "Lay these wires")
        left = [ways]  # once: after Enter or Escape the arrow is back in hand
        self._acting.take(
            "feed", lambda around, _: try_out(around, [w.edit for w in left.pop()]) if left else None
        )

    def _chosen_hit(self) -> Hit:
        ids, plan = self._selection.ids, self._session.plan
        at = self._state.camera.to_plan(self.width() / 2, self.height() / 2)
        part = next((i for i in plan.parts if i in ids), "")
        return Hit(at, part=part, wire="" if part else next((i for i in plan.wires if i in ids), ""))

    def _paste_at(self, at: Point) -> None:
        self._deeds.paste(QGuiApplication.clipboard().text(), at)
