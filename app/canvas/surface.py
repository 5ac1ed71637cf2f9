"""The drawing surface: paints the plan and turns what hand and keyboard do into gestures."""

from collections.abc import Iterable
from time import perf_counter

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QWidget

from app.canvas.camera import Camera
from app.canvas.choice_strip import ChoiceStrip
from app.canvas.geometry import Box
from app.canvas.gestures.leg import wire_to_pull
from app.canvas.gestures.pointer import Around
from app.canvas.hands.carrying import acting_on_plan
from app.canvas.hands.cursors import cursor_for
from app.canvas.hands.deeds import Deeds
from app.canvas.hands.key_hints import hint_for
from app.canvas.hands.keys import SelectionKeys
from app.canvas.hands.pointing import Pointing
from app.canvas.hands.roaming import Roaming
from app.canvas.hits.hit import Hit, hit_at
from app.canvas.inline_input import InlineInput
from app.canvas.painting.frame import Frame
from app.canvas.painting.keyboard_marks import paint_grip_ring, paint_steered
from app.canvas.painting.mark_painter import on_handle, selection_box
from app.canvas.sight import Sight
from app.canvas.view_state import ViewState
from app.selection import Selection
from app.session import Session
from app.theme.fonts import load_fonts
from wiring.plan.places import Point

REST_MS = 70  # after the last step of a zoom or pull the view has settled
SLICE_SEC = 0.0025  # how long the next still picture is painted on before events have their turn again


class Surface(QWidget):
    """Shows a plan; everything it does goes through the one active gesture or the deeds of the selection."""

    pointed = Signal(object)  # the Hit under the pointer, None when it is over nothing
    wished = Signal(str)  # what to do next, in one sentence; "" for nothing
    tool_changed = Signal(str)  # "select", "wire" or "place"
    opened = Signal(str)  # id of a part or wire that is to be shown in its circuit
    painted = Signal()  # everything that is known is on the screen

    def __init__(self, session: Session, selection: Selection, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        load_fonts()
        self._session, self._selection = session, selection
        self._state, self._frame = ViewState(session), Frame()
        self._acting = acting_on_plan(session, selection, self._around, self._told)
        self._deeds = Deeds(session, selection)
        self._roaming = Roaming(session, selection, self.say)
        self._keys = SelectionKeys(self._deeds, self._roaming, self._open_chosen)
        self._pointing = Pointing(self._acting, self._around, self._hit, self._camera, self._look)
        self._reach = 1.0  # how many times farther away than usual things are meant
        self._hovered: Hit | None = None
        self._frame_focus = False  # only focus that came by keyboard is framed
        self._told_tool, self._told_hint = "select", ""
        self._left_alone = True  # nobody has zoomed or pulled yet: keep everything in sight
        self._burst = QTimer(self, singleShot=True, interval=REST_MS)
        self._burst.timeout.connect(self.update)
        self._is_behind = self._reaches = False  # an old picture is shown; more may be painted beside it
        self._slices = QTimer(self)  # runs while there is still picture to be painted, between the events
        self._slices.timeout.connect(self._paint_on)
        self.choices = ChoiceStrip(self)
        self.typing = InlineInput(self)
        self.setObjectName("planView")
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAccessibleName("Plan")
        self.setAccessibleDescription(
            "The layout from above. Tab goes from part to part, N to wires and all else, arrows move "
            "what is selected, the Menu key tells what can be done with it, F1 lists all keys."
        )

    def sizeHint(self) -> QSize:
        """Room enough to draw in."""
        return QSize(900, 600)

    def minimumSizeHint(self) -> QSize:
        """The least that shows anything."""
        return QSize(240, 180)

    def sight(self) -> Sight:
        """Return what is looked at now."""
        return self._state.sight(
            self.width(), self.height(), self.devicePixelRatioF(), lands=self._acting.preview.lands
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint one frame."""
        painter = QPainter(self)
        state = self._state
        self._is_behind = not self._frame.paint(
            painter,
            self.sight(),
            state.key,
            self._acting.preview,
            self._selection.ids,
            self._selection.grounds,
            None if self._pointing.pans or self._acting.runs else self._hovered,
            self._pointing.at_px,
            (self._around().wire_size, state.wire_colour or "BK"),
            state.stirred_since,
            may_wait=self._burst.isActive() or self._is_behind,
        )
        self._paint_keyboard(painter)
        if self._frame_focus:
            painter.setPen(QPen(state.shades.copper, 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        painter.end()
        if self._is_behind or self._reaches:
            self._slices.start()
        else:
            self._slices.stop()
        if not self._is_behind:
            self.painted.emit()

    def _paint_keyboard(self, painter: QPainter) -> None:
        """Show where the keyboard is: the corner it holds, or the place a tool is steered to."""
        held, at_px = self._roaming.held, self._pointing.at_px
        if held is not None:
            paint_grip_ring(painter, self._state.shades, self._state.camera.to_px(*held))
        elif self._pointing.steered and at_px is not None and self._acting.tool != "select":
            paint_steered(painter, self._state.shades, at_px)

    def say(self, words: str) -> None:
        """Tell something in the strip and to a screen reader."""
        self.wished.emit(words)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, words))

    def _open_chosen(self) -> None:
        """Set the corner down that is held; without one, show what is selected."""
        if self._roaming.let_go():
            self.say("")
            self.update()
            return
        one = next(iter(self._deeds.parts or self._deeds.wires), "")
        if one:
            self.opened.emit(one)

    def _paint_on(self) -> None:
        """Paint on at the next still picture for a moment; show it when it is ready."""
        progress = self._frame.paint_on(
            self.sight(),
            self._state.key,
            self._acting.preview,
            perf_counter() + SLICE_SEC,
            settled=not self._burst.isActive(),
        )
        if progress == "nothing":
            self._slices.stop()
            self._reaches = self._burst.isActive()
        elif progress == "ready":
            self.update()  # painting tells whether there is more to do

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep everything in sight until somebody has zoomed."""
        if self._left_alone:
            self._state.fit_again(self.width(), self.height())

    def show_all(self) -> None:
        """Bring the whole plan into sight."""
        self._state.fit(self._state.everything(), self.width(), self.height())
        self._left_alone = True
        self.update()

    def zoom(self, factor: float, at_px: Point | None = None) -> None:
        """Look from nearer or farther, about the middle of the view."""
        self._look(self._state.camera.zoomed(factor, at_px or (self.width() / 2, self.height() / 2)))

    def bring_into_sight(self, ids: Iterable[str], others: Iterable[Box | None] = ()) -> None:
        """Move the camera as little as needed to show parts and wires, or else the first of other boxes."""
        box = self._state.geometry.around(ids) or next(iter(others), None)
        if box is None:
            return
        seen = self.sight().visible
        if box.left < seen.left or box.top < seen.top or box.right > seen.right or box.bottom > seen.bottom:
            room = max(self.width(), self.height()) / self._state.camera.scale / 4
            self._state.fit(box.grown(room), self.width(), self.height())
            self._left_alone = False
        self.update()

    def _camera(self) -> Camera:
        return self._state.camera

    def _look(self, camera: Camera) -> None:
        self._state.camera, self._left_alone, self._reaches = camera, False, True
        self._burst.start()
        self.update()

    def _around(self) -> Around:
        selection = self._selection
        return self._state.around(selection.ids, selection.ground)._replace(grounds=selection.grounds)

    def _hit(self, x_px: float, y_px: float) -> Hit:
        state = self._state
        at = state.camera.to_plan(x_px, y_px)
        selected = self._selection.ids
        if not self._acting.runs and on_handle(selection_box(self.sight(), selected), x_px, y_px):
            return Hit(at, handle=True)
        return hit_at(
            state.geometry,
            self._session.plan,
            self._session.kinds,
            at,
            state.camera.scale / self._reach,
            selected,
            self._selection.ground,
            grounds=self._selection.grounds,
            landing=self._acting.preview.lands,
        )

    def _hover(self, hit: Hit | None) -> None:
        self._hovered = hit
        is_something = hit is not None and (hit.id or hit.terminal or hit.handle or hit.ground)
        self.pointed.emit(hit if is_something else None)

    def _shape_cursor(self) -> None:
        shape = cursor_for(
            None if self._acting.runs else self._hovered,
            self._acting.preview.cursor,
            pans=self._pointing.pans,
            may_pan=self._pointing.space_down,
            pulled=wire_to_pull(self._session.plan, self._selection.ids),
        )
        if shape != self.cursor().shape():  # telling it costs a round of events
            self.setCursor(shape)

    def _told(self) -> None:
        """The gesture has moved on: show it, and tell the strip what it wants next."""
        if self._acting.preview.chosen >= 0:
            self.choices.mark(self._acting.preview.chosen, self._acting.preview.refused)
        elif self.choices.isVisibleTo(self):
            self.choices.hide()
        if self._acting.tool != self._told_tool:
            self._told_tool = self._acting.tool
            self.tool_changed.emit(self._told_tool)
        hint = hint_for(self._acting.tool, self._acting.preview, steered=self._pointing.steered)
        if hint != self._told_hint:
            self._told_hint = hint
            self.wished.emit(hint)
        self._shape_cursor()
        self.update()
