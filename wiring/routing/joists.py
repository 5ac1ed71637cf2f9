"""Where wires and wireways meet the joists: each meeting is a hole to drill, or a way round beneath."""

from collections.abc import Mapping, Sequence
from itertools import pairwise

from wiring.catalogue.kind import Kind
from wiring.plan.joist import Joist
from wiring.plan.lengths import wire_path
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


def joists_met(plan: Plan, course: Sequence[Point]) -> tuple[int, ...]:
    """Return the joists a course crosses by index, in the order it meets them; one met twice stands twice.

    A course that only runs along a joist does not cross it.
    """
    found = []
    for a, b in pairwise(course):
        met = [
            (share, i) for i, joist in enumerate(plan.joists) if (share := _meeting(a, b, joist)) is not None
        ]
        found += [index for _, index in sorted(met)]
    return tuple(found)


def joists_of_wire(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> tuple[int, ...]:
    """Return the joists a wire crosses by index, in order from its start."""
    return joists_met(plan, wire_path(plan, kinds, wire)) if plan.joists else ()


def _meeting(a: Point, b: Point, joist: Joist) -> float | None:
    """Return how far along a stretch it crosses the joist's middle line, from 0 to below 1; None if not.

    The end of a stretch belongs to the next one, so that a corner on the line counts once.
    """
    (cx, cy), (dx, dy) = joist.start, joist.end
    across = (b[0] - a[0]) * (dy - cy) - (b[1] - a[1]) * (dx - cx)
    if abs(across) < 1e-9:
        return None
    t = ((cx - a[0]) * (dy - cy) - (cy - a[1]) * (dx - cx)) / across
    u = ((cx - a[0]) * (b[1] - a[1]) - (cy - a[1]) * (b[0] - a[0])) / across
    return t if 0 <= t < 1 and 0 <= u <= 1 else None
