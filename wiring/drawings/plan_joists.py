"""Joists on a plan view: light hatched bars, to find one's place under the layout."""

import math

from wiring.drawings.plan_clip import pieces
from wiring.drawings.plan_fit import Box, Fit
from wiring.pictures.picture import Item, Path, Pen, Point
from wiring.plan.joist import Joist
from wiring.plan.plan import Plan

_EDGE = Pen("faint", 0.25)
_HATCH = Pen("faint", 0.13)
HATCH_MM = 2.2  # from line to line along the bar, on paper
LEAST_MM = 0.8  # a bar is never thinner on paper


def joist_items(plan: Plan, fit: Fit, clip: Box) -> tuple[Item, ...]:
    """Return the bars of all joists, cut at the edge of the view."""
    items: list[Item] = []
    for joist in plan.joists:
        for pen, line in _lines(joist, fit):
            items += [Path(piece.points, pen) for piece in pieces(line, clip)]
    return tuple(items)


def _lines(joist: Joist, fit: Fit) -> list[tuple[Pen, tuple[Point, ...]]]:
    """Return the outline of a bar and the strokes across it, on paper."""
    a, b = fit.at(joist.start), fit.at(joist.end)
    length = math.dist(a, b)
    if length < 1e-6:
        return []
    along = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    half = max(joist.width_mm * fit.scale, LEAST_MM) / 2

    def at(far: float, aside: float) -> Point:
        return a[0] + along[0] * far - along[1] * aside, a[1] + along[1] * far + along[0] * aside

    corners = (at(0, -half), at(length, -half), at(length, half), at(0, half))
    lines: list[tuple[Pen, tuple[Point, ...]]] = [(_EDGE, (*corners, corners[0]))]
    lean = min(2 * half, length)  # strokes lie at 45 degrees to the bar
    count = int((length - lean) / HATCH_MM)
    for i in range(count + 1):
        far = (length - lean - count * HATCH_MM) / 2 + i * HATCH_MM
        lines.append((_HATCH, (at(far, -half), at(far + lean, half))))
    return lines
