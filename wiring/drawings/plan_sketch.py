"""A small view of a plan for the first sheet: board, tracks, places and parts, without wires or labels."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.drawings.plan_band import fascia_mark
from wiring.drawings.plan_fit import Box, Fit, plan_bounds
from wiring.drawings.plan_ground import ground, place_names
from wiring.drawings.plan_parts import placed_parts
from wiring.drawings.plan_room import Room
from wiring.pictures.picture import Disc, Item, Pen, Picture
from wiring.plan.plan import Plan

_AIR_MM = 7.0  # for the fascia's words
_DOT_MM = 0.7
_NEVER_CUT: Box = (-1e9, -1e9, 1e9, 1e9)


def plan_sketch(plan: Plan, kinds: Mapping[str, Kind], width_mm: float, height_mm: float) -> Picture | None:
    """Return the plan in a box at most that large, parts as dots; None when nothing is drawn yet."""
    bounds = plan_bounds(plan, kinds)
    if bounds is None:
        return None
    wide, high = max(bounds[2] - bounds[0], 1.0), max(bounds[3] - bounds[1], 1.0)
    scale = min(1.0, (width_mm - 2 * _AIR_MM) / wide, (height_mm - 2 * _AIR_MM) / high)
    height = high * scale + 2 * _AIR_MM
    middle = ((bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2)
    fit = Fit(scale, middle, (width_mm / 2, height / 2))
    room = Room((0.0, 0.0, width_mm, height))
    items: list[Item] = [*ground(plan, fit, _NEVER_CUT)]
    for spot in placed_parts(plan, kinds, fit).values():
        x, y = spot.centre
        room.draw(((x - 1.0, y), (x + 1.0, y)))
        items.append(Disc(spot.centre, _DOT_MM, _DOT_MM, Pen("paper", 0.15), "copper"))
    items += [w._replace(ground="raised") for w in place_names(plan, fit, room, _NEVER_CUT)]
    items += fascia_mark(bounds, fit, plan.habits.fascia)
    return Picture(tuple(items), width_mm, height, title=plan.title)
