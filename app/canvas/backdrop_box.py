"""The upright box round the picture under the plan."""

import math

from app.canvas.geometry import Box
from wiring.plan.backdrop import Backdrop


def backdrop_box(backdrop: Backdrop) -> Box:
    """Return the box round the picture under the plan."""
    angle = math.radians(backdrop.turn_deg)
    w, h = backdrop.width_px * backdrop.mm_per_px, backdrop.height_px * backdrop.mm_per_px
    corners = [(0.0, 0.0), (w, 0.0), (0.0, h), (w, h)]
    xs = [backdrop.x_mm + x * math.cos(angle) - y * math.sin(angle) for x, y in corners]
    ys = [backdrop.y_mm + x * math.sin(angle) + y * math.cos(angle) for x, y in corners]
    return Box(min(xs), min(ys), max(xs), max(ys))
