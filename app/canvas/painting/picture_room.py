"""Where a view looks in a picture that is larger than it, and how much of that picture is painted."""

import math

from PySide6.QtCore import QRect, QSize

from app.canvas.camera import Camera
from app.canvas.geometry import Box
from app.canvas.painting.clips import rect_round
from app.canvas.sight import Sight

MARGIN_PX = 128  # round the view, for paper that is pulled into it
AHEAD_PX = 64  # painted beyond what is needed when paper is pulled: a strip costs little more when it is wide
STEP_PX = (
    8  # so many are an even number of device pixels where these are quarters smaller: halves round alike
)
LEAD_PX = 48  # with less room before the view the picture is moved; painted all round it at rest
RIM_PX = 1  # a strip laid bare is painted anew with so much more
SAME_PX = 0.01  # a picture so little off its place is in its place

Look = tuple[float, float, float]
Way = tuple[float, float]  # which way the view moves over the picture, to the right and down


def look_of(sight: Sight) -> Look:
    """Return size and sharpness of the view, which every picture of it must have."""
    return sight.width_px, sight.height_px, sight.ratio


class PictureRoom:
    """Counts in pixels from the corner of the picture: of the screen, or of the device where it says so."""

    def __init__(self, sight: Sight) -> None:
        self.look = look_of(sight)
        self._margin = round(MARGIN_PX * sight.ratio)  # of the device, as all places are
        rim_px = self._margin / sight.ratio
        self.anchor = sight.camera.panned(rim_px, rim_px)  # looks at the corner of the picture
        self.size = QSize(
            round(sight.width_px * sight.ratio) + 2 * self._margin,
            round(sight.height_px * sight.ratio) + 2 * self._margin,
        )
        self.covered = self.view(sight.camera)  # what is painted

    @property
    def all(self) -> QRect:
        """The picture from corner to corner."""
        ratio = self.look[2]
        return QRect(0, 0, math.ceil(self.size.width() / ratio), math.ceil(self.size.height() / ratio))

    def place(self, camera: Camera) -> tuple[int, int]:
        """Return the pixel of the device at which the view begins, as near as whole ones come."""
        x, y = self._place(camera)
        return round(x), round(y)

    def view(self, camera: Camera) -> QRect:
        """Return what the view shows of the picture."""
        width, height, ratio = self.look
        x, y = (at / ratio for at in self.place(camera))
        return rect_round(Box(x, y, x + width, y + height))

    def shows(self, camera: Camera, within_px: float = SAME_PX) -> bool:
        """Return whether all that the camera looks at is painted, so close to its place."""
        if camera.scale != self.anchor.scale:
            return False
        off = (abs(at - round(at)) for at in self._place(camera))
        return max(off) <= within_px and self.covered.contains(self.view(camera))

    def is_near(self, camera: Camera) -> bool:
        """Return whether the camera looks at what is painted, or at no more than half beside it."""
        if camera.scale != self.anchor.scale:
            return False
        common = self.view(camera) & self.covered
        return 2 * common.width() >= self.look[0] and 2 * common.height() >= self.look[1]

    def shortage(self, camera: Camera, way: Way | None = (0, 0)) -> tuple[int, int]:
        """Return by how much to move the picture so that the view has room to move on; (0, 0) when it has.

        In pixels of the device. It may move on any way when that is None.
        """
        ratio, most = self.look[2], 2 * self._margin
        unit = round(STEP_PX * ratio) if (STEP_PX * ratio).is_integer() else 1
        lead, behind = round(LEAD_PX * ratio), self._margin // 4
        found = []
        for at, by in zip(self.place(camera), way or (0, 0), strict=True):
            to = at
            if way is None and not lead <= at <= most - lead:
                to = self._margin
            elif at < (lead if by < 0 else 0):
                to = most - behind
            elif at > most - (lead if by > 0 else 0):
                to = behind
            found.append(round((to - at) / unit) * unit)
        return found[0], found[1]

    def move(self, dx: int, dy: int) -> None:
        """Count from another corner: all pixels of the picture have been moved by so many of the device."""
        ratio = self.look[2]
        self.anchor = self.anchor.panned(dx / ratio, dy / ratio)
        covered = self.covered.translated(round(dx / ratio), round(dy / ratio))
        if not (dx / ratio).is_integer() or not (dy / ratio).is_integer():
            covered = covered.adjusted(1, 1, -1, -1)
        self.covered = covered & self.all

    def strips(self, wanted: QRect) -> list[QRect]:
        """Return the strips to paint until `wanted` is painted, the painted part one rectangle after each."""
        left, top, right, bottom = _edges(self.covered)
        a, b, c, d = _edges(wanted & self.all)
        west, east = min(a, left), max(c, right)
        strips = (
            QRect(a, top, left - a + RIM_PX, bottom - top) if a < left else QRect(),
            QRect(right - RIM_PX, top, c - right + RIM_PX, bottom - top) if c > right else QRect(),
            QRect(west, b, east - west, top - b + RIM_PX) if b < top else QRect(),
            QRect(west, bottom - RIM_PX, east - west, d - bottom + RIM_PX) if d > bottom else QRect(),
        )
        return [strip for strip in strips if not strip.isEmpty()]

    def needed(self, camera: Camera) -> QRect:
        """Return what to paint for the view, in strips not too narrow where it leaves what is painted."""
        left, top, right, bottom = _edges(self.covered)
        a, b, c, d = _edges(self.view(camera))
        a, b = (min(a, left - AHEAD_PX) if a < left else a), (min(b, top - AHEAD_PX) if b < top else b)
        c, d = (
            (max(c, right + AHEAD_PX) if c > right else c),
            (max(d, bottom + AHEAD_PX) if d > bottom else d),
        )
        return QRect(a, b, c - a, d - b)

    def ahead(self, camera: Camera, way: Way | None) -> QRect:
        """Return what to paint before the view, moving on that way, needs it; it may be painted already.

        A little round all of the view when it may move any way.
        """
        view = self.view(camera)
        if way is None:
            return view.adjusted(-LEAD_PX, -LEAD_PX, LEAD_PX, LEAD_PX)
        if self.covered.contains(_toward(view, way, AHEAD_PX) & self.all):
            return view
        return _toward(view, way, MARGIN_PX)

    def _place(self, camera: Camera) -> tuple[float, float]:
        x, y = self.anchor.to_px(camera.left_mm, camera.top_mm)
        return x * self.look[2], y * self.look[2]


def _edges(rect: QRect) -> tuple[int, int, int, int]:
    return rect.left(), rect.top(), rect.right() + 1, rect.bottom() + 1


def _toward(rect: QRect, way: Way, by_px: int) -> QRect:
    """Return a rectangle grown the way something moves."""
    x, y = (by_px if by > 0 else -by_px if by < 0 else 0 for by in way)
    return rect.united(rect.translated(x, y))
