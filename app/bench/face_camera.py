"""How large a face is shown and which way round: millimetres of the face to pixels and back."""

from typing import NamedTuple

from wiring.plan.places import Point

Box = tuple[float, float, float, float]  # left, top, right, bottom in mm of the face
SMALLEST, LARGEST = 0.2, 40.0  # pixels per millimetre


class FaceCamera(NamedTuple):
    """The face's upper left corner, as shown, lies at (left_px, top_px); from behind x runs leftwards."""

    scale: float
    left_px: float
    top_px: float
    width_mm: float
    behind: bool = False

    def to_px(self, at: Point) -> Point:
        """Return the pixel over a place of the face."""
        x = self.width_mm - at[0] if self.behind else at[0]
        return self.left_px + x * self.scale, self.top_px + at[1] * self.scale

    def to_face(self, x_px: float, y_px: float) -> Point:
        """Return the place of the face under a pixel."""
        x = (x_px - self.left_px) / self.scale
        return self.width_mm - x if self.behind else x, (y_px - self.top_px) / self.scale

    def zoomed(self, factor: float, at_px: Point) -> "FaceCamera":
        """Return the camera nearer or farther; what is under one pixel stays there."""
        scale = min(max(self.scale * factor, SMALLEST), LARGEST)
        grown = scale / self.scale
        left = at_px[0] + (self.left_px - at_px[0]) * grown
        top = at_px[1] + (self.top_px - at_px[1]) * grown
        return self._replace(scale=scale, left_px=left, top_px=top)

    def panned(self, dx_px: float, dy_px: float) -> "FaceCamera":
        """Return the camera after the face was pulled by so many pixels."""
        return self._replace(left_px=self.left_px + dx_px, top_px=self.top_px + dy_px)


def fitted(box_mm: Box, room_px: Point, rim_px: float, width_mm: float, behind: bool) -> FaceCamera:
    """Return the camera that shows a box round a face of that width in the middle, with a rim round it."""
    wide, high = max(box_mm[2] - box_mm[0], 1.0), max(box_mm[3] - box_mm[1], 1.0)
    room_x, room_y = max(room_px[0] - 2 * rim_px, 10.0), max(room_px[1] - 2 * rim_px, 10.0)
    scale = min(max(min(room_x / wide, room_y / high), SMALLEST), LARGEST)
    before = width_mm - box_mm[2] if behind else box_mm[0]  # what of the box lies left of the face, as shown
    left = (room_px[0] - wide * scale) / 2 - before * scale
    top = (room_px[1] - high * scale) / 2 - box_mm[1] * scale
    return FaceCamera(scale, left, top, width_mm, behind)
