"""Record what schemdraw draws as items of a picture: its axes turn over, its lengths become millimetres."""

import math
from collections.abc import Sequence
from typing import Any, Literal

from wiring.pictures.picture import NO_FILL, Disc, Item, Path, Pen, Point, Words

DASHES_MM = {"--": (1.2, 0.8), ":": (0.3, 0.6), "-.": (1.2, 0.6, 0.3, 0.6)}
PT_MM = 25.4 / 72
_ALIGN: dict[str, Literal["left", "centre", "right"]] = {"left": "left", "right": "right"}
_STAND: dict[str, Literal["base", "middle", "top"]] = {"top": "top", "bottom": "base", "base": "base"}


class PictureFigure:
    """A figure in schemdraw's sense; hand it to an element's `_draw` and read `items`.

    Line widths are ours: schemdraw's default of 2 pt becomes `thin_mm`, anything wider `thick_mm`.
    Hatches, gradients, clipping and raster images have no place in a wiring sheet and are not taken over.
    """

    def __init__(self, mm_per_unit: float, thin_mm: float = 0.25, thick_mm: float = 0.35) -> None:
        self.mm_per_unit = mm_per_unit
        self.thin_mm = thin_mm
        self.thick_mm = thick_mm
        self.items: list[Item] = []

    def plot(self, x: Sequence[float], y: Sequence[float], **style: Any) -> None:  # noqa: ANN401
        """Take a polyline; a pair of NaN lifts the pen."""
        run: list[Point] = []
        for across, up in [*zip(x, y, strict=True), (math.nan, math.nan)]:
            if not (math.isnan(across) or math.isnan(up)):
                run.append(self._at((across, up)))
                continue
            if len(run) > 1 and any(p != run[0] for p in run):
                closed = len(run) > 3 and run[0] == run[-1]
                self.items.append(
                    Path(tuple(run[:-1] if closed else run), self._pen(style), _fill(style), closed)
                )
            run = []

    def poly(self, verts: Sequence[Point], closed: bool = True, **style: Any) -> None:  # noqa: ANN401
        """Take a polygon or an open polyline."""
        points = tuple(self._at(v) for v in verts)
        self.items.append(Path(points, self._pen(style), _fill(style), closed))

    def circle(self, center: Point, radius: float, **style: Any) -> None:  # noqa: ANN401
        """Take a circle."""
        r = radius * self.mm_per_unit
        self.items.append(Disc(self._at(center), r, r, self._pen(style), _fill(style)))

    def arc(  # noqa: D102 - the names are schemdraw's
        self,
        center: Point,
        width: float,
        height: float,
        theta1: float = 0,
        theta2: float = 90,
        angle: float = 0,
        arrow: str | None = None,
        **style: Any,  # noqa: ANN401
    ) -> None:
        span = theta2 - theta1
        while span <= 0:
            span += 360
        steps = max(2, math.ceil(span / 7.5))
        turn = math.radians(angle)
        points: list[Point] = []
        for step in range(steps + 1):
            at = math.radians(theta1 + span * step / steps)
            across, up = width / 2 * math.cos(at), height / 2 * math.sin(at)
            points.append(
                self._at(
                    (
                        center[0] + across * math.cos(turn) - up * math.sin(turn),
                        center[1] + across * math.sin(turn) + up * math.cos(turn),
                    )
                )
            )
        self.items.append(Path(tuple(points), self._pen(style), _fill(style)))
        if arrow:
            tip, before = (points[-1], points[-2]) if arrow == "ccw" else (points[0], points[1])
            self._head(tip, before, style.get("arrowlength", 0.25), style.get("arrowwidth", 0.15))

    def arrow(  # noqa: D102
        self, xy: Point, theta: float, arrowwidth: float = 0.15, arrowlength: float = 0.25, **_: object
    ) -> None:
        tip = self._at(xy)
        angle = math.radians(theta)
        self._head(tip, (tip[0] - math.cos(angle), tip[1] + math.sin(angle)), arrowlength, arrowwidth)

    def bezier(self, p: Sequence[Point], arrow: str | None = None, **style: Any) -> None:  # noqa: ANN401
        """Take a quadratic or cubic Bézier curve."""
        points = [self._at(q) for q in p]
        if len(points) == 3:
            points = _raised(*points)
        self.items.append(Path(tuple(points), self._pen(style), smooth=True))
        if arrow and ">" in arrow:
            self._head(points[-1], points[-2], style.get("arrowlength", 0.25), style.get("arrowwidth", 0.15))

    def path(self, path: Sequence[Point | str], **style: Any) -> None:  # noqa: ANN401
        """Take a path of M, L, C, Q and Z steps; curves become cubic runs of their own."""
        run: list[Point] = []
        step = "M"
        waiting: list[Point] = []
        for token in path:
            if isinstance(token, str):
                if token in "Zz" and run:
                    self.items.append(Path(tuple(run), self._pen(style), _fill(style), closed=True))
                    run = []
                step = token.upper()
                continue
            point = self._at(token)
            if step == "M":
                self._line(run, style)
                run, step = [point], "L"
            elif step == "L":
                run.append(point)
            else:
                waiting.append(point)
                if len(waiting) == (3 if step == "C" else 2):
                    curve = [run[-1], *waiting]
                    self._line(run, style)
                    self.items.append(
                        Path(tuple(curve if step == "C" else _raised(*curve)), self._pen(style), smooth=True)
                    )
                    run, waiting = [curve[-1]], []
        self._line(run, style)

    def text(  # noqa: D102
        self,
        s: str,
        x: float,
        y: float,
        fontsize: float = 14,
        rotation: float = 0,
        halign: str = "center",
        valign: str = "center",
        **_: object,
    ) -> None:
        size = fontsize * PT_MM
        for row, line in enumerate(s.split("\n")):
            across, down = self._at((x, y))
            self.items.append(
                Words(
                    line,
                    (across, down + row * 1.2 * size),
                    size,
                    align=_ALIGN.get(halign, "centre"),
                    stand=_STAND.get(valign, "middle"),
                    turn_deg=-rotation,
                )
            )

    def _line(self, run: list[Point], style: dict[str, Any]) -> None:
        if len(run) > 1:
            self.items.append(Path(tuple(run), self._pen(style), _fill(style)))

    def _head(self, tip: Point, before: Point, length: float, width: float) -> None:
        away = math.dist(tip, before) or 1.0
        ux, uy = (before[0] - tip[0]) / away, (before[1] - tip[1]) / away
        long, half = length * self.mm_per_unit, width * self.mm_per_unit / 2
        back = (tip[0] + ux * long, tip[1] + uy * long)
        wings = ((back[0] - uy * half, back[1] + ux * half), (back[0] + uy * half, back[1] - ux * half))
        self.items.append(Path((tip, *wings), Pen(width_mm=0.0), "ink", closed=True))

    def _pen(self, style: dict[str, Any]) -> Pen:
        width = style.get("lw") or 2
        return Pen(
            "ink", self.thin_mm if width <= 2 else self.thick_mm, DASHES_MM.get(style.get("ls") or "-", ())
        )

    def _at(self, point: Point) -> Point:
        return point[0] * self.mm_per_unit, -point[1] * self.mm_per_unit


def _fill(style: dict[str, Any]) -> str:
    fill = style.get("fill")
    if fill in (None, "none", False):
        return NO_FILL
    return "paper" if fill in ("white", "bg") else "ink"


def _raised(start: Point, middle: Point, end: Point) -> list[Point]:
    """Return the cubic that equals a quadratic Bézier curve."""

    def between(a: Point, b: Point) -> Point:
        return a[0] + 2 / 3 * (b[0] - a[0]), a[1] + 2 / 3 * (b[1] - a[1])

    return [start, between(start, middle), between(end, middle), end]
