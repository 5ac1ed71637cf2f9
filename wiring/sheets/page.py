"""The frame of a sheet: border and zones after ISO 5457, title block after ISO 7200, check bar, side sign."""

from collections.abc import Sequence
from functools import cache
from itertools import pairwise

from wiring.pictures.metrics import width_mm
from wiring.pictures.picture import Item, Path, Pen, Picture, Point, Words
from wiring.sheets.paper import FRAME_PEN_MM, Sheet
from wiring.sheets.title_block import TitleFields, title_block

CHECK_BAR_MM = 100.0
_ZONE_MM, _ZONE_PITCH_MM = 5.0, 50.0
_ZONE_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # ISO 5457 leaves out I and O
_BORDER = Pen("ink", 0.35)


def framed(sheet: Sheet, fields: TitleFields, body: Sequence[Item]) -> Picture:
    """Return the finished sheet: frame and title block round a body given in sheet coordinates."""
    items = (
        *body,
        *_border(sheet),
        *title_block(sheet, fields),
        *_foot(sheet, fields.side),
    )
    title = f"{fields.title}: {fields.kind}, sheet {fields.number} of {fields.of}"
    return Picture(items, sheet.width_mm, sheet.height_mm, title=title)


@cache
def _border(sheet: Sheet) -> tuple[Item, ...]:
    left, top, right, bottom = sheet.frame
    z = _ZONE_MM
    items: list[Item] = [
        _rectangle(left - z, top - z, right + z, bottom + z, _BORDER),
        _rectangle(left, top, right, bottom, Pen("ink", FRAME_PEN_MM)),
    ]
    middle_x, middle_y = (left + right) / 2, (top + bottom) / 2
    centring = Pen("ink", 0.7)
    # centring marks: 10 mm, starting at the border grid and reaching 5 mm over the frame
    items += [
        Path(((middle_x, top - z), (middle_x, top + z)), centring),
        Path(((middle_x, bottom - z), (middle_x, bottom + z)), centring),
        Path(((left - z, middle_y), (left + z, middle_y)), centring),
        Path(((right - z, middle_y), (right + z, middle_y)), centring),
    ]
    items += _zones(left, right, middle_x, top - z, across=True)
    items += _zones(left, right, middle_x, bottom, across=True)
    items += _zones(top, bottom, middle_y, left - z, across=False)
    items += _zones(top, bottom, middle_y, right, across=False)
    return tuple(items)


def _zones(start: float, end: float, middle: float, at: float, *, across: bool) -> list[Item]:
    """Return the divisions of one side, 50 mm from its middle outwards, and their names."""
    bounds = [start, *_cuts(start, end, middle), end]
    items: list[Item] = []
    for i, (a, b) in enumerate(pairwise(bounds)):
        name = str(i + 1) if across else _ZONE_LETTERS[i]
        centre = ((a + b) / 2, at + _ZONE_MM / 2) if across else (at + _ZONE_MM / 2, (a + b) / 2)
        items.append(Words(name, centre, 2.6, "quiet", align="centre", stand="middle"))
        if (i and b != end) or (i and a != middle):
            line = ((a, at), (a, at + _ZONE_MM)) if across else ((at, a), (at + _ZONE_MM, a))
            items.append(Path(line, _BORDER))
    return items


def zone(sheet: Sheet, point: Point) -> str:
    """Return the zone of a sheet a point lies in: its letter along the side, its number along the top."""
    left, top, right, bottom = sheet.frame
    column = sum(point[0] >= x for x in _cuts(left, right, (left + right) / 2))
    row = sum(point[1] >= y for y in _cuts(top, bottom, (top + bottom) / 2))
    return f"{_ZONE_LETTERS[row]}{column + 1}"


def _cuts(start: float, end: float, middle: float) -> list[float]:
    """Return the divisions of a side, 50 mm from its middle outwards."""
    cuts = [middle]
    while cuts[-1] + _ZONE_PITCH_MM < end - _ZONE_PITCH_MM / 4:
        cuts.append(cuts[-1] + _ZONE_PITCH_MM)
    while cuts[0] - _ZONE_PITCH_MM > start + _ZONE_PITCH_MM / 4:
        cuts.insert(0, cuts[0] - _ZONE_PITCH_MM)
    return cuts


def _foot(sheet: Sheet, side: str) -> tuple[Item, ...]:
    """Return the check bar, and the sign that says from which side the plan is seen."""
    left, _, right, bottom = sheet.frame
    block_left, block_top = sheet.title_block[0], sheet.title_block[1]
    items = check_bar(left + 5.0, block_top - 2.6, right)
    if side and block_left - left > 60.0:
        items += _side_sign((left + block_left) / 2, (block_top + bottom) / 2, side)
    return items


@cache
def check_bar(x: float, y: float, right: float) -> tuple[Item, ...]:
    """Return a bar of exactly 100 mm from (x, y) on, with a tick every 10 mm, and what it is for."""
    end = x + CHECK_BAR_MM
    ticks = [
        Path(((x + 10.0 * i, y - (1.6 if i % 5 == 0 else 0.9)), (x + 10.0 * i, y)), Pen("ink", 0.25))
        for i in range(11)
    ]
    says = "100 mm. If it measures otherwise, print at actual size (100 %)."
    size = min(2.7, 2.7 * (right - end - 4.0) / width_mm(says, 2.7))
    return (
        Path(((x, y), (end, y)), Pen("ink", 0.5)),
        *ticks,
        Words(says, (end + 2.5, y), size, "quiet"),
    )


def _side_sign(x: float, y: float, side: str) -> tuple[Item, ...]:
    half_w, half_h = width_mm(side, 6.5, "bold") / 2 + 4.0, 6.0
    solid = side != "ABOVE"
    return (
        _rectangle(x - half_w, y - half_h, x + half_w, y + half_h, Pen("ink", 0.7))._replace(
            fill="ink" if solid else "paper"
        ),
        Words(side, (x, y), 6.5, "paper" if solid else "ink", "bold", "centre", "middle"),
    )


def _rectangle(left: float, top: float, right: float, bottom: float, pen: Pen) -> Path:
    return Path(((left, top), (right, top), (right, bottom), (left, bottom)), pen, closed=True)
