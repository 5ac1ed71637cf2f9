"""The signs of a plan's parts on paper, with their terminals; the small ones drawn larger than they are."""

import math
from collections.abc import Container, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.drawings.plan_fit import Box, Fit, around
from wiring.drawings.plan_lookup import PlanLookup
from wiring.drawings.signs.all_signs import sign
from wiring.drawings.signs.extent import extent
from wiring.drawings.signs.halo import halo
from wiring.drawings.signs.hand import State
from wiring.drawings.signs.terminals import terminal_dot
from wiring.pictures.picture import NO_PEN, Disc, Item, Path, Pen, Point
from wiring.pictures.transform import mirrored, moved, scaled, turned
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.standards.lightness import lightness

SMALLEST_MM = 6.0  # a part is never drawn smaller than this on paper, if its neighbours leave the room
_LEAST_PEN_MM = 0.13
_DOT_MM = 0.62


class Placed(NamedTuple):
    """One part on paper: its centre, the scale its sign is drawn at, and the box it fills."""

    centre: Point
    factor: float
    turn_deg: float
    box: Box


def placed_parts(
    plan: Plan,
    kinds: Mapping[str, Kind],
    fit: Fit,
    only: Container[PartId] | None = None,
    lookup: PlanLookup | None = None,
) -> dict[PartId, Placed]:
    """Return where and how large each part of a known kind is drawn, or only some of them."""
    neighbours = (lookup or PlanLookup(plan, kinds)).neighbour_mm
    found: dict[PartId, Placed] = {}
    for part_id, near_mm in neighbours.items():
        if only is not None and part_id not in only:
            continue
        part = plan.parts[part_id]
        kind = kinds[part.kind]
        centre = fit.at((part.x_mm, part.y_mm))
        left, top, right, bottom = extent(kind, part)
        size = max(right - left, bottom - top)
        factor = max(fit.scale, min(SMALLEST_MM, 0.92 * near_mm * fit.scale) / size, 1e-6)
        corners = [
            _on_paper(fit, centre, factor, part.turn_deg, p)
            for p in ((left, top), (right, top), (right, bottom), (left, bottom))
        ]
        found[part_id] = Placed(centre, factor, part.turn_deg, around(corners))
    return found


def terminal_on_paper(fit: Fit, placed: Placed, kind: Kind, terminal: str) -> Point:
    """Return where a terminal is drawn; the part's centre if its kind has no such terminal."""
    spec = next((t for t in kind.terminals if t.name == terminal), None)
    if spec is None:
        return placed.centre
    return _on_paper(fit, placed.centre, placed.factor, placed.turn_deg, (spec.x_mm, spec.y_mm))


def sign_items(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    figures: Figures | None,
    fit: Fit,
    placed: Mapping[PartId, Placed],
) -> tuple[tuple[Item, ...], tuple[Item, ...]]:
    """Return the halos, to be laid under everything, and the signs."""
    glow: list[Item] = []
    signs: list[Item] = []
    drawn: dict[tuple[object, ...], tuple[tuple[Item, ...], tuple[Item, ...]]] = {}
    for part_id, spot in placed.items():
        part = plan.parts[part_id]
        kind = kinds[part.kind]
        figure = figures.parts.get(part_id) if figures else None
        light = None if figure is None or figure.light is None else lightness(max(figure.light, 0.0))
        state = State(positions.get(part_id, ""), light, fit.below)
        # many lamps stand alike: each look is scaled and turned once and only shifted after
        look = (kind.key, tuple(part.settings.items()), state, round(spot.factor, 6), spot.turn_deg)
        if look not in drawn:
            drawn[look] = _set(halo(kind, light, part), fit, spot), _set(sign(kind, part, state), fit, spot)
        glow += moved(drawn[look][0], spot.centre)
        signs += moved(drawn[look][1], spot.centre)
    return tuple(glow), tuple(signs)


def terminal_items(
    kinds: Mapping[str, Kind], plan: Plan, fit: Fit, placed: Mapping[PartId, Placed]
) -> tuple[Disc, ...]:
    """Return the copper dots of all terminals, laid over the wires that end on them."""
    dots: list[Disc] = []
    for part_id, spot in placed.items():
        kind = kinds[plan.parts[part_id].kind]
        for terminal in kind.terminals:
            dots.append(_dot(terminal_on_paper(fit, spot, kind, terminal.name), spot.factor))
    return tuple(dots)


def _dot(at: Point, factor: float) -> Disc:
    radius = min(max(_DOT_MM, 1.1 * factor), 1.3)
    return terminal_dot(at[0], at[1], radius if factor > 0.12 else 0.45)._replace(pen=NO_PEN)


def _on_paper(fit: Fit, centre: Point, factor: float, turn_deg: float, offset: Point) -> Point:
    angle = math.radians(turn_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    x, y = fit.offset((offset[0] * cos - offset[1] * sin, offset[0] * sin + offset[1] * cos), factor)
    return centre[0] + x, centre[1] + y


def _set(items: tuple[Item, ...], fit: Fit, spot: Placed) -> tuple[Item, ...]:
    whole = turned(items, spot.turn_deg) if spot.turn_deg else items
    if fit.below:
        whole = mirrored(whole, 0.0)
    return tuple(_visible(i) for i in scaled(whole, spot.factor))


def _visible(item: Item) -> Item:
    """Return an item whose pen is not too thin to print."""
    if isinstance(item, Path | Disc) and 0 < item.pen.width_mm < _LEAST_PEN_MM:
        return item._replace(pen=Pen(item.pen.colour, _LEAST_PEN_MM, item.pen.dashes_mm))
    return item
