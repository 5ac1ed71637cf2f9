"""Mouse and pen on the drawing surface, and keys in their place: pointers for the gestures."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QGuiApplication, QMouseEvent

from app.canvas.camera import Camera
from app.canvas.gestures.bend import new_bend
from app.canvas.gestures.choose import press
from app.canvas.gestures.pointer import Around, Do, GestureKey, Phase, Pointer
from app.canvas.hands.acting import PlanActing
from app.canvas.hands.ground_edits import line_with_corner
from app.canvas.hits.hit import Hit
from wiring.edits.wireways import add_corner
from wiring.plan.places import Point

RIM_PX = 40.0  # what is steered by keys stays this far from the edge of the view


class Pointing:
    """Turns Qt's pointer events into camera moves and gesture pointers."""

    def __init__(
        self,
        acting: PlanActing,
        around: Callable[[], Around],
        hit: Callable[[float, float], Hit],
        camera: Callable[[], Camera],
        look: Callable[[Camera], None],
    ) -> None:
        self._acting, self._around, self._hit = acting, around, hit
        self._camera, self._look = camera, look
        self._pan_from: tuple[QPointF, Camera] | None = None
        self._pan_button = Qt.MouseButton.NoButton  # that pulls the paper
        self.at_px: Point | None = None
        self.space_down = False
        self.space_used = False
        self.steered = False  # keys hold the pointer, not the hand
        self._from_tray = False  # a part is being dragged in

    @property
    def pans(self) -> bool:
        """Whether the paper is being pulled."""
        return self._pan_from is not None

    def press(self, event: QMouseEvent, turn_centre: Point | None) -> None:
        """A button went down."""
        self.steered = False
        left = event.button() == Qt.MouseButton.LeftButton
        if event.button() == Qt.MouseButton.MiddleButton or (left and self.space_down):
            self._pan_from, self._pan_button = (event.position(), self._camera()), event.button()
            self.space_used = self.space_down
            return
        if not left:
            return
        pointer = self._pointer("press", event)
        if self._acting.runs:
            self._acting.send(pointer)
        else:
            self._acting.begin(press(self._around(), pointer, turn_centre))

    def move(self, event: QMouseEvent) -> None:
        """The pointer moved."""
        self.steered = False
        self.at_px = event.position().x(), event.position().y()
        if self._pan_from is not None:
            start, camera = self._pan_from
            by = event.position() - start
            self._look(camera.panned(by.x(), by.y()))
            return
        if self._acting.runs:
            self._acting.send(self._pointer("move", event))

    def release(self, event: QMouseEvent) -> None:
        """A button came up."""
        if self._pan_from is not None and event.button() == self._pan_button:
            self._pan_from = None
            if self._acting.runs:  # what is in hand is over another place now
                self._acting.send(self._pointer("move", event))
        elif event.button() == Qt.MouseButton.LeftButton and self._acting.runs:
            self._acting.send(self._pointer("release", event))

    def double(self, event: QMouseEvent, turn_centre: Point | None) -> None:
        """A button went down twice: the end of what is drawn, a bend for a wire, else an ordinary press."""
        pointer = self._pointer("double", event)
        hit = pointer.hit
        if event.button() != Qt.MouseButton.LeftButton:
            self.press(event, turn_centre)
        elif self._acting.runs:
            self._acting.send(pointer)
        elif hit.wire and hit.bend < 0 and not hit.end:
            self.bend(hit)
        elif hit.way and hit.corner < 0:
            self._acting.carry_out(Do(add_corner(hit.way, *hit.at)))
        elif hit.line and hit.corner < 0:
            self._acting.carry_out(Do(line_with_corner(self._around().plan, hit.line, hit.at)))
        else:
            self.press(event, turn_centre)

    def bend(self, hit: Hit) -> None:
        """Put a bend into the wire that was hit."""
        act = new_bend(self._around(), hit.wire, hit.at)
        if act is not None:
            self._acting.carry_out(act)

    def key_pointer(self, name: GestureKey) -> Pointer:
        """Return a key as a pointer event at the place where the pointer is."""
        x, y = self.at_px or (0.0, 0.0)
        at = self._camera().to_plan(x, y)
        return Pointer("key", at, self._hit(x, y), key=name)

    def steer(self, dx_mm: float, dy_mm: float, room: Point) -> None:
        """Move what is in hand by keys, as the pointer would; `room` is the size of the view in pixels."""
        camera = self._camera()
        x, y = camera.to_plan(*(self.at_px or (room[0] / 2, room[1] / 2)))
        self.go_to((x + dx_mm, y + dy_mm), room)

    def go_to(self, place: Point, room: Point) -> None:
        """Bring the pointer to a place of the plan by keys; the paper is pulled to keep it in sight."""
        self.steered = True
        x, y = self._camera().to_px(*place)
        dx, dy = _missing(x, room[0]), _missing(y, room[1])
        if dx or dy:
            self._look(self._camera().panned(dx, dy))
        self._acting.send(self.pointer_at("move", QPointF(x + dx, y + dy)))

    @property
    def carries(self) -> bool:
        """Whether what is in hand should pull the paper at the rim: not where it fits already."""
        shown = self._acting.preview
        drags = shown.begun or self._from_tray
        rests = shown.held or shown.landing is not None or shown.chosen >= 0 or shown.cursor == "turn"
        return self._acting.runs and drags and not (rests or self.steered or self.pans)

    def follow(self, dx_px: float, dy_px: float) -> None:
        """Pull the paper under what is in hand; the pointer stays where it is on the screen."""
        if self.at_px is not None:
            self._look(self._camera().panned(dx_px, dy_px))
            at = QPointF(*self.at_px)
            self._acting.send(
                self._with_keys(self.pointer_at("move", at), QGuiApplication.keyboardModifiers())
            )

    def from_tray(self, phase: Phase, place: QPointF) -> None:
        """Something dragged in from the tray is there, or is set down there."""
        self._from_tray = phase == "move"
        self._acting.send(self.pointer_at(phase, place))

    def pointer_at(self, phase: Phase, place: QPointF) -> Pointer:
        """Return a pointer event at a pixel, for what comes from no mouse."""
        self.at_px = place.x(), place.y()
        return Pointer(phase, self._camera().to_plan(*self.at_px), self._hit(*self.at_px))

    def _pointer(self, phase: Phase, event: QMouseEvent) -> Pointer:
        return self._with_keys(self.pointer_at(phase, event.position()), event.modifiers())

    @staticmethod
    def _with_keys(pointer: Pointer, keys: Qt.KeyboardModifier) -> Pointer:
        return pointer._replace(
            adds=bool(keys & Qt.KeyboardModifier.ShiftModifier),
            free=bool(keys & Qt.KeyboardModifier.ControlModifier),
        )


def _missing(at: float, room: float) -> float:
    """Return by how much to pull the paper so that a pixel lies within the rim."""
    rim = min(RIM_PX, room / 4)
    return min(max(at, rim), room - rim) - at
