"""Shows one picture: zoom with the wheel or keys, shift by dragging, click to learn where in millimetres."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from app.drawing.picture_scrolling import PictureCamera, PictureScrolling
from app.theme.look import Look
from app.theme.paint_picture import paint_picture
from app.theme.ringed import Ringed
from wiring.pictures.picture import Picture
from wiring.pictures.theme import PAPER, Theme

MARGIN_PX = 26
NEAREST_PX_PER_MM = 40.0
FARTHEST_SHARE = 0.5  # of the scale at which all is seen
STEP = 1.25
LARGEST_FIT_PX_PER_MM = 6.0  # a small drawing is not blown up to fill the screen
_CLICK_PX = 4

Box = tuple[float, float, float, float]  # left, top, right, bottom in mm


class PictureView(Ringed):
    """A picture on the window's own paper, or on white paper with a shadow when it is a page."""

    clicked = Signal(float, float)  # mm in the picture
    clicked_twice = Signal(float, float)  # mm in the picture

    def __init__(self, look: Look, parent: QWidget, *, as_page: bool = False) -> None:
        super().__init__(parent)
        self._look = look
        self._as_page = as_page
        self._picture: Picture | None = None
        self._marked: tuple[Box, ...] = ()
        self._scale = 1.0
        self._origin = QPointF()  # where the picture's left top corner lies, in pixels
        self._fitted = True
        self._pressed: QPointF | None = None
        self._dragged = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        look.changed.connect(self.update)
        self.scrolling = PictureScrolling(self)

    @property
    def theme(self) -> Theme:
        """Colours the picture is painted in."""
        return PAPER if self._as_page else self._look.theme

    def show_picture(self, picture: Picture | None, *, keep_place: bool = False) -> None:
        """Show a picture, the whole of it unless the place is to be kept."""
        self._picture = picture
        self._marked = ()
        if not keep_place or self._fitted:
            self.show_all()
        self.update()

    def mark(self, boxes: Sequence[Box]) -> None:
        """Put a soft ground behind these places."""
        self._marked = tuple(boxes)
        self.update()

    def show_all(self) -> None:
        """Fit the picture into the view."""
        picture = self._picture
        self._fitted = True
        if picture is None or picture.width_mm <= 0 or picture.height_mm <= 0:
            return
        self._scale = self._fit_scale(picture)
        width, height = picture.width_mm * self._scale, picture.height_mm * self._scale
        self._origin = QPointF((self.width() - width) / 2, (self.height() - height) / 2)
        self.update()

    def zoom(self, factor: float, about: QPointF | None = None) -> None:
        """Show it larger or smaller, keeping the point under the pointer where it is."""
        picture = self._picture
        if picture is None:
            return
        about = about or QPointF(self.rect().center())
        self.look_from(self.camera.zoomed(factor, (about.x(), about.y())))

    @property
    def shows_any(self) -> bool:
        """Whether there is a picture."""
        return self._picture is not None

    @property
    def size_mm(self) -> tuple[float, float]:
        """How wide and high the picture is."""
        return (self._picture.width_mm, self._picture.height_mm) if self._picture else (0.0, 0.0)

    @property
    def camera(self) -> PictureCamera:
        """From where the picture is looked at."""
        smallest = self._fit_scale(self._picture) * FARTHEST_SHARE if self._picture else self._scale
        x, y = self._origin.x(), self._origin.y()
        return PictureCamera(self._scale, x, y, smallest, NEAREST_PX_PER_MM)

    def look_from(self, camera: PictureCamera) -> None:
        """Look from elsewhere."""
        self._scale, self._origin = camera.scale, QPointF(camera.left_px, camera.top_px)
        self._fitted = False
        self.update()

    def shift(self, across_px: float, down_px: float) -> None:
        """Shift the picture."""
        self.look_from(self.camera.panned(across_px, down_px))

    def pixels(self, x_mm: float, y_mm: float) -> QPointF:
        """Return where a point of the picture lies in the view."""
        left, top = (self._picture.left_mm, self._picture.top_mm) if self._picture else (0.0, 0.0)
        return self._origin + QPointF((x_mm - left) * self._scale, (y_mm - top) * self._scale)

    def millimetres(self, place: QPointF) -> tuple[float, float]:
        """Return which point of the picture lies there."""
        left, top = (self._picture.left_mm, self._picture.top_mm) if self._picture else (0.0, 0.0)
        away = (place - self._origin) / self._scale
        return away.x() + left, away.y() + top

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the picture."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        surfaces = self._look.surfaces
        painter.fillRect(self.rect(), QColor(surfaces.hover if self._as_page else surfaces.paper))
        picture = self._picture
        if picture is not None:
            self._paint_ground(painter, picture)
            painter.save()
            painter.translate(self._origin)
            painter.scale(self._scale, self._scale)
            paint_picture(painter, picture, self.theme)
            painter.restore()
        self.paint_ring(painter, surfaces.copper)
        painter.end()

    def _paint_ground(self, painter: QPainter, picture: Picture) -> None:
        if self._as_page:
            size = QSizeF(picture.width_mm * self._scale, picture.height_mm * self._scale)
            page = QRectF(self._origin, size)
            for spread in (3, 2, 1):
                painter.fillRect(page.adjusted(-spread, -spread, spread, spread + 1), QColor(0, 0, 0, 16))
            painter.fillRect(page, QColor(PAPER["paper"]))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(self._look.surfaces.chosen))
        for left, top, right, bottom in self._marked:
            painter.drawRoundedRect(QRectF(self.pixels(left, top), self.pixels(right, bottom)), 6, 6)

    def _fit_scale(self, picture: Picture) -> float:
        room_x = max(self.width() - 2 * MARGIN_PX, 20) / max(picture.width_mm, 1e-6)
        room_y = max(self.height() - 2 * MARGIN_PX, 20) / max(picture.height_mm, 1e-6)
        return min(room_x, room_y, LARGEST_FIT_PX_PER_MM)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the new size, if all was seen before."""
        if self._fitted:
            self.show_all()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click or a drag."""
        self._pressed, self._dragged = event.position(), False

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Tell where it was clicked twice."""
        if self._picture is not None and event.button() == Qt.MouseButton.LeftButton:
            self.clicked_twice.emit(*self.millimetres(event.position()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Shift the picture with the pointer."""
        if self._pressed is None:
            return
        away = event.position() - self._pressed
        if self._dragged or away.manhattanLength() > _CLICK_PX:
            self._dragged = True
            self._pressed = event.position()
            self.shift(away.x(), away.y())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End a drag, or tell where the click was."""
        if self._pressed is not None and not self._dragged and self._picture is not None:
            self.clicked.emit(*self.millimetres(event.position()))
        self._pressed = None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Zoom with + and −, shift with the arrows."""
        shifts = {
            Qt.Key.Key_Left: (1, 0),
            Qt.Key.Key_Right: (-1, 0),
            Qt.Key.Key_Up: (0, 1),
            Qt.Key.Key_Down: (0, -1),
        }
        key = Qt.Key(event.key())
        if key in shifts:
            x, y = shifts[key]
            self.shift(x * 60, y * 60)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom(STEP)
        elif key == Qt.Key.Key_Minus:
            self.zoom(1 / STEP)
        else:
            super().keyPressEvent(event)
