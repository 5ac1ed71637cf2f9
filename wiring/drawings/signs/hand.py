"""The one hand all signs are drawn with: pens, and the few shapes they are made of."""

import math
from typing import NamedTuple

from wiring.catalogue.kind import Kind, Value
from wiring.pictures.picture import NO_FILL, NO_PEN, Colour, Disc, Item, Path, Pen, Point
from wiring.plan.part import Part

EDGE = Pen("ink", 0.4)
FINE = Pen("ink", 0.25)
HAIR = Pen("quiet", 0.2)
LEAD = Pen("quiet", 0.5)
# A quarter turn of a circle as one Bézier step leaves its arc by this share of the radius.
_QUARTER = 0.5523


class State(NamedTuple):
    """How a part stands: its position, how bright it looks (CIE lightness, 0 to 100), seen from where."""

    position: str = ""
    lightness: float | None = None
    below: bool = False


def line(*points: Point, pen: Pen = FINE) -> Path:
    """Return an open line through points."""
    return Path(points, pen)


def shape(*points: Point, pen: Pen = EDGE, fill: Colour = "raised", opacity: float = 1.0) -> Path:
    """Return a closed shape with corners."""
    return Path(points, pen, fill, closed=True, opacity=opacity)


def dot(
    at: Point, radius_mm: float, *, pen: Pen = FINE, fill: Colour = NO_FILL, opacity: float = 1.0
) -> Disc:
    """Return a circle."""
    return Disc(at, radius_mm, radius_mm, pen, fill, opacity)


def box(
    centre: Point,
    width_mm: float,
    height_mm: float,
    *,
    corner_mm: float = 0.0,
    pen: Pen = EDGE,
    fill: Colour = "raised",
    opacity: float = 1.0,
) -> Path:
    """Return an upright rectangle about a point, its corners rounded where told."""
    left, top = centre[0] - width_mm / 2, centre[1] - height_mm / 2
    right, bottom = left + width_mm, top + height_mm
    r = min(corner_mm, width_mm / 2, height_mm / 2)
    if r <= 0:
        corners = ((left, top), (right, top), (right, bottom), (left, bottom))
        return Path(corners, pen, fill, closed=True, opacity=opacity)
    k = r * (1 - _QUARTER)
    points: list[Point] = [(left + r, top)]
    _straight(points, (right - r, top))
    points += [(right - k, top), (right, top + k), (right, top + r)]
    _straight(points, (right, bottom - r))
    points += [(right, bottom - k), (right - k, bottom), (right - r, bottom)]
    _straight(points, (left + r, bottom))
    points += [(left + k, bottom), (left, bottom - k), (left, bottom - r)]
    _straight(points, (left, top + r))
    points += [(left, top + k), (left + k, top), (left + r, top)]
    return Path(tuple(points), pen, fill, closed=True, smooth=True, opacity=opacity)


def _straight(points: list[Point], to: Point) -> None:
    (x, y), (u, v) = points[-1], to
    points += [(x + (u - x) / 3, y + (v - y) / 3), (u - (u - x) / 3, v - (v - y) / 3), to]


def tint(centre: Point, width_mm: float, height_mm: float, colour: Colour, opacity: float) -> Path:
    """Return a flat rectangle without an edge, for shading."""
    return box(centre, width_mm, height_mm, pen=NO_PEN, fill=colour, opacity=opacity)


def wave(at: Point, width_mm: float, pen: Pen = FINE) -> Path:
    """Return one period of a sine, the mark of alternating current."""
    (x, y), w = at, width_mm
    return Path(
        (
            (x - w / 2, y),
            (x - w / 3, y - w / 2.2),
            (x - w / 6, y - w / 2.2),
            (x, y),
            (x + w / 6, y + w / 2.2),
            (x + w / 3, y + w / 2.2),
            (x + w / 2, y),
        ),
        pen,
        smooth=True,
    )


def screw(at: Point, radius_mm: float, turn_deg: float = 35.0) -> tuple[Item, ...]:
    """Return a slotted screw head."""
    angle = math.radians(turn_deg)
    dx, dy = 0.75 * radius_mm * math.cos(angle), 0.75 * radius_mm * math.sin(angle)
    slot = line((at[0] - dx, at[1] - dy), (at[0] + dx, at[1] + dy), pen=Pen("ink", radius_mm * 0.22))
    return dot(at, radius_mm, fill="faint"), slot


def leads(kind: Kind, half_width_mm: float, half_height_mm: float) -> tuple[Item, ...]:
    """Return the bare wire from each terminal to the body, which fills a box about the centre."""
    found: list[Item] = []
    for terminal in kind.terminals:
        x = max(-half_width_mm, min(half_width_mm, terminal.x_mm))
        y = max(-half_height_mm, min(half_height_mm, terminal.y_mm))
        if (x, y) != (terminal.x_mm, terminal.y_mm):
            found.append(line((terminal.x_mm, terminal.y_mm), (x, y), pen=LEAD))
    return tuple(found)


def setting(kind: Kind, part: Part | None, name: str, fallback: Value) -> Value:
    """Return a part's own value of a setting, else its kind's usual one, else the fallback."""
    if part is not None and name in part.settings:
        return part.settings[name]
    return next((s.default for s in kind.settings if s.name == name), fallback)


def number(kind: Kind, part: Part | None, name: str, fallback: float) -> float:
    """Return a setting as a number; the fallback when it is not one."""
    value = setting(kind, part, name, fallback)
    return fallback if isinstance(value, str) else float(value)
