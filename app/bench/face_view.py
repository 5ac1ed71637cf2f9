"""The face on the bench: paints it and turns what hand and keyboard do into gestures."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from app.bench.bench import Bench
from app.bench.face_camera import FaceCamera, fitted
from app.bench.face_carrying import acting_on_face
from app.bench.face_cursors import cursor_on_face
from app.bench.face_deeds import FaceDeeds
from app.bench.face_gestures import double, draw_line, place_on_face, pressed, put_text, turn_of
from app.bench.face_hit import FaceHit, hit_on_face
from app.bench.face_painter import paint_bench
from app.bench.face_pointer import FaceAround, FacePointer, FaceWrite
from app.bench.face_scrolling import FaceScrolling
from app.bench.face_sight import FaceSight, surrounding
from app.bench.face_still import FaceStill
from app.bench.face_wiring import on_grid_of_face, pull_on_face
from app.bench.face_writing import ask_anew, ask_for_words
from app.canvas.gestures.place import article
from app.canvas.gestures.pointer import Around, Phase
from app.canvas.inline_input import InlineInput
from app.canvas.sight import Sight
from app.selection import Selection
from app.session import Session
from wiring.catalogue.kind import Kind
from wiring.plan.panel import Panel

RIM_PX = 64.0
Whole = Callable[[float, float], Sight]


class FaceView(QWidget):
    """One panel at a time; it changes the plan only through the session."""

    wished = Signal(str)
    tool_changed = Signal(str)

    def __init__(
        self,
        session: Session,
        selection: Selection,
        bench: Bench,
        whole: Whole,
        on_plan: Callable[[], Around],
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self.session, self.selection, self.bench = session, selection, bench
        self._whole, self._on_plan = whole, on_plan
        self.camera = FaceCamera(1.0, 0.0, 0.0, 1.0)
        self.acting = acting_on_face(session, selection, bench, self.around, self._write, self._told)
        self.deeds = FaceDeeds(session, selection, bench, self.around)
        self.at_px, self.still = (0.0, 0.0), FaceStill()
        self._hovered: FaceHit | None = None
        self._pan_from: tuple[QPointF, FaceCamera] | None = None
        self._told_tool, self._told_hint = "select", ""
        self.left_alone = True
        self.typing = InlineInput(self)
        self.scrolling = FaceScrolling(self)
        self.installEventFilter(self)
        self.setObjectName("faceView")
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAccessibleName("Panel bench")

    @property
    def panel(self) -> Panel | None:
        """The panel on the bench; None when it is empty."""
        return self.session.plan.panels.get(self.bench.panel)

    def sight(self) -> FaceSight | None:
        """Return what is looked at now; None when the bench is empty."""
        panel = self.panel
        if panel is None:
            return None
        whole = self._whole(self.width(), self.height())
        camera = self.camera._replace(width_mm=panel.width_mm, behind=self.bench.behind)
        return FaceSight(self.session.plan, panel, camera, whole, self.selection.ids, self.bench.items)

    def around(self) -> FaceAround:
        """Return what a gesture looks at; the bench must not be empty."""
        sight = self.sight()
        assert sight is not None
        return FaceAround(sight, self.bench.pencil, on_grid_of_face(self._on_plan(), sight))

    def fit(self) -> None:
        """Bring the whole face into sight."""
        sight = self.sight()
        if sight is not None:
            room, wide = (self.width(), self.height()), sight.panel.width_mm
            self.camera = fitted(surrounding(sight), room, RIM_PX, wide, self.bench.behind)
            self.left_alone = True
            self.update()

    def look(self, camera: FaceCamera) -> None:
        """Look from elsewhere."""
        self.camera, self.left_alone = camera, False
        self.update()

    def forget_pointer(self) -> None:
        """Let go of what was under the pointer: it may be there no more."""
        self._hovered = None
        self.update()

    def begin_line(self) -> None:
        """Draw track lines until Escape."""
        self.acting.take("line", lambda around, _last: draw_line(around))

    def begin_text(self) -> None:
        """Put legends until Escape."""
        self.acting.take("text", lambda around, _last: put_text(around))

    def begin_place(self, kind: Kind) -> None:
        """Place parts of a kind until Escape."""
        self.acting.take("place", lambda around, last: place_on_face(around, kind, article, turn_of(last)))

    def begin_wire(self) -> None:
        """Pull wires behind the face until Escape."""
        self.bench.turn_over(True)
        self.acting.take("wire", lambda around, _last: pull_on_face(around))

    def begin_select(self) -> None:
        """Take the arrow."""
        self.acting.take("select", None)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint one frame."""
        sight = self.sight()
        painter = QPainter(self)
        if sight is not None:
            here = self._on_plan()
            look = here.wire_size, here.wire_colour or "BK"
            paint_bench(
                painter,
                self.still,
                sight,
                self.acting.preview,
                self._hovered,
                self.bench.pencil,
                look,
                self.at_px if self.underMouse() or self.acting.runs else None,
            )
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the whole face in sight until somebody has zoomed."""
        if self.left_alone:
            self.fit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a gesture, go on with it, or pull the face."""
        if event.button() == Qt.MouseButton.MiddleButton:
            self._pan_from = event.position(), self.camera
        elif event.button() == Qt.MouseButton.LeftButton and self.panel is not None:
            pointer = self.pointer("press", event)
            if self.acting.runs:
                self.acting.send(pointer)
            else:
                self.acting.begin(pressed(self.around(), pointer))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with the gesture; see what is under the pointer."""
        if self.panel is None:
            return
        if self._pan_from is not None:
            by = event.position() - self._pan_from[0]
            self.look(self._pan_from[1].panned(by.x(), by.y()))
            return
        pointer = self.pointer("move", event)
        self._hovered = pointer.hit
        self.acting.send(pointer)
        self._shape_cursor()
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the gesture."""
        if event.button() == Qt.MouseButton.MiddleButton:
            self._pan_from = None
        elif event.button() == Qt.MouseButton.LeftButton and self.acting.runs:
            self.acting.send(self.pointer("release", event))

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """End a track line, type a legend anew, bend a wire; else an ordinary press."""
        if event.button() != Qt.MouseButton.LeftButton or self.panel is None:
            return
        pointer = self.pointer("double", event)
        if self.acting.runs:
            self.acting.send(pointer)
            return
        act = double(self.around(), pointer)
        if act is not None:
            self.acting.carry_out(act)
        else:
            self.mousePressEvent(event)

    def pointer(self, phase: Phase, event: QMouseEvent) -> FacePointer:
        """Return a mouse event in millimetres of the face."""
        self.at_px = event.position().x(), event.position().y()
        keys = event.modifiers()
        made = self.pointer_here(phase)
        return made._replace(
            adds=bool(keys & Qt.KeyboardModifier.ShiftModifier),
            free=bool(keys & Qt.KeyboardModifier.ControlModifier),
        )

    def pointer_here(self, phase: Phase) -> FacePointer:
        """Return an event where the pointer is."""
        sight = self.sight()
        assert sight is not None
        at = sight.camera.to_face(*self.at_px)
        return FacePointer(phase, at, hit_on_face(sight, at, landing=self.acting.preview.lands))

    def retype(self) -> None:
        """Type the chosen legend anew, or another name for the chosen part or wire."""
        sight = self.sight()
        if sight is not None:
            ask_anew(self.typing, self.session, self.bench, sight, self.deeds.texts)

    def _write(self, act: FaceWrite) -> None:
        sight = self.sight()
        assert sight is not None
        ask_for_words(self.typing, self.session, self.bench, sight, act)

    def _shape_cursor(self) -> None:
        self.setCursor(cursor_on_face(self.acting.preview, self._hovered, runs=self.acting.runs))

    def _told(self) -> None:
        self._shape_cursor()
        if self.acting.preview.hint != self._told_hint:
            self._told_hint = self.acting.preview.hint
            self.wished.emit(self._told_hint)
        if self.acting.tool != self._told_tool:
            self._told_tool = self.acting.tool
            self.tool_changed.emit(self._told_tool)
        self.update()
