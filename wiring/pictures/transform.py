"""Shift, turn, scale and mirror the items of a picture; words stay upright and readable when mirrored."""

import math
from collections.abc import Callable, Iterable

from wiring.pictures.picture import Anchor, Disc, Item, Link, Path, Point, Words

_MIRRORED_ALIGN = {"left": "right", "right": "left", "centre": "centre"}


def moved(items: Iterable[Item], by: Point) -> tuple[Item, ...]:
    """Return the items shifted."""
    # every item of a set of sheets is shifted once or twice: each record is built anew, without a detour
    dx, dy = by
    result: list[Item] = []
    for item in items:
        if isinstance(item, Path):
            result.append(Path(tuple([(x + dx, y + dy) for x, y in item.points]), *item[1:]))
        elif isinstance(item, Words):
            x, y = item.at
            result.append(Words(item.text, (x + dx, y + dy), *item[2:]))
        elif isinstance(item, Disc):
            x, y = item.centre
            result.append(Disc((x + dx, y + dy), *item[1:]))
        elif isinstance(item, Anchor):
            result.append(Anchor(item.name, (item.at[0] + dx, item.at[1] + dy)))
        else:
            result.append(Link(item.left_mm + dx, item.top_mm + dy, *item[2:]))
    return tuple(result)


def scaled(
    items: Iterable[Item], factor: float, *, words: bool = True, pens: bool = True
) -> tuple[Item, ...]:
    """Return the items scaled about (0, 0); text and line widths keep their size on paper where told."""
    return tuple(_mapped(i, lambda p: (p[0] * factor, p[1] * factor), factor, words, pens) for i in items)


def turned(items: Iterable[Item], degrees: float) -> tuple[Item, ...]:
    """Return the items turned clockwise about (0, 0); words turn with them."""
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    result: list[Item] = []
    for item in items:
        turned_item = _mapped(item, lambda p: (p[0] * cos - p[1] * sin, p[0] * sin + p[1] * cos), 1.0)
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
        other = _mapped(item, lambda p: (2 * about_x_mm - p[0], p[1]), 1.0)
        if isinstance(other, Words):
            other = other._replace(align=_MIRRORED_ALIGN[other.align], turn_deg=-other.turn_deg)  # type: ignore[arg-type]
        elif isinstance(other, Link):
            other = other._replace(left_mm=other.left_mm - other.width_mm)
        result.append(other)
    return tuple(result)


def _mapped(
    item: Item, point: Callable[[Point], Point], factor: float, words: bool = True, pens: bool = True
) -> Item:
    if isinstance(item, Words):
        return item._replace(at=point(item.at), size_mm=item.size_mm * (factor if words else 1.0))
    if isinstance(item, Anchor):
        return item._replace(at=point(item.at))
    if isinstance(item, Link):
        left, top = point((item.left_mm, item.top_mm))
        return item._replace(
            left_mm=left, top_mm=top, width_mm=item.width_mm * factor, height_mm=item.height_mm * factor
        )
    pen = item.pen
    if pens and factor != 1.0:
        pen = pen._replace(width_mm=pen.width_mm * factor, dashes_mm=tuple(d * factor for d in pen.dashes_mm))
    if isinstance(item, Disc):
        return item._replace(
            centre=point(item.centre),
            radius_x_mm=item.radius_x_mm * factor,
            radius_y_mm=item.radius_y_mm * factor,
            pen=pen,
        )
    return Path(tuple(point(p) for p in item.points), pen, *item[2:])
