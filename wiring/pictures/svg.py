"""Paint a picture as SVG 1.1: one user unit is one millimetre, text stays text."""

from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

from wiring.pictures.metrics import baseline_mm, ground_corners, width_mm
from wiring.pictures.picture import Disc, Item, Path, Pen, Picture, Point, Words
from wiring.pictures.theme import PAPER, Theme, resolve
from wiring.pictures.typefaces import printable

# Width is pinned by textLength, so a reader without the first family still sets each line to its measure.
FAMILIES = "Lato, Carlito, 'Noto Sans', 'Segoe UI', Helvetica, Arial, sans-serif"
_ANCHORS = {"left": "start", "centre": "middle", "right": "end"}
_WEIGHTS = {"regular": "", "semibold": ' font-weight="600"', "bold": ' font-weight="700"'}
_ITALIC = ' font-style="italic"'


def svg_text(picture: Picture, theme: Theme = PAPER) -> str:
    """Return a whole SVG document the size of the picture, on the theme's paper."""
    left, top, width, height = (
        _number(v) for v in (picture.left_mm, picture.top_mm, picture.width_mm, picture.height_mm)
    )
    paper = resolve("paper", theme)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="{width}mm" height="{height}mm"'
        f' viewBox="{left} {top} {width} {height}">',
        f"<title>{escape(printable(picture.title))}</title>" if picture.title else "",
        f'<rect x="{left}" y="{top}" width="{width}" height="{height}" fill="{paper}"/>',
        f'<g font-family="{FAMILIES}" font-kerning="none" stroke-linejoin="round">',
        *svg_items(picture.items, theme),
        "</g>",
        "</svg>",
    ]
    return "\n".join(line for line in lines if line) + "\n"


def svg_items(items: Iterable[Item], theme: Theme = PAPER) -> list[str]:
    """Return one element per visible item; links and anchors belong to PDF and give none."""
    lines: list[str] = []
    for item in items:
        if isinstance(item, Path):
            lines.append(_path(item, theme))
        elif isinstance(item, Disc):
            lines.append(_disc(item, theme))
        elif isinstance(item, Words):
            lines.extend(_words(item, theme))
    return [line for line in lines if line]


def _path(path: Path, theme: Theme) -> str:
    if len(path.points) < 2:
        return ""
    data = "M" + _point(path.points[0])
    rest = path.points[1:]
    if path.smooth:
        for step in range(0, len(rest) - 2, 3):
            data += "C" + " ".join(_point(p) for p in rest[step : step + 3])
    else:
        data += "".join("L" + _point(p) for p in rest)
    if path.closed:
        data += "Z"
    return f'<path d="{data}"{_paint(path.pen, path.fill, path.opacity, theme)}/>'


def _disc(disc: Disc, theme: Theme) -> str:
    x, y = _number(disc.centre[0]), _number(disc.centre[1])
    paint = _paint(disc.pen, disc.fill, disc.opacity, theme)
    if disc.radius_x_mm == disc.radius_y_mm:
        return f'<circle cx="{x}" cy="{y}" r="{_number(disc.radius_x_mm)}"{paint}/>'
    radii = f'rx="{_number(disc.radius_x_mm)}" ry="{_number(disc.radius_y_mm)}"'
    return f'<ellipse cx="{x}" cy="{y}" {radii}{paint}/>'


def _words(words: Words, theme: Theme) -> list[str]:
    text = printable(words.text)
    if not text.strip() or words.size_mm <= 0:
        return []
    lines = []
    if words.ground:
        points = " ".join(_point(p) for p in ground_corners(words))
        lines.append(f'<polygon points="{points}" fill={_colour(words.ground, theme)}/>')
    x, y = words.at
    turn = f' transform="rotate({_number(words.turn_deg)} {_point(words.at)})"' if words.turn_deg else ""
    length = _number(width_mm(text, words.size_mm, words.weight))
    lines.append(
        f'<text xml:space="preserve" x="{_number(x)}" y="{_number(y + baseline_mm(words))}"'
        f' font-size="{_number(words.size_mm)}"{_WEIGHTS.get(words.weight, _ITALIC)}'
        f' text-anchor="{_ANCHORS[words.align]}" textLength="{length}"'
        f" fill={_colour(words.colour, theme)}{turn}>{escape(text)}</text>"
    )
    return lines


def _paint(pen: Pen, fill: str, opacity: float, theme: Theme) -> str:
    paint = f" fill={_colour(fill, theme)}" if fill else ' fill="none"'
    if pen.width_mm > 0:
        paint += f' stroke={_colour(pen.colour, theme)} stroke-width="{_number(pen.width_mm)}"'
        if pen.dashes_mm:
            paint += f' stroke-dasharray="{" ".join(_number(d) for d in pen.dashes_mm)}"'
    if opacity < 1:
        paint += f' opacity="{_number(max(0.0, opacity))}"'
    return paint


def _colour(colour: str, theme: Theme) -> str:
    return quoteattr(resolve(colour, theme))


def _point(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _number(value: float) -> str:
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
