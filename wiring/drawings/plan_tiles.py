"""The plan drawn once at a fixed scale and cut into tiles that overlap, to be glued together.

A tile bears the same name from above and from below: it is the same piece of the layout, so from below the
names run the other way.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.drawings.item_clip import clipped, item_box
from wiring.drawings.plan_band import fascia_mark
from wiring.drawings.plan_clip import overlap_of, pieces
from wiring.drawings.plan_fit import Box, Fit, around, plan_bounds
from wiring.drawings.plan_ground import ground
from wiring.drawings.plan_names import Named, named
from wiring.drawings.plan_parts import Placed, placed_parts, sign_items, terminal_items
from wiring.drawings.plan_room import Room
from wiring.drawings.plan_wires import Run, wire_items, wire_runs
from wiring.pictures.picture import Item, Words
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions, in_use

OVERLAP_MM = 10.0
AIR_MM = 8.0  # round the plan, for the fascia's mark and labels at its edge
_NEVER_CUT: Box = (-1e9, -1e9, 1e9, 1e9)
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


class Grid(NamedTuple):
    """How a plan at one scale lies on tiles of one size, counted as seen from above."""

    fit: Fit  # onto all tiles together, from (0, 0)
    columns: int
    rows: int
    wide_mm: float  # of one tile, with its overlap
    high_mm: float
    overlap_mm: float

    def box(self, row: int, column: int) -> Box:
        """Return the rectangle of a tile, counted as seen on the paper from its upper left corner."""
        x, y = column * (self.wide_mm - self.overlap_mm), row * (self.high_mm - self.overlap_mm)
        return x, y, x + self.wide_mm, y + self.high_mm

    def own(self, row: int, column: int) -> Box:
        """Return the rectangle only this tile must show: what it shares belongs to the tile before it."""
        left, top, right, bottom = self.box(row, column)
        return (
            left + (self.overlap_mm if column else 0.0),
            top + (self.overlap_mm if row else 0.0),
            right,
            bottom,
        )

    def name(self, row: int, column: int) -> str:
        """Return ``B2``: rows are letters, columns numbers from the left as seen from above."""
        number = self.columns - column if self.fit.below else column + 1
        head = _LETTERS[row // 26 - 1] if row >= 26 else ""
        return f"{head}{_LETTERS[row % 26]}{number}"

    @property
    def size_mm(self) -> tuple[float, float]:
        """Return width and height of all tiles glued together."""
        _, _, right, bottom = self.box(self.rows - 1, self.columns - 1)
        return right, bottom


def tile_grid(
    plan: Plan,
    kinds: Mapping[str, Kind],
    scale: float,
    room_mm: tuple[float, float],
    overlap_mm: float = OVERLAP_MM,
    *,
    below: bool = False,
) -> Grid | None:
    """Return the tiles of a size that hold a plan at a scale, the plan in their middle; None for none."""
    bounds = plan_bounds(plan, kinds)
    if bounds is None:
        return None
    wide, high = (far - near for near, far in ((bounds[0], bounds[2]), (bounds[1], bounds[3])))
    columns = _count(wide * scale + 2 * AIR_MM, room_mm[0], overlap_mm)
    rows = _count(high * scale + 2 * AIR_MM, room_mm[1], overlap_mm)
    # the plan stands in the middle, so that the tiles from below cut it where those from above do
    whole = tuple(n * (r - overlap_mm) + overlap_mm for n, r in ((columns, room_mm[0]), (rows, room_mm[1])))
    middle = ((bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2)
    fit = Fit(scale, middle, (whole[0] / 2, whole[1] / 2), below)
    return Grid(fit, columns, rows, room_mm[0], room_mm[1], overlap_mm)


def _count(length: float, room: float, overlap: float) -> int:
    return max(1, math.ceil((length - overlap) / (room - overlap) - 1e-9))


class Drawn(NamedTuple):
    """A whole plan at one scale, by tile: row and column as seen on the paper."""

    grid: Grid
    items: Mapping[tuple[int, int], Sequence[Item]]  # in the order they are painted
    parts: Mapping[tuple[int, int], Sequence[PartId]]
    runs: Mapping[tuple[int, int], Sequence[Run]]
    placed: Mapping[PartId, Placed]
    wired: frozenset[tuple[int, int]]  # with a part or a wire that no other tile shows


def drawn_plan(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions | None, figures: Figures | None, grid: Grid
) -> Drawn:
    """Return a plan drawn at the scale of a grid, without words, sorted into its tiles."""
    fit = grid.fit
    placed = placed_parts(plan, kinds, fit)
    runs = wire_runs(plan, kinds, fit, placed, _NEVER_CUT)
    glow, signs = sign_items(plan, kinds, positions or in_use(plan, kinds), figures, fit, placed)
    items: list[Item] = [*ground(plan, fit, _NEVER_CUT), *glow, *signs]
    for run in runs.values():
        items += wire_items(run, run.points)
    items += terminal_items(kinds, plan, fit, placed)
    bounds = plan_bounds(plan, kinds)
    if bounds is not None:
        items += fascia_mark(bounds, fit, plan.habits.fascia)
    by_tile: dict[tuple[int, int], list[Item]] = {}
    for item in items:
        for tile in _tiles(grid, item_box(item)):
            by_tile.setdefault(tile, []).append(item)
    parts: dict[tuple[int, int], list[PartId]] = {}
    for part_id, spot in placed.items():
        for tile in _tiles(grid, spot.box):
            parts.setdefault(tile, []).append(part_id)
    lines: dict[tuple[int, int], list[Run]] = {}
    for run in runs.values():
        for tile in _tiles(grid, around(run.points)):
            if pieces(run.points, grid.box(*tile)):
                lines.setdefault(tile, []).append(run)
    wired = {t for t, held in parts.items() if any(overlap_of(placed[p].box, grid.own(*t)) for p in held)}
    wired |= {t for t, held in lines.items() if any(pieces(run.points, grid.own(*t)) for run in held)}
    return Drawn(grid, by_tile, parts, lines, placed, frozenset(wired))


def _tiles(grid: Grid, box: Box) -> Iterable[tuple[int, int]]:
    """Yield the tiles a rectangle lies on."""
    across, down = grid.wide_mm - grid.overlap_mm, grid.high_mm - grid.overlap_mm
    first_column = max(math.floor((box[0] - grid.overlap_mm) / across), 0)
    first_row = max(math.floor((box[1] - grid.overlap_mm) / down), 0)
    for row in range(first_row, min(math.floor(box[3] / down), grid.rows - 1) + 1):
        for column in range(first_column, min(math.floor(box[2] / across), grid.columns - 1) + 1):
            yield row, column


def tile_items(plan: Plan, drawn: Drawn, row: int, column: int) -> tuple[Item, ...]:
    """Return one tile with its words, cut at its edges, in the place it has among all of them."""
    box, tile = drawn.grid.box(row, column), (row, column)
    cut = clipped(drawn.items.get(tile, ()), box)
    words = _words(plan, drawn, tile, box, cut)
    return (*cut, *words.items)


def _words(plan: Plan, drawn: Drawn, tile: tuple[int, int], box: Box, cut: Sequence[Item]) -> Named:
    room = Room(box)
    own: dict[PartId, Placed] = {}
    for part_id in drawn.parts.get(tile, ()):
        spot = drawn.placed[part_id]
        x, y = spot.centre
        if box[0] <= x <= box[2] and box[1] <= y <= box[3]:
            own[part_id] = spot
        else:
            room.take(spot.box)  # it is named on the tile that holds its middle
    for item in cut:
        if isinstance(item, Words):
            room.take(item_box(item))
    stretches = [(run, piece) for run in drawn.runs.get(tile, ()) for piece in pieces(run.points, box)]
    return named(plan, drawn.grid.fit, room, box, own, stretches, wire_labels=True)
