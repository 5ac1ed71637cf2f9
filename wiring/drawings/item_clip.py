"""Cuts the items of a picture at the edge of a rectangle, so that a drawing can go on on another sheet."""

import math
from collections.abc import Iterable

from wiring.drawings.plan_clip import pieces
from wiring.drawings.plan_fit import Box, around
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import NO_FILL, NO_PEN, Anchor, Disc, Item, Link, Path, Point, Words

_CORNERS = 48  # of the polygon that stands for a cut circle: off by a thousandth of its radius
_STEPS = 8  # stretches of a cut curve between two of its points


def item_box(item: Item) -> Box:
    """Return the upright rectangle an item fills, with the width of its pen."""
    if isinstance(item, Words):
        return words_box(item)
    if isinstance(item, Link):
        return item.left_mm, item.top_mm, item.left_mm + item.width_mm, item.top_mm + item.height_mm
    if isinstance(item, Anchor):
        return *item.at, *item.at
    half = item.pen.width_mm / 2
    if isinstance(item, Disc):
        (x, y), across, high = item.centre, item.radius_x_mm + half, item.radius_y_mm + half
        return x - across, y - high, x + across, y + high
    left, top, right, bottom = around(item.points)
    return left - half, top - half, right + half, bottom + half


def clipped(items: Iterable[Item], box: Box) -> tuple[Item, ...]:
    """Return what of the items lies in a box; words that do not fit in whole are left out."""
    kept: list[Item] = []
    for item in items:
        left, top, right, bottom = item_box(item)
        if left >= box[0] and top >= box[1] and right <= box[2] and bottom <= box[3]:
            kept.append(item)
        elif left > box[2] or top > box[3] or right < box[0] or bottom < box[1]:
            continue
        elif isinstance(item, Path):
            kept += _cut(item, box)
        elif isinstance(item, Disc):
            kept += _cut(_polygon(item), box)
    return tuple(kept)


def _cut(path: Path, box: Box) -> list[Item]:
    """Return the filled part of a path, then what of its line lies in the box."""
    points = _flat(path.points) if path.smooth else path.points
    cut: list[Item] = []
    if path.fill != NO_FILL and len(points) > 2 and len(inner := polygon_in(points, box)) > 2:
        cut.append(Path(inner, NO_PEN, path.fill, True, opacity=path.opacity))
    if path.pen.width_mm > 0.0:
        line = (*points, points[0]) if path.closed else points
        cut += [Path(piece.points, path.pen, opacity=path.opacity) for piece in pieces(line, box)]
    return cut


def polygon_in(points: Iterable[Point], box: Box) -> tuple[Point, ...]:
    """Return the part of a polygon inside a box (Sutherland, Hodgman 1974)."""
    kept = list(points)
    for axis, edge, sense in ((0, box[0], 1), (0, box[2], -1), (1, box[1], 1), (1, box[3], -1)):
        inside = [(p[axis] - edge) * sense >= 0.0 for p in kept]
        now: list[Point] = []
        for i, point in enumerate(kept):
            if inside[i] != inside[i - 1]:
                before = kept[i - 1]
                share = (edge - before[axis]) / (point[axis] - before[axis])
                other = before[1 - axis] + (point[1 - axis] - before[1 - axis]) * share
                now.append((edge, other) if axis == 0 else (other, edge))
            if inside[i]:
                now.append(point)
        kept = now
    return tuple(kept)


def _flat(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return a chain of cubic Bézier curves as a polyline."""
    flat = [points[0]]
    for i in range(1, len(points) - 2, 3):
        a, b, c, d = flat[-1], points[i], points[i + 1], points[i + 2]
        for step in range(1, _STEPS + 1):
            t = step / _STEPS
            u = 1.0 - t
            one, two, three, four = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
            flat.append(
                (
                    one * a[0] + two * b[0] + three * c[0] + four * d[0],
                    one * a[1] + two * b[1] + three * c[1] + four * d[1],
                )
            )
    return tuple(flat)


def _polygon(disc: Disc) -> Path:
    angles = [2 * math.pi * i / _CORNERS for i in range(_CORNERS)]
    (x, y), across, high = disc.centre, disc.radius_x_mm, disc.radius_y_mm
    points = tuple((x + across * math.cos(a), y + high * math.sin(a)) for a in angles)
    return Path(points, disc.pen, disc.fill, closed=True, opacity=disc.opacity)
