"""Where the wires from a panel's plug to the layout run: into lanes of their own, then on as they were."""

from collections.abc import Sequence
from itertools import pairwise

from wiring.edits.harness_way import Frame
from wiring.plan.places import Point

LANE_CLEAR_MM, LANE_MM = 5.0, 2.4  # from a plug's ways to the first lane to the layout, and to the next
LEAD_MM = 60.0  # a lane no farther from its plug belongs to it and goes with it
SAME_MM = 0.01


def outer_bends(frame: Frame, old: Sequence[Point], at: Point, lane_mm: float) -> tuple[Point, ...] | None:
    """Return the bends from a plug's way onwards; None when the wire ran in no lane.

    The old lane stays, unless it lies nearer to the edge than `lane_mm`.
    """
    for index, (a, b) in enumerate(pairwise(old)):
        if abs(frame.out(a) - frame.out(b)) < SAME_MM < abs(frame.along(a) - frame.along(b)):
            out = max(frame.out(a), lane_mm)
            return (frame.place(frame.along(at), out), frame.place(frame.along(b), out), *old[index + 2 :])
    return None


def aims_round(before: Frame | None, old: Sequence[Point], at: Point) -> tuple[Point, ...]:
    """Return the points that a wire led out of a way at `at` still goes through, its far end last.

    `old` are its bends and its far end; the lane it had along the edge before is left out.
    """
    if before is not None and len(old) > 2:
        lane = before.out(old[0])
        if abs(lane - before.out(old[1])) < SAME_MM and lane - before.out(at) < LEAD_MM:
            return tuple(old[2:])
    return tuple(old)


def round_bends(frame: Frame, aims: Sequence[Point], at: Point, lane_mm: float) -> tuple[Point, ...]:
    """Return the bends from a way of a plug now beyond another edge: out, along a lane, and on."""
    first = frame.along(aims[0])
    is_on_the_way = len(aims) > 1 and abs(frame.along(aims[1]) - first) < SAME_MM
    lead = frame.place(frame.along(at), lane_mm), frame.place(first, lane_mm)
    return (*lead, *aims[1 if is_on_the_way else 0 : -1])
