"""The bodies behind the face of a panel, and how far they lie apart."""

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.panel import Panel
from wiring.plan.panel_places import holds
from wiring.plan.part import Part
from wiring.plan.plan import Plan

APART_MM = 2.0  # common practice, no source: room for a nut, a spanner and a bent terminal
MOUNTED = ("toggle", "push", "slide", "indicator")  # signs of what sits in a panel without saying its hole
ROUND = ("push", "indicator", "led")  # signs whose body behind the face is a barrel
_HAIR_MM = 1e-6

Box = tuple[float, float, float, float]


class Body(NamedTuple):
    """A part's body behind the face; `radius_mm` of a barrel, 0 for a box."""

    part: Part
    kind: Kind
    box: Box  # upright, in plan mm
    radius_mm: float


def is_mounted(kind: Kind) -> bool:
    """Return whether a kind sits in a hole of a face."""
    return bool(kind.hole_mm) or kind.sign in MOUNTED


def bodies_on(plan: Plan, kinds: Mapping[str, Kind], panel: Panel) -> tuple[Body, ...]:
    """Return the bodies of the parts that sit in a face, in plan order."""
    return tuple(
        body_of(p, kinds[p.kind])
        for p in plan.parts.values()
        if p.kind in kinds and is_mounted(kinds[p.kind]) and holds(panel, p.x_mm, p.y_mm)
    )


def body_of(part: Part, kind: Kind) -> Body:
    """Return the body of one part where it stands."""
    radius = min(kind.width_mm, kind.height_mm) / 2 if kind.sign in ROUND else 0.0
    if radius:
        half_w = half_h = radius
    else:
        angle = math.radians(part.turn_deg)
        cos, sin = abs(math.cos(angle)), abs(math.sin(angle))
        half_w = (kind.width_mm * cos + kind.height_mm * sin) / 2
        half_h = (kind.width_mm * sin + kind.height_mm * cos) / 2
    box = part.x_mm - half_w, part.y_mm - half_h, part.x_mm + half_w, part.y_mm + half_h
    return Body(part, kind, box, radius)


def gap_mm(one: Body, other: Body) -> float:
    """Return how far two bodies lie apart; less than nothing when they overlap."""
    a, b = (_core(body) for body in (one, other))
    across = max(a[0], b[0]) - min(a[2], b[2])
    down = max(a[1], b[1]) - min(a[3], b[3])
    apart = math.hypot(across, down) if across > 0 and down > 0 else max(across, down)
    return apart - one.radius_mm - other.radius_mm


def clashes(bodies: Sequence[Body]) -> Iterator[tuple[Body, Body]]:
    """Return the pairs that stand too close for a nut and a spanner."""
    return ((a, b) for a, b in combinations(bodies, 2) if gap_mm(a, b) < APART_MM - _HAIR_MM)


def reaches_over(body: Body, panel: Panel) -> bool:
    """Return whether a body reaches over the edge of its face."""
    right, bottom = panel.x_mm + panel.width_mm, panel.y_mm + panel.height_mm
    left, top = panel.x_mm - _HAIR_MM, panel.y_mm - _HAIR_MM
    box = body.box
    return box[0] < left or box[1] < top or box[2] > right + _HAIR_MM or box[3] > bottom + _HAIR_MM


def too_deep(body: Body, panel: Panel) -> bool:
    """Return whether a body is deeper than the room behind the face, where both are known."""
    return 0 < panel.room_mm < body.kind.behind_mm


def misfits(bodies: Sequence[Body], panel: Panel) -> frozenset[str]:
    """Return the ids of the parts that cannot be mounted as they stand."""
    close = {body.part.id for pair in clashes(bodies) for body in pair}
    alone = {b.part.id for b in bodies if reaches_over(b, panel) or too_deep(b, panel)}
    return frozenset(close | alone)


def _core(body: Body) -> Box:
    """Return the box of a body, or the middle of a barrel, whose radius counts apart."""
    if body.radius_mm:
        return body.part.x_mm, body.part.y_mm, body.part.x_mm, body.part.y_mm
    return body.box
