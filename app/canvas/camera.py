"""Which part of the plan the view shows, and how large: plan millimetres to pixels and back."""

import math
from typing import NamedTuple

from app.canvas.geometry import Box
from wiring.plan.places import Point

SMALLEST, LARGEST = 0.02, 40.0  # pixels per millimetre: 50 m on a screen, down to one terminal

NOISE_PX = 1e-4


class Camera(NamedTuple):
    """`left_mm`, `top_mm` lie at pixel (0, 0); `scale` is pixels per millimetre."""

    scale: float = 1.0
    left_mm: float = 0.0
    top_mm: float = 0.0

    def to_plan(self, x_px: float, y_px: float) -> Point:
        """Return the place of the plan under a pixel."""
        return self.left_mm + x_px / self.scale, self.top_mm + y_px / self.scale

    def to_px(self, x_mm: float, y_mm: float) -> Point:
        """Return the pixel over a place of the plan."""
        return (x_mm - self.left_mm) * self.scale, (y_mm - self.top_mm) * self.scale

    def visible(self, width_px: float, height_px: float) -> Box:
        """Return the part of the plan that a window of that size shows."""
        return Box(*self.to_plan(0, 0), *self.to_plan(width_px, height_px))

    def zoomed(self, factor: float, at_px: Point) -> "Camera":
        """Return the camera nearer or farther; the place under one pixel stays there."""
        scale = min(max(self.scale * factor, SMALLEST), LARGEST)
        x, y = self.to_plan(*at_px)
        return Camera(scale, x - at_px[0] / scale, y - at_px[1] / scale)

    def panned(self, dx_px: float, dy_px: float) -> "Camera":
        """Return the camera after the paper was pulled by so many pixels."""
        return Camera(self.scale, self.left_mm - dx_px / self.scale, self.top_mm - dy_px / self.scale)


def whole_px(at: float) -> int:
    """Return the nearest pixel; halves go up even when rounding noise has taken a little off them.

    So what is painted at a place of a picture that was pulled along meets what was painted there before.
    """
    return math.floor(at + 0.5 + NOISE_PX)


def fitted(box: Box, width_px: float, height_px: float, rim_px: float, most: float = LARGEST) -> Camera:
    """Return the camera that shows a whole box in the middle, with a rim, no larger than `most`."""
    wide, high = max(box.right - box.left, 1.0), max(box.bottom - box.top, 1.0)
    room_x, room_y = max(width_px - 2 * rim_px, 10.0), max(height_px - 2 * rim_px, 10.0)
    scale = min(max(min(room_x / wide, room_y / high), SMALLEST), min(most, LARGEST))
    x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    return Camera(scale, x - width_px / 2 / scale, y - height_px / 2 / scale)


def round_step(least: float, steps: tuple[float, ...]) -> float:
    """Return the first of the steps that is not smaller; beyond the last, the last times a power of ten."""
    for step in steps:
        if step >= least:
            return step
    return steps[-1] * 10.0 ** math.ceil(math.log10(least / steps[-1]))
