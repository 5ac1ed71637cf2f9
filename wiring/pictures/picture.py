"""A picture: shapes and words in millimetres, y down, painted in order; paper, SVG and screen share it."""

from typing import Literal, NamedTuple

Point = tuple[float, float]
# Roles are resolved by the painter's theme, so one picture serves paper, light and dark screens:
# "ink", "quiet" (grey ink), "faint" (hairlines, grids), "paper", "raised" (panel faces, row bands),
# "copper" (the accent), "lit" (light of a lamp), "danger", "weak", "note". Anything else is "#rrggbb".
Colour = str
NO_FILL = ""


class Pen(NamedTuple):
    """How a line is drawn; width 0 draws none. Dashes are on/off lengths in millimetres."""

    colour: Colour = "ink"
    width_mm: float = 0.25
    dashes_mm: tuple[float, ...] = ()


NO_PEN = Pen("ink", 0.0)


class Path(NamedTuple):
    """A polyline or polygon; `smooth` lets each three points after the first be a cubic Bézier step."""

    points: tuple[Point, ...]
    pen: Pen = Pen()
    fill: Colour = NO_FILL
    closed: bool = False
    smooth: bool = False
    opacity: float = 1.0


class Disc(NamedTuple):
    """A circle or an ellipse."""

    centre: Point
    radius_x_mm: float
    radius_y_mm: float
    pen: Pen = Pen()
    fill: Colour = NO_FILL
    opacity: float = 1.0


class Words(NamedTuple):
    """One line of text. `at` is on the baseline, cap-middle or cap-top, by `stand`; size is the em in mm."""

    text: str
    at: Point
    size_mm: float = 3.0
    colour: Colour = "ink"
    weight: Literal["regular", "semibold", "bold", "italic"] = "regular"
    align: Literal["left", "centre", "right"] = "left"
    stand: Literal["base", "middle", "top"] = "base"
    turn_deg: float = 0.0  # clockwise on the page
    ground: Colour = NO_FILL  # colour laid under the text so that lines do not run through it


class Link(NamedTuple):
    """A rectangle that leads to a named place in the same set of pages (PDF only)."""

    left_mm: float
    top_mm: float
    width_mm: float
    height_mm: float
    target: str


class Anchor(NamedTuple):
    """A named place that links lead to (PDF only)."""

    name: str
    at: Point


Item = Path | Disc | Words | Link | Anchor


class Picture(NamedTuple):
    """Items and the size of the area they fill, from (left, top)."""

    items: tuple[Item, ...]
    width_mm: float
    height_mm: float
    left_mm: float = 0.0
    top_mm: float = 0.0
    title: str = ""
