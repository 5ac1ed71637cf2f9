"""The plan on paper, seen from above or from below: board, scenes, parts and wires, each with its name."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.drawings.plan_band import BAND_MM, FASCIA_MM, band, fascia_mark, fascia_side
from wiring.drawings.plan_fit import Box, Fit, fitting_scale, plan_bounds
from wiring.drawings.plan_ground import ground, place_names
from wiring.drawings.plan_labels import Room, labelled
from wiring.drawings.plan_legend import ROW_MM, legend, legend_rows
from wiring.drawings.plan_parts import Placed, placed_parts, sign_items, terminal_items
from wiring.drawings.plan_wires import Run, wire_items, wire_runs
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Item, Picture, Words
from wiring.pictures.transform import moved
from wiring.plan.designations import part_label
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions, in_use

_MARGIN_MM = 6.0  # round the plan, for labels of what stands at its edge
PART_MM = 3.0
WIRE_MM = 2.3


def plan_fit(
    plan: Plan, kinds: Mapping[str, Kind], width_mm: float, height_mm: float, *, below: bool = False
) -> tuple[Fit, Box] | None:
    """Return how a plan lies in a box of that size, and its bounds; None when nothing is drawn yet."""
    bounds = plan_bounds(plan, kinds)
    if bounds is None:
        return None
    side = fascia_side(plan.habits.fascia, below)
    left = _MARGIN_MM + (FASCIA_MM if side == "left" else 0.0)
    right = _MARGIN_MM + (FASCIA_MM if side == "right" else 0.0)
    top = BAND_MM + _MARGIN_MM + (FASCIA_MM if side == "top" else 0.0)
    bottom = ROW_MM * legend_rows(plan, width_mm) + _MARGIN_MM + (FASCIA_MM if side == "bottom" else 0.0)
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
) -> Picture:
    """Return the plan fitted into a box at a round scale; text keeps its size on paper."""
    title = f"{plan.title}, {'from below' if below else 'from above'}"
    laid = plan_fit(plan, kinds, width_mm, height_mm, below=below)
    if laid is None:
        empty = Words(
            "Nothing is drawn on this plan yet.", (width_mm / 2, height_mm / 2), 4.0, "quiet", align="centre"
        )
        return Picture((*band(width_mm, below), empty), width_mm, height_mm, title=title)
    fit, bounds = laid
    placed = placed_parts(plan, kinds, fit)
    runs = wire_runs(plan, kinds, fit, placed)
    glow, signs = sign_items(plan, kinds, positions or in_use(plan, kinds), figures, fit, placed)
    foot = ROW_MM * legend_rows(plan, width_mm)
    fascia = fascia_mark(bounds, fit, plan.habits.fascia)
    room = Room((0.0, BAND_MM, width_mm, height_mm - foot))
    for item in fascia:
        if isinstance(item, Words):
            room.take(words_box(item))
    names, labels, missing = _labels(plan, fit, room, placed, runs)
    notes = []
    if any(spot.factor > fit.scale * 1.05 for spot in placed.values()):
        notes.append("Small parts are drawn larger than they are.")
    if missing:
        notes.append(f"{missing} wire ends without a label here: see the bench list.")
    items: list[Item] = [*ground(plan, fit), *glow]
    items += signs
    for run in runs.values():
        items += wire_items(run)
    items += terminal_items(kinds, plan, fit, placed)
    items += [*fascia, *names, *labels, *band(width_mm, below)]
    items += moved(legend(plan, width_mm, fit.scale, notes), (0.0, height_mm - foot))
    return Picture(tuple(items), width_mm, height_mm, title=title)


def _labels(
    plan: Plan,
    fit: Fit,
    room: Room,
    placed: Mapping[PartId, Placed],
    runs: Mapping[str, Run],
) -> tuple[tuple[Words, ...], list[Item], int]:
    """Return the names of places, the labels of parts and wire ends, and how many wire ends found no room."""
    for spot in placed.values():
        room.take(spot.box)
    for run in runs.values():
        room.draw(run.points)
    names = place_names(plan, fit, room)
    items: list[Item] = []
    for part_id, spot in placed.items():
        reaches = (0.4, 2.0, 4.0, 7.0, 11.0, 16.0, 22.0)
        items += labelled(
            room, part_label(plan, part_id), spot.box, PART_MM, reaches_mm=reaches, semibold=True
        )
    missing = 0
    for run in runs.values():
        text = f"{run.wire.label} {run.wire.colour}"
        for tip, inner in ((run.points[0], run.points[1]), (run.points[-1], run.points[-2])):
            found = labelled(
                room, text, _near_end(tip, inner), WIRE_MM, reaches_mm=(0.3, 1.5, 3.0), colour="quiet"
            )
            missing += not found
            items += found
    return names, items, missing


def _near_end(tip: tuple[float, float], inner: tuple[float, float]) -> Box:
    """Return a small box on the wire, a few millimetres in from its end, that its label stands beside."""
    dx, dy = inner[0] - tip[0], inner[1] - tip[1]
    size = max((dx * dx + dy * dy) ** 0.5, 1e-9)
    far = min(5.0, size / 2)
    x, y = tip[0] + dx / size * far, tip[1] + dy / size * far
    return x - 0.5, y - 0.5, x + 0.5, y + 0.5
