"""The plan on paper, seen from above or from below: board, scenes, parts and wires, each with its name."""

from collections.abc import Iterable, Iterator, Mapping

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.drawings.marks import wire_on_plan
from wiring.drawings.plan_areas import Area
from wiring.drawings.plan_band import BAND_MM, FASCIA_MM, band, fascia_mark, fascia_side, locator
from wiring.drawings.plan_clip import Piece, pieces
from wiring.drawings.plan_fit import Box, Fit, around, fitting_scale, plan_bounds
from wiring.drawings.plan_ground import ground
from wiring.drawings.plan_legend import ROW_MM, legend, legend_rows
from wiring.drawings.plan_lookup import PlanLookup
from wiring.drawings.plan_names import Named, named
from wiring.drawings.plan_parts import placed_parts, sign_items, terminal_items
from wiring.drawings.plan_room import Room
from wiring.drawings.plan_wires import Run, wire_items, wire_runs
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Anchor, Item, Path, Picture, Point, Words
from wiring.pictures.transform import moved
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions, in_use
from wiring.plan.wire import Wire

_MARGIN_MM = 6.0  # round the plan, for labels of what stands at its edge
_NEVER_CUT: Box = (-1e9, -1e9, 1e9, 1e9)


def plan_fit(
    plan: Plan,
    kinds: Mapping[str, Kind],
    width_mm: float,
    height_mm: float,
    *,
    below: bool = False,
    window: Area | None = None,
    lookup: PlanLookup | None = None,
) -> tuple[Fit, Box] | None:
    """Return how a plan, or a window on it, lies in a box, and its bounds; None when nothing is drawn yet."""
    bounds = plan_bounds(plan, kinds) if window is None else window[1:]
    if bounds is None:
        return None
    side = fascia_side(plan.habits.fascia, below)
    rows = legend_rows((lookup or PlanLookup(plan, kinds)).ending_in(window), width_mm)
    left = _MARGIN_MM + (FASCIA_MM if side == "left" else 0.0)
    right = _MARGIN_MM + (FASCIA_MM if side == "right" else 0.0)
    top = BAND_MM + _MARGIN_MM + (FASCIA_MM if side == "top" else 0.0)
    bottom = ROW_MM * rows + _MARGIN_MM + (FASCIA_MM if side == "bottom" else 0.0)
    room_w, room_h = width_mm - left - right, height_mm - top - bottom
    scale = fitting_scale(bounds[2] - bounds[0], bounds[3] - bounds[1], room_w, room_h)
    middle = ((bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2)
    return Fit(scale, middle, (left + room_w / 2, top + room_h / 2), below), bounds


def plan_view(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions | None = None,
    figures: Figures | None = None,
    *,
    below: bool = False,
    width_mm: float = 267.0,
    height_mm: float = 160.0,
    window: Area | None = None,
    wire_labels: bool = True,
    part_labels: bool = True,
    behind: bool = False,
    lookup: PlanLookup | None = None,
) -> Picture:
    """Return the plan fitted into a box at a round scale; text keeps its size on paper.

    A window shows only that area of the plan, larger; wires that leave it say where they go. `behind` says of
    a view from below that it is the back of a panel. Many views of one plan share its lookup.
    """
    lookup = lookup or PlanLookup(plan, kinds)
    title = f"{plan.title}, {'from below' if below else 'from above'}"
    name = window.name if window is not None else ""
    laid = plan_fit(plan, kinds, width_mm, height_mm, below=below, window=window, lookup=lookup)
    if laid is None:
        middle = (width_mm / 2, height_mm / 2)
        empty = Words("Nothing is drawn on this plan yet.", middle, 4.0, "quiet", align="centre")
        return Picture((*band(width_mm, below), empty), width_mm, height_mm, title=title)
    fit, bounds = laid
    clip = _NEVER_CUT
    if window is not None:
        clip = around((fit.at((bounds[0], bounds[1])), fit.at((bounds[2], bounds[3]))))
    near, needed = _in_window(lookup, window)
    everywhere = placed_parts(plan, kinds, fit, needed, lookup)
    placed = {i: s for i, s in everywhere.items() if _inside(s.centre, clip)}
    runs = wire_runs(plan, kinds, fit, everywhere, clip, near).values()
    drawn = [(run, piece) for run in runs for piece in pieces(run.points, clip)]
    glow, signs = sign_items(plan, kinds, positions or in_use(plan, kinds), figures, fit, placed)
    wires = lookup.ending_in(window)
    foot = ROW_MM * legend_rows(wires, width_mm)
    fascia = fascia_mark(bounds, fit, plan.habits.fascia, far=window is not None)
    room = _room((0.0, BAND_MM, width_mm, height_mm - foot), fascia)
    words = named(plan, fit, room, clip, placed if part_labels else {}, drawn, wire_labels=wire_labels)
    enlarged = any(spot.factor > fit.scale * 1.05 for spot in placed.values())
    items: list[Item] = [*ground(plan, fit, clip), *glow, *signs, *_wires(drawn, anchored=wire_labels)]
    items += terminal_items(kinds, plan, fit, placed)
    items += [*fascia, *words.items, *band(width_mm, below, name, behind=behind)]
    if window is not None:
        items += locator(plan.board, window[1:], width_mm, below)
    notes = _notes(words, enlarged=enlarged, wire_labels=wire_labels, part_labels=part_labels)
    items += moved(legend(wires, plan.habits.units, width_mm, fit.scale, notes), (0.0, height_mm - foot))
    return Picture(tuple(items), width_mm, height_mm, title=title)


def _in_window(lookup: PlanLookup, window: Area | None) -> tuple[tuple[Wire, ...] | None, set[PartId] | None]:
    """Return the wires near a window and the parts that are needed to draw it; None for all of them."""
    if window is None:
        return None, None
    near = lookup.near(window)
    ends = {ref.part for wire in near for ref in (wire.start, wire.end)}
    return near, ends.union(lookup.parts_in(window))


def _room(box: Box, fascia: Iterable[Item]) -> Room:
    """Return the room for words, that which the mark of the fascia takes taken."""
    room = Room(box)
    for item in fascia:
        if isinstance(item, Words):
            room.take(words_box(item))
        elif isinstance(item, Path):
            room.draw(item.points)
    return room


def _wires(drawn: Iterable[tuple[Run, Piece]], *, anchored: bool) -> Iterator[Item]:
    """Return the wires, with an anchor on each that has an end here, where that is wanted."""
    for run, piece in drawn:
        yield from wire_items(run, piece.points)
        if anchored and (piece.from_start or piece.to_end):
            mark = wire_on_plan(run.wire.id, whole=piece.from_start and piece.to_end)
            yield Anchor(mark, _middle(piece.points))


def _middle(points: tuple[Point, ...]) -> Point:
    """Return a point about half way along a line."""
    a, b = points[(len(points) - 1) // 2], points[(len(points) - 1) // 2 + 1]
    return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2


def _inside(point: tuple[float, float], box: Box) -> bool:
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]


def _notes(words: Named, *, enlarged: bool, wire_labels: bool, part_labels: bool) -> list[str]:
    """Return what the reader must know of what is not shown as it is."""
    notes = []
    if enlarged:
        notes.append("Small parts are drawn larger than they are.")
    if not part_labels:
        notes.append("Copper frames bear the number of the sheet that names what is in them.")
    elif not wire_labels:
        notes.append("Wires are labelled on the detail sheets.")
    if words.parts_missing:
        notes.append(f"{words.parts_missing} parts without room for a name.")
    if words.wires_missing:
        notes.append(f"{words.wires_missing} wire ends without room for a label: see the bench list.")
    return notes
