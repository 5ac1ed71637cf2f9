"""Which of two square corners keeps a wire off the bodies it starts from and lands on."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from app.canvas.gestures.pointer import Around
from wiring.edits.laying import body_box
from wiring.edits.square_way import Box
from wiring.plan.names import TerminalRef
from wiring.plan.places import Point

ALONG_MM = 0.05  # a stretch on the very edge of a body is not in it


def bodies_of(around: Around, refs: Iterable[TerminalRef | None]) -> tuple[Box, ...]:
    """Return the bodies of the parts that have those terminals."""
    parts = (around.plan.parts.get(ref.part) for ref in refs if ref is not None)
    return tuple(body_box(p, around.kinds[p.kind]) for p in parts if p is not None and p.kind in around.kinds)


def keeps_level_first(last: Point, to: Point, bodies: Sequence[Box], usual: bool) -> bool:
    """Return whether a way goes level before it goes upright: as usual unless that lies more in a body."""
    level = inside_mm((last, (to[0], last[1]), to), bodies)
    upright = inside_mm((last, (last[0], to[1]), to), bodies)
    return usual if abs(level - upright) < ALONG_MM else level < upright


def inside_mm(path: Sequence[Point], bodies: Sequence[Box]) -> float:
    """Return how far the square stretches of a way run through bodies, in mm."""
    found = 0.0
    for (ax, ay), (bx, by) in pairwise(path):
        for left, top, right, bottom in bodies:
            across = min(max(ax, bx), right) - max(min(ax, bx), left)
            down = min(max(ay, by), bottom) - max(min(ay, by), top)
            if ay == by and top + ALONG_MM < ay < bottom - ALONG_MM:
                found += max(across, 0.0)
            elif ax == bx and left + ALONG_MM < ax < right - ALONG_MM:
                found += max(down, 0.0)
    return found
