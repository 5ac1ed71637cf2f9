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
            return tuple(old[3:] if _went_round(before, old) else old[2:])
    return tuple(old)


def _went_round(before: Frame, old: Sequence[Point]) -> bool:
    """Return whether a wire was led round the face from its lane."""
    if len(old) < 5:
        return False
    past, low, high = before.along(old[2]), *before.span
    beside = abs(past - before.along(old[1])) < SAME_MM and not low <= past <= high
    return (
        beside
        and before.out(old[2]) < -before.depth
        and abs(before.out(old[2]) - before.out(old[3])) < SAME_MM
    )


def round_bends(frame: Frame, aims: Sequence[Point], at: Point, lane_mm: float) -> tuple[Point, ...]:
    """Return the bends from a way of a plug now beyond another edge: out, along a lane, and on."""
    first = frame.along(aims[0])
    lead = frame.place(frame.along(at), lane_mm), frame.place(first, lane_mm)
    return (*dict.fromkeys(lead), *aims[_skipped(frame, aims) : -1])


def crosses_face(frame: Frame, aims: Sequence[Point]) -> bool:
    """Return whether a wire would run back over the face: it aims at what lies beyond the other edge."""
    low, high = frame.span
    return low < frame.along(aims[0]) < high and frame.out(aims[_skipped(frame, aims)]) < -frame.depth


def past_face_bends(
    frame: Frame, aims: Sequence[Point], at: Point, lane: int, end: float
) -> tuple[Point, ...]:
    """Return the bends of a wire led round the face, past its last end for 1.0, its first for -1.0."""
    low, high = frame.span
    beside_mm = LANE_CLEAR_MM + LANE_MM * lane
    near, far = frame.out(at) + beside_mm, -frame.depth - beside_mm
    past = high + beside_mm if end > 0 else low - beside_mm
    corners = (frame.along(at), near), (past, near), (past, far), (frame.along(aims[0]), far)
    return (*(frame.place(*corner) for corner in corners), *aims[_skipped(frame, aims) : -1])


def _skipped(frame: Frame, aims: Sequence[Point]) -> int:
    """Return 1 where the first aim only leads straight on to the second."""
    straight = len(aims) > 1 and abs(frame.along(aims[1]) - frame.along(aims[0])) < SAME_MM
    return int(straight)
