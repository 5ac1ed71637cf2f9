"""Shift, turn, scale and mirror the items of a picture; words stay upright and readable when mirrored."""

import math
from collections.abc import Callable, Iterable

from wiring.pictures.picture import Anchor, Disc, Item, Link, Path, Pen, Point, Words

_MIRRORED_ALIGN = {"left": "right", "right": "left", "centre": "centre"}


def moved(items: Iterable[Item], by: Point) -> tuple[Item, ...]:
    """Return the items shifted."""
    # every item of a set of sheets is shifted once or twice: each record is built anew, without a detour,
    # not even by the method a named tuple has for that
    dx, dy = by
    new = tuple.__new__
    result: list[Item] = []
    add = result.append
    points: tuple[Point, ...] = ()
    shifted: tuple[Point, ...] = ()
    for item in items:
        if isinstance(item, Path):
            along, pen, fill, closed, smooth, opacity = item
            if along is not points:  # the edge of a wire and its colour run along the same points
                points, shifted = along, tuple([(x + dx, y + dy) for x, y in along])
            add(new(Path, (shifted, pen, fill, closed, smooth, opacity)))
        elif isinstance(item, Words):
            text, (x, y), *rest = item
            add(new(Words, (text, (x + dx, y + dy), *rest)))
        elif isinstance(item, Disc):
            (x, y), across, down, pen, fill, opacity = item
            add(new(Disc, ((x + dx, y + dy), across, down, pen, fill, opacity)))
        elif isinstance(item, Anchor):
            add(Anchor(item.name, (item.at[0] + dx, item.at[1] + dy)))
        else:
            add(Link(item.left_mm + dx, item.top_mm + dy, *item[2:]))
    return tuple(result)


def scaled(
    items: Iterable[Item], factor: float, *, words: bool = True, pens: bool = True
) -> tuple[Item, ...]:
    """Return the items scaled about (0, 0); text and line widths keep their size on paper where told."""
    pens_by = factor if pens else 1.0
    result: list[Item] = []
    for item in items:
        if isinstance(item, Path):  # most of what is scaled
            points = tuple([(x * factor, y * factor) for x, y in item.points])
            result.append(Path(points, _thicker(item.pen, pens_by), *item[2:]))
        elif isinstance(item, Disc):
            at = (item.centre[0] * factor, item.centre[1] * factor)
            across, down = item.radius_x_mm * factor, item.radius_y_mm * factor
            result.append(Disc(at, across, down, _thicker(item.pen, pens_by), *item[4:]))
        else:
            result.append(_mapped(item, lambda p: (p[0] * factor, p[1] * factor), factor, words))
    return tuple(result)


def _thicker(pen: Pen, by: float) -> Pen:
    if by == 1.0:
        return pen
    return Pen(pen.colour, pen.width_mm * by, tuple([d * by for d in pen.dashes_mm]))


def turned(items: Iterable[Item], degrees: float) -> tuple[Item, ...]:
    """Return the items turned clockwise about (0, 0); words turn with them."""
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    result: list[Item] = []
    for item in items:
        turned_item = _mapped(item, lambda p: (p[0] * cos - p[1] * sin, p[0] * sin + p[1] * cos))
        if isinstance(turned_item, Words):
            turned_item = turned_item._replace(turn_deg=turned_item.turn_deg + degrees)
        elif isinstance(turned_item, Disc) and round(degrees) % 180 == 90:
            turned_item = turned_item._replace(
                radius_x_mm=turned_item.radius_y_mm, radius_y_mm=turned_item.radius_x_mm
            )
        result.append(turned_item)
    return tuple(result)


def mirrored(items: Iterable[Item], about_x_mm: float) -> tuple[Item, ...]:
    """Return the items as seen from below: left and right swapped about a line, words still readable."""
    result: list[Item] = []
    for item in items:
        other = _mapped(item, lambda p: (2 * about_x_mm - p[0], p[1]))
        if isinstance(other, Words):
            other = other._replace(align=_MIRRORED_ALIGN[other.align], turn_deg=-other.turn_deg)  # type: ignore[arg-type]
        elif isinstance(other, Link):
            other = other._replace(left_mm=other.left_mm - other.width_mm)
        result.append(other)
    return tuple(result)


def _mapped(item: Item, point: Callable[[Point], Point], factor: float = 1.0, words: bool = True) -> Item:
    """Return an item with its points elsewhere and its sizes, but for its pen, by a factor."""
    if isinstance(item, Words):
        return item._replace(at=point(item.at), size_mm=item.size_mm * (factor if words else 1.0))
    if isinstance(item, Anchor):
        return item._replace(at=point(item.at))
    if isinstance(item, Link):
        left, top = point((item.left_mm, item.top_mm))
        return item._replace(
            left_mm=left, top_mm=top, width_mm=item.width_mm * factor, height_mm=item.height_mm * factor
        )
    if isinstance(item, Disc):
        return Disc(point(item.centre), *item[1:])
    return Path(tuple([point(p) for p in item.points]), *item[1:])
