"""The first sheet of the tiles: where each lies on the plan, and how they are put together."""

from collections.abc import Collection

from wiring.drawings.plan_band import BAND_MM, band, fascia_mark
from wiring.drawings.plan_fit import Fit, plan_bounds, scale_words
from wiring.drawings.plan_ground import ground
from wiring.drawings.plan_parts import placed_parts
from wiring.drawings.plan_tiles import Grid
from wiring.drawings.plan_wires import wire_runs
from wiring.findings.situation import Situation
from wiring.pictures.metrics import wrapped
from wiring.pictures.picture import Anchor, Disc, Item, Link, Path, Pen, Point, Words
from wiring.pictures.transform import moved
from wiring.sheets.paper import Sheet
from wiring.sheets.section import Leaf, body_size

_TEXT_MM = 3.4
_LEAST_NAME_MM, _MOST_NAME_MM = 2.2, 7.0
_TILE = Pen("copper", 0.35)
_NONE = Pen("quiet", 0.15)
_AIR_MM = 6.0
_NEVER_CUT = (-1e9, -1e9, 1e9, 1e9)


def map_leaf(
    situation: Situation,
    page: Sheet,
    grid: Grid,
    wired: Collection[tuple[int, int]],
    title: str,
    anchor: str,
    side: str,
) -> Leaf:
    """Return the map of one side."""
    width, height = body_size(page)
    left, top, _, _ = page.body
    step = _TEXT_MM * 1.35
    lines = [line for text in _told(grid, wired) for line in wrapped(text, width, _TEXT_MM)]
    text_mm = step * len(lines) + 2.0
    items: list[Item] = [
        *band(width, grid.fit.below),
        *(Words(s, (0.0, BAND_MM + 4.0 + i * step), _TEXT_MM) for i, s in enumerate(lines)),
        *_map(situation, grid, wired, (width, height - BAND_MM - text_mm), BAND_MM + text_mm),
    ]
    return Leaf(page, (Anchor(anchor, (left, top)), *moved(items, (left, top))), f"{title}: map", "", side)


def _told(grid: Grid, wired: Collection[tuple[int, int]]) -> list[str]:
    """Return what the person with the glue must know."""
    every, scale = grid.rows * grid.columns, scale_words(grid.fit.scale)
    none = every - len(wired)
    said = [
        f"{len(wired)} {'tile' if len(wired) == 1 else 'tiles'} at {scale}, to be printed at actual size "
        "(100 %): measure the 100 mm bar before you cut. A tile bears the same name from above and from "
        "below: it is the same piece of the layout."
    ]
    if every > 1:
        said.append(
            f"Neighbours share {grid.overlap_mm:g} mm. Cut a tile along its left and its upper edge where it "
            "joins another, lay that edge on the dashed line of its neighbour so that lines run on, and glue."
        )
    if none:
        holds = "tile holds" if none == 1 else "tiles hold"
        said.append(
            f"{none} {holds} no wiring and {'is' if none == 1 else 'are'} not printed: crossed out here."
        )
    return said


def _map(
    situation: Situation, grid: Grid, wired: Collection[tuple[int, int]], room: Point, top: float
) -> list[Item]:
    """Return the plan, small, under the edges of the tiles."""
    plan, kinds = situation.plan, situation.kinds
    whole_w, whole_h = grid.size_mm
    share = min((room[0] - 2 * _AIR_MM) / whole_w, (room[1] - 2 * _AIR_MM) / whole_h)
    corner = ((room[0] - whole_w * share) / 2, top + _AIR_MM)
    middle = corner[0] + whole_w * share / 2, corner[1] + whole_h * share / 2
    fit = Fit(grid.fit.scale * share, grid.fit.middle, middle, grid.fit.below)
    placed = placed_parts(plan, kinds, fit)
    items: list[Item] = [*ground(plan, fit, _NEVER_CUT)]
    items += [
        Path(run.points, Pen("quiet", 0.15))
        for run in wire_runs(plan, kinds, fit, placed, _NEVER_CUT).values()
    ]
    items += [Disc(spot.centre, 0.6, 0.6, Pen("paper", 0.1), "copper") for spot in placed.values()]
    bounds = plan_bounds(plan, kinds)
    if bounds is not None:
        items += fascia_mark(bounds, fit, plan.habits.fascia)
    for row in range(grid.rows):
        for column in range(grid.columns):
            box = tuple(c + v * share for c, v in zip((*corner, *corner), grid.box(row, column), strict=True))
            items += _field(grid, row, column, (box[0], box[1], box[2], box[3]), wired)
    return items


def _field(
    grid: Grid,
    row: int,
    column: int,
    box: tuple[float, float, float, float],
    wired: Collection[tuple[int, int]],
) -> list[Item]:
    left, top, right, bottom = box
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    size = min(max((bottom - top) * 0.25, _LEAST_NAME_MM), _MOST_NAME_MM)
    middle = (left + right) / 2, (top + bottom) / 2
    name = grid.name(row, column)
    if (row, column) not in wired:
        return [
            Path(corners, _NONE, closed=True),
            Path((corners[0], corners[2]), _NONE),
            Path((corners[1], corners[3]), _NONE),
            Words(name, middle, size, "quiet", "regular", "centre", "middle", ground="paper"),
        ]
    side = "below" if grid.fit.below else "above"
    return [
        Path(corners, _TILE, closed=True),
        Words(name, middle, size, "ink", "bold", "centre", "middle", ground="paper"),
        Link(left, top, right - left, bottom - top, f"tile {side} {name}"),
    ]
