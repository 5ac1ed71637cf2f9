"""How long a wire is: along the way it is drawn, with drops and spare at its ends, or as measured."""

import math
from collections.abc import Mapping
from itertools import pairwise

from wiring.catalogue.kind import Kind
from wiring.plan.names import TerminalRef
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.plan.wireway import Wireway


def wire_path(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> tuple[Point, ...]:
    """Return the corners of a wire as drawn, in mm; an end that is not there is left out."""
    ends = (_place(plan, kinds, wire.start), _place(plan, kinds, wire.end))
    return tuple(p for p in (ends[0], *wire.bends, ends[1]) if p is not None)


def drawn_length_m(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> float:
    """Return the metres along the wire as it is drawn, without spare."""
    return sum(math.dist(a, b) for a, b in pairwise(wire_path(plan, kinds, wire))) / 1000.0


def cut_length_m(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> float:
    """Return the metres to cut: what the user measured, else as drawn with drops and spare at both ends."""
    if wire.length_m is not None:
        return wire.length_m
    return drawn_length_m(plan, kinds, wire) + drops_m(plan, wire) + 2.0 * plan.habits.slack_m


def drops_m(plan: Plan, wire: Wire) -> float:
    """Return the metres a wire needs to come down to its first wireway and up again from its last."""
    if not wire.along:
        return 0.0
    ends = ((wire.along[0], wire.start), (wire.along[-1], wire.end))
    return sum(_drop_mm(plan, plan.wireways[i], ref) for i, ref in ends if i in plan.wireways) / 1000.0


def _drop_mm(plan: Plan, way: Wireway, ref: TerminalRef) -> float:
    part = plan.parts.get(ref.part)
    on_panel = part is not None and bool(part.panel)
    return way.fascia_drop_mm if on_panel and way.fascia_drop_mm is not None else way.drop_mm


def _place(plan: Plan, kinds: Mapping[str, Kind], ref: TerminalRef) -> Point | None:
    part = plan.parts.get(ref.part)
    kind = kinds.get(part.kind) if part is not None else None
    if part is None or kind is None:
        return None
    try:
        return terminal_at(part, kind, ref.terminal)
    except KeyError:
        return part.x_mm, part.y_mm
