"""The small menu on the drawing surface, and what it and the window let be drawn or fed there."""

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QGuiApplication
from PySide6.QtWidgets import QMenu

from app.bench.bench import bench_of
from app.canvas.feed_ways import feed_title, feed_ways
from app.canvas.gestures.area import draw_area
from app.canvas.gestures.joist import draw_joist
from app.canvas.gestures.outline import EDITS, draw_outline
from app.canvas.gestures.trial import try_out
from app.canvas.gestures.whole import meant
from app.canvas.hands.keyboard_hit import chosen_hit
from app.canvas.hands.small_menu import MenuDeeds, small_menu
from app.canvas.hands.touched_surface import TouchedSurface
from app.canvas.hits.hit import Hit
from wiring.edits.edit import EditRefused
from wiring.plan.places import Point

RIM_PX = 8


class MenuedSurface(TouchedSurface):
    """Asks what to do with what is under the pointer, or with what is selected."""

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Leave the gesture, or show the small menu."""
        if self._acting.cancel():
            return
        at = event.pos()
        if event.reason() == QContextMenuEvent.Reason.Keyboard:
            self.show_menu()
            return
        hit = self._hit(at.x(), at.y())
        if hit.id and hit.id not in self._selection.ids:
            plan, selected = self._session.plan, self._selection.ids
            self._selection.select(meant(plan, selected, hit.part) if hit.part else (hit.wire,))
        elif hit.ground and not hit.area and not hit.id and hit.ground not in self._selection.grounds:
            self._selection.select((), hit.ground)
        self._pop_up(hit, at)

    def show_menu(self) -> None:
        """Show the small menu of what is selected, or of the middle of the plan, as the Menu key does."""
        hit = self._chosen_hit()
        place = QPointF(*self._state.camera.to_px(*hit.at)).toPoint()
        x = min(max(place.x(), RIM_PX), self.width() - RIM_PX)
        y = min(max(place.y(), RIM_PX), self.height() - RIM_PX)
        menu = self._pop_up(hit, QPoint(x, y))
        first = next((a for a in menu.actions() if a.isEnabled() and not a.isSeparator()), None)
        if first is not None:
            menu.setActiveAction(first)

    def _pop_up(self, hit: Hit, at: QPoint) -> QMenu:
        menu = self.menu_for(hit, at)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(self.mapToGlobal(at))
        return menu

    def menu_for(self, hit: Hit, at: QPoint) -> QMenu:
        """Return the small menu for what was hit; what it lets be typed stands beside a pixel."""
        more = MenuDeeds(
            lambda: self._pointing.bend(hit),
            self._paste_at,
            self.begin_draw,
            self.begin_feed,
            lambda question: self.typing.ask(question.caption, question.text, QPointF(at), question.commit),
            bench_of(self._selection).lay,
            self.opened.emit,
            self._keys.copy,
        )
        return small_menu(self, self._session, self._deeds, hit, more)

    def begin_draw(self, what: str) -> None:
        """Draw one "scene", "panel", "board", "track" or "wireway" on the plan, or joists until Escape."""
        if what == "joist":  # hardly ever is there only one
            self._acting.take(what, lambda around, _last: draw_joist(around))
            self._come_in()
            return
        draw = draw_outline if what in EDITS else draw_area
        left = [what]  # one only: the next press with the arrow should not draw another
        self._acting.take(what, lambda around, _last: draw(around, left.pop()) if left else None)
        self._come_in()

    def _come_in(self) -> None:
        """Show what is in hand where the pointer rests, or in the middle; keys go on from there."""
        at_px = self._pointing.at_px
        if at_px is not None:
            self._acting.send(self._pointing.pointer_at("move", QPointF(*at_px)))
            return
        room = float(self.width()), float(self.height())
        self._pointing.go_to(self._state.camera.to_plan(room[0] / 2, room[1] / 2), room)

    def begin_feed(self) -> None:
        """Show how what is selected can be fed, and lay the wires when agreed."""
        plan, kinds, ids = self._session.plan, self._session.kinds, self._selection.ids
        try:
            ways = feed_ways(plan, kinds, ids)
        except EditRefused as refusal:
            self._session.refused.emit(str(refusal))
            return
        options = [(way.words, way.tip) for way in ways]
        told = [way.told for way in ways]
        self.choices.offer(feed_title(plan, kinds, ids), options, "Lay these wires", told)
        left = [ways]  # once: after Enter or Escape the arrow is back in hand
        self._acting.take(
            "feed", lambda around, _: try_out(around, [w.edit for w in left.pop()]) if left else None
        )

    def _chosen_hit(self) -> Hit:
        middle = self._state.camera.to_plan(self.width() / 2, self.height() / 2)
        return chosen_hit(self.sight(), self._selection, self._roaming.held) or Hit(middle)

    def _paste_at(self, at: Point) -> None:
        self._deeds.paste(QGuiApplication.clipboard().text(), at)
