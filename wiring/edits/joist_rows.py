"""Several joists at once: how far apart they lie, how thick and deep they are, where they are."""

import itertools
import math
from collections.abc import Iterable, Sequence
from typing import Any

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.set_plan import set_plan
from wiring.edits.tables import counted, rounded_mm
from wiring.plan.joist import Joist
from wiring.plan.places import Point
from wiring.plan.plan import Plan

PARALLEL_DEG = 2.0  # what a hand draws as parallel
GONE = "The plan has not all of these joists any more; select them anew."
CROSSED = "These joists do not lie side by side, so that there is no distance between them to set."


def middles_apart(joists: Sequence[Joist]) -> tuple[float, ...]:
    """Return the distances in mm from middle to middle, from one to the next; () unless they are parallel."""
    placed = _side_by_side(joists)
    return tuple(after - before for (before, _), (after, _) in itertools.pairwise(placed))


def clear_between(joists: Sequence[Joist]) -> tuple[float, ...]:
    """Return the clear distances in mm between one and the next; () unless they are parallel."""
    placed = _side_by_side(joists)
    return tuple(
        after - before - (joists[i].width_mm + joists[k].width_mm) / 2
        for (before, i), (after, k) in itertools.pairwise(placed)
    )


def space_joists(indices: Iterable[int], apart_mm: float, *, clear: bool = False) -> Edit:
    """Give joists one distance from middle to middle, or `clear` between them; the first one stays."""
    wanted = tuple(indices)

    def apply(plan: Plan) -> Plan:
        joists = _joists_of(plan, wanted)
        placed = _side_by_side(joists)
        if not placed:
            raise EditRefused(CROSSED)
        normal, there, moved = _across(joists[0]), placed[0][0], [joists[placed[0][1]]]
        for (_, i), (before, k) in itertools.pairwise(placed):
            touching = (joists[i].width_mm + joists[k].width_mm) / 2
            step = apart_mm + touching if clear else apart_mm
            if step < touching - 1e-6:
                raise EditRefused("Set farther apart: so near the joists would lie in one another.")
            there += step
            by_mm = there - before
            moved.append(_shifted(joists[k], normal[0] * by_mm, normal[1] * by_mm))
        return _with(plan, {wanted[k]: joist for (_, k), joist in zip(placed, moved, strict=True)})

    return Edit("Space joists", apply)


def size_several(indices: Iterable[int], **sizes: float) -> Edit:
    """Give joists that width_mm or depth_mm."""
    wanted = tuple(indices)
    given = {name: rounded_mm(float(mm)) for name, mm in sizes.items()}

    def apply(plan: Plan) -> Plan:
        joists = _joists_of(plan, wanted)
        return _with(
            plan, {i: msgspec.structs.replace(j, **given) for i, j in zip(wanted, joists, strict=True)}
        )

    return Edit("Size joists", apply)


def move_joists(indices: Iterable[int], dx_mm: float, dy_mm: float) -> Edit:
    """Shift joists."""
    wanted = tuple(indices)

    def apply(plan: Plan) -> Plan:
        joists = _joists_of(plan, wanted)
        return _with(plan, {i: _shifted(j, dx_mm, dy_mm) for i, j in zip(wanted, joists, strict=True)})

    return Edit(f"Move {counted(len(wanted), 'joist')}", apply)


def remove_joists(indices: Iterable[int]) -> Edit:
    """Take joists away."""
    wanted = tuple(indices)

    def apply(plan: Plan) -> Plan:
        _joists_of(plan, wanted)
        kept = tuple(joist for i, joist in enumerate(plan.joists) if i not in wanted)
        return set_plan(joists=kept).apply(plan)

    return Edit(f"Remove {counted(len(wanted), 'joist')}", apply)


def _side_by_side(joists: Sequence[Joist]) -> list[tuple[float, int]]:
    """Return how far across each of parallel joists lies, in mm, with its place in the row; else none."""
    if len(joists) < 2:
        return []
    normal = _across(joists[0])
    for joist in joists:
        (ax, ay), (bx, by) = joist.start, joist.end
        off = abs((bx - ax) * normal[0] + (by - ay) * normal[1])
        if off > math.dist(joist.start, joist.end) * math.sin(math.radians(PARALLEL_DEG)):
            return []
    return sorted(
        (sum((a + b) / 2 * n for a, b, n in zip(joist.start, joist.end, normal, strict=True)), i)
        for i, joist in enumerate(joists)
    )


def _across(joist: Joist) -> Point:
    """Return the direction across a joist, to the right of it or below it."""
    (ax, ay), (bx, by) = joist.start, joist.end
    long = math.dist(joist.start, joist.end) or 1.0
    x, y = -(by - ay) / long, (bx - ax) / long
    return (x, y) if (x if abs(x) > abs(y) else y) > 0 else (-x, -y)


def _shifted(joist: Joist, dx_mm: float, dy_mm: float) -> Joist:
    def at(point: Point) -> Point:
        return rounded_mm(point[0] + dx_mm), rounded_mm(point[1] + dy_mm)

    return msgspec.structs.replace(joist, start=at(joist.start), end=at(joist.end))


def _joists_of(plan: Plan, indices: Sequence[int]) -> list[Joist]:
    if not all(0 <= i < len(plan.joists) for i in indices):
        raise EditRefused(GONE)
    return [plan.joists[i] for i in indices]


def _with(plan: Plan, changed: dict[int, Joist]) -> Plan:
    fields: dict[str, Any] = {"joists": tuple(changed.get(i, j) for i, j in enumerate(plan.joists))}
    return set_plan(**fields).apply(plan)
