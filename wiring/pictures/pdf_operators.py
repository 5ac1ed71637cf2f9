"""Writes one page's shapes and words as PDF operators (ISO 32000), setting only what differs from before.

A set of sheets has some fifty thousand items; a call of the canvas for each value of each of them is what
made printing slow, so the painter writes the page's content itself and leaves the file to the canvas.
"""

import math
from collections.abc import Callable
from functools import cache, lru_cache
from typing import Any, NamedTuple

from wiring.pictures.metrics import baseline_mm, ground_corners, start_mm
from wiring.pictures.picture import Disc, Path, Pen, Picture, Point, Words
from wiring.pictures.theme import Theme, resolve
from wiring.pictures.typefaces import BOX_EM, printable, runs, typeface

PT_PER_MM = 72 / 25.4
_ARC = 4 / 3 * (math.sqrt(2) - 1)  # how far a quarter circle's Bézier handles reach, of its radius
_ESCAPES = {i: f"\\{i:03o}" for i in (*range(32), *range(127, 256))} | {c: "\\" + chr(c) for c in b"\\()"}


class _Line(NamedTuple):
    """A line of text in em, from the point it is aligned to: its runs, the boxes of signs it lacks."""

    runs: tuple[tuple[tuple[tuple[str, str], ...], float], ...]  # font names and operators, where it starts
    boxes: tuple[float, ...]
    down_em: float  # from that point to the baseline


Texts = Callable[[str, str, str, str], _Line]  # text, weight, align, stand -> how it is written


class Operators:
    """The operators of one page, in the order of its items."""

    def __init__(self, canvas: Any, picture: Picture, theme: Theme, texts: Texts) -> None:  # noqa: ANN401
        self.lines: list[str] = []
        self._canvas = canvas
        self._theme = theme
        self._texts = texts
        self._left_pt = -picture.left_mm * PT_PER_MM
        self._top_pt = (picture.top_mm + picture.height_mm) * PT_PER_MM
        self._pen: Pen | None = None
        self._stroke = self._fill = ""
        self._width_pt = -1.0
        self._dashes_mm: tuple[float, ...] = ()
        self._font = ("", 0.0)

    def flush(self) -> None:
        """Hand what was written so far to the canvas' current page."""
        if self.lines:
            self._canvas.addLiteral("\n".join(self.lines))
            self.lines.clear()

    def path(self, path: Path) -> None:
        """Add a polyline, polygon or curve; nothing for one without two points or without a brush."""
        stroked, filled = path.pen.width_mm > 0, bool(path.fill)
        if len(path.points) < 2 or not (stroked or filled):
            return
        outline = _outline(path.points, path.smooth, path.closed, self._left_pt, self._top_pt)
        self._paint(outline, path.pen, path.fill, path.opacity)

    def disc(self, disc: Disc) -> None:
        """Add a circle or an ellipse as four Bézier quarters."""
        if disc.pen.width_mm <= 0 and not disc.fill:
            return
        outline = _ellipse(disc.radius_x_mm * PT_PER_MM, disc.radius_y_mm * PT_PER_MM)
        self._paint(outline, disc.pen, disc.fill, disc.opacity, f"1 0 0 1 {self._at(disc.centre)} cm")

    def words(self, words: Words) -> None:
        """Add one line of text; a sign the typeface lacks becomes an empty box."""
        text, (x, y), size_mm, colour, weight, align, stand, turn_deg, ground = words
        if size_mm <= 0:
            return
        line = self._texts(text, weight, align, stand)
        if not (line.runs or line.boxes):
            return
        if ground:
            self.path(Path(ground_corners(words), Pen(width_mm=0.0), ground, closed=True))
        down = line.down_em * size_mm
        if line.runs:
            self._set_fill(colour)
        size_pt = size_mm * PT_PER_MM
        for glyphs, along_em in line.runs:
            along = along_em * size_mm
            if turn_deg:
                cos, sin = _turn(turn_deg)
                at = self._at((x + along * cos - down * sin, y + along * sin + down * cos))
                begin = f"BT {cos:.6f} {-sin:.6f} {sin:.6f} {cos:.6f} {at} Tm"
            else:
                left, top = self._left_pt + (x + along) * PT_PER_MM, self._top_pt - (y + down) * PT_PER_MM
                begin = f"BT {left:.3f} {top:.3f} Td"
            for name, shown in glyphs:
                if (name, size_pt) != self._font:
                    begin += f"\n{name} {size_pt:.3f} Tf"
                    self._font = (name, size_pt)
                begin += f"\n{shown}"
            self.lines.append(begin + "\nET")
        for along_em in line.boxes:
            self._box(along_em * size_mm, down, words)

    def _box(self, left_mm: float, down_mm: float, words: Words) -> None:
        """Add the empty box of one missing sign, in a state of its own that is turned with the words."""
        size = words.size_mm * PT_PER_MM
        cos, sin = _turn(words.turn_deg)
        red_green_blue = _rgb(resolve(words.colour, self._theme))
        side, cap = 0.08 * size, typeface(words.weight).cap_em * size
        x, y = left_mm * PT_PER_MM + side, -down_mm * PT_PER_MM
        self.lines += [
            "q",
            f"{cos:.6f} {-sin:.6f} {sin:.6f} {cos:.6f} {self._at(words.at)} cm",
            f"{red_green_blue} RG {0.04 * size:.3f} w [] 0 d",
            f"{x:.3f} {y:.3f} {BOX_EM * size - 2 * side:.3f} {cap:.3f} re S",
            "Q",
        ]

    def _paint(self, outline: str, pen: Pen, fill: str, opacity: float, place: str = "") -> None:
        if opacity < 1:
            self.flush()
            self._canvas.saveState()
            self._canvas.setFillAlpha(max(0.0, opacity))
            self._canvas.setStrokeAlpha(max(0.0, opacity))
            before = self._stroke, self._fill, self._width_pt, self._dashes_mm
        stroked = pen.width_mm > 0
        if stroked and pen != self._pen:
            self._set_pen(pen)
        if fill:
            self._set_fill(fill)
        paint = ("B" if fill else "S") if stroked else "f"
        self.lines.append(f"q {place} {outline} {paint} Q" if place else f"{outline} {paint}")
        if opacity < 1:
            self.flush()
            self._canvas.restoreState()
            self._stroke, self._fill, self._width_pt, self._dashes_mm = before
            self._pen = None

    def _set_pen(self, pen: Pen) -> None:
        self._pen = pen
        stroke, width = self._theme.get(pen.colour, pen.colour), pen.width_mm * PT_PER_MM
        if stroke != self._stroke:
            self.lines.append(f"{_rgb(stroke)} RG")
            self._stroke = stroke
        if width != self._width_pt:
            self.lines.append(f"{width:.3f} w")
            self._width_pt = width
        if pen.dashes_mm != self._dashes_mm:
            lengths = pen.dashes_mm if any(d > 0 for d in pen.dashes_mm) else ()
            self.lines.append(f"[{' '.join(f'{d * PT_PER_MM:.3f}' for d in lengths)}] 0 d")
            self._dashes_mm = pen.dashes_mm

    def _set_fill(self, colour: str) -> None:
        fill = self._theme.get(colour, colour)
        if fill != self._fill:
            self.lines.append(f"{_rgb(fill)} rg")
            self._fill = fill

    def _at(self, point: Point) -> str:
        return f"{self._left_pt + point[0] * PT_PER_MM:.3f} {self._top_pt - point[1] * PT_PER_MM:.3f}"


@cache
def _ellipse(across_pt: float, down_pt: float) -> str:
    """Return an ellipse about (0, 0) as four Bézier quarters."""
    a, b, u, v = across_pt, down_pt, across_pt * _ARC, down_pt * _ARC
    quarters = (
        (a, v, u, b, 0.0, b),
        (-u, b, -a, v, -a, 0.0),
        (-a, -v, -u, -b, 0.0, -b),
        (u, -b, a, -v, a, 0.0),
    )
    curves = (f"{' '.join(f'{n:.3f}' for n in quarter)} c" for quarter in quarters)
    return f"{a:.3f} 0 m {' '.join(curves)} h"


def texts_of(document: Any) -> Texts:  # noqa: ANN401 - a reportlab document
    """Return how text is written in one document's subsets of the typeface; asked once for each text."""

    @cache
    def glyphs(text: str, weight: str) -> tuple[tuple[str, str], ...]:
        font = typeface(weight).font
        return tuple(
            (
                font.getSubsetInternalName(subset, document),
                f"({codes.decode('latin-1').translate(_ESCAPES)}) Tj",
            )
            for subset, codes in font.splitString(text, document)
        )

    @cache
    def texts(text: str, weight: str, align: str, stand: str) -> _Line:
        return _line(Words(text, (0.0, 0.0), 1.0, "", weight, align, stand), glyphs)  # type: ignore[arg-type]

    return texts


@lru_cache(maxsize=16384)
def _outline(points: tuple[Point, ...], smooth: bool, closed: bool, left_pt: float, top_pt: float) -> str:
    """Return a line of a page as operators: frames, rules and boxes are the same on page after page."""
    first, *rest = [f"{left_pt + x * PT_PER_MM:.3f} {top_pt - y * PT_PER_MM:.3f}" for x, y in points]
    if smooth:
        steps = [f"{' '.join(rest[i : i + 3])} c" for i in range(0, len(rest) - 2, 3)]
        outline = f"{first} m {' '.join(steps)}"
    else:
        outline = f"{first} m {' l '.join(rest)} l"
    return f"{outline} h" if closed else outline


def _line(one: Words, glyphs: Callable[[str, str], tuple[tuple[str, str], ...]]) -> _Line:
    """Return how words of size 1 are laid out, and so of any size: most texts of a set stand on it often."""
    if not printable(one.text).strip():
        return _Line((), (), 0.0)
    along, boxes = start_mm(one), list[float]()
    found: list[tuple[tuple[tuple[str, str], ...], float]] = []
    parted = runs(one.text, one.weight)
    for run in parted:
        if run:
            found.append((glyphs(run, one.weight), along))
            along += _advance_em(run, one.weight) if len(parted) > 1 else 0.0  # nothing follows the only one
        else:
            boxes.append(along)
            along += BOX_EM
    return _Line(tuple(found), tuple(boxes), baseline_mm(one))


@cache
def _advance_em(text: str, weight: str) -> float:
    advances = typeface(weight).advances_em
    return sum(advances[ord(c)] for c in text)


@cache
def _rgb(colour: str) -> str:
    return " ".join(f"{int(colour[i : i + 2], 16) / 255:.4g}" for i in (1, 3, 5))


@cache
def _turn(degrees: float) -> Point:
    return math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
