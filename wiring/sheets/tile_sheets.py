"""The plan in tiles to be glued together: from above, then from below, each with a map of its tiles."""

from collections.abc import Collection

from wiring.drawings.plan_band import BAND_MM, band
from wiring.drawings.plan_fit import scale_words
from wiring.drawings.plan_legend import ROW_MM, scale_bar
from wiring.drawings.plan_tiles import Drawn, Grid, drawn_plan, tile_grid, tile_items
from wiring.findings.situation import Situation
from wiring.pictures.picture import Anchor, Item, Path, Pen, Words
from wiring.pictures.transform import moved
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.section import Leaf, Section, body_size
from wiring.sheets.tile_map import map_leaf
from wiring.sheets.tiling import Tiling

MOST_TILES = 400  # of one side: more is a slip of the scale, not a wish
_EDGE_MM = 4.0  # round a tile, for its cut marks and the names of its neighbours
_CUT = Pen("ink", 0.15)
_LAY = Pen("quiet", 0.2, (2.0, 1.0))
_MARK = Pen("ink", 0.25)
_NAME_MM = 2.6


def tile_sections(situation: Situation, paper: str, tiling: Tiling) -> tuple[Section, ...]:
    """Return the tiles from above and from below; nothing for an empty plan.

    ValueError with a plain sentence when the scale would take hundreds of sheets.
    """
    page = _page(situation, paper, tiling)
    return tuple(
        section
        for below in (False, True)
        if (section := _section(situation, page, tiling, below)) is not None
    )


def _page(situation: Situation, paper: str, tiling: Tiling) -> Sheet:
    """Return the paper the way round that takes fewer tiles."""

    def tiles(page: Sheet) -> int:
        grid = _grid(situation, page, tiling, below=False)
        return grid.rows * grid.columns if grid is not None else 0

    return min((sheet(paper, landscape=True), sheet(paper)), key=tiles)


def _grid(situation: Situation, page: Sheet, tiling: Tiling, *, below: bool) -> Grid | None:
    width, height = body_size(page)
    room = width - 2 * _EDGE_MM, height - BAND_MM - ROW_MM - 2 * _EDGE_MM
    return tile_grid(situation.plan, situation.kinds, tiling.scale, room, tiling.overlap_mm, below=below)


def _section(situation: Situation, page: Sheet, tiling: Tiling, below: bool) -> Section | None:
    grid = _grid(situation, page, tiling, below=below)
    if grid is None or not situation.plan.parts:
        return None
    if grid.rows * grid.columns > MOST_TILES:
        count = grid.rows * grid.columns
        raise ValueError(
            f"At {scale_words(tiling.scale)} the plan takes {count} sheets of {page.name} a side; choose a "
            "smaller scale, such as 1:5 or 1:10, or larger paper."
        )
    drawn = drawn_plan(situation.plan, situation.kinds, situation.positions, situation.figures, grid)
    side = "FROM BELOW" if below else "ABOVE"
    title = f"Tiles {'from below' if below else 'from above'}, {scale_words(tiling.scale)}"
    anchor = "tiles below" if below else "tiles above"
    leaves = [map_leaf(situation, page, grid, drawn.wired, title, anchor, side)]
    leaves += [_leaf(situation, page, drawn, row, column, side) for row, column in sorted(drawn.wired)]
    return Section(title, anchor, tuple(leaves))


def _leaf(situation: Situation, page: Sheet, drawn: Drawn, row: int, column: int, side: str) -> Leaf:
    grid, units = drawn.grid, situation.plan.habits.units
    width, height = body_size(page)
    left, top, _, _ = page.body
    name, words = grid.name(row, column), scale_words(grid.fit.scale)
    x, y, _, _ = grid.box(row, column)
    cut = moved(tile_items(situation.plan, drawn, row, column), (_EDGE_MM - x, BAND_MM + _EDGE_MM - y))
    marks = moved(_marks(grid, row, column, drawn.wired), (_EDGE_MM, BAND_MM + _EDGE_MM))
    at = (width - _EDGE_MM, height - ROW_MM / 2)
    title = Words(f"Tile {name}", at, 4.6, "ink", "bold", "right", "middle")
    bar = moved(scale_bar(units, grid.fit.scale), (_EDGE_MM, height - ROW_MM))
    items = (*cut, *marks, *band(width, grid.fit.below), *bar, title)
    kind = f"Tile {name} {'from below' if grid.fit.below else 'from above'}"
    mark = Anchor(tile_anchor(grid, row, column), (left, top))
    return Leaf(page, (mark, *moved(items, (left, top))), kind, words, side)


def tile_anchor(grid: Grid, row: int, column: int) -> str:
    """Return the name links lead to for one tile."""
    return f"tile {'below' if grid.fit.below else 'above'} {grid.name(row, column)}"


def _marks(grid: Grid, row: int, column: int, wired: Collection[tuple[int, int]]) -> list[Item]:
    """Return the edges to cut, the lines to lay a neighbour on, and which tile joins where."""
    wide, high, over = grid.wide_mm, grid.high_mm, grid.overlap_mm
    items: list[Item] = [Path(((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)), _CUT, closed=True)]
    for x, out in ((0.0, -1.0), (wide, 1.0)):
        for y, away in ((0.0, -1.0), (high, 1.0)):
            items.append(Path(((x + out * 0.8, y), (x + out * 3.4, y)), _MARK))
            items.append(Path(((x, y + away * 0.8), (x, y + away * 3.4)), _MARK))
    if column < grid.columns - 1:
        items.append(Path(((wide - over, 0.0), (wide - over, high)), _LAY))
    if row < grid.rows - 1:
        items.append(Path(((0.0, high - over), (wide, high - over)), _LAY))
    beside = (
        (row, column - 1, (-2.2, high / 2), -90.0),
        (row, column + 1, (wide + 2.2, high / 2), 90.0),
        (row - 1, column, (wide / 2, -2.2), 0.0),
        (row + 1, column, (wide / 2, high + 2.2), 0.0),
    )
    for other_row, other_column, at, turn in beside:
        if 0 <= other_row < grid.rows and 0 <= other_column < grid.columns:
            name = grid.name(other_row, other_column)
            says = f"joins {name}" if (other_row, other_column) in wired else f"{name} holds no wiring"
            items.append(Words(says, at, _NAME_MM, "ink", "semibold", "centre", "middle", turn_deg=turn))
    return items
