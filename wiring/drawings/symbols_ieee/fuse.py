"""Fuse: a wave between its two ends."""

import math

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment

STEPS = 24
HIGH = 0.26


class Wave(Element2Term):  # type: ignore[misc]
    """One period of a wave; blown, it is gone from the middle."""

    def __init__(self, blown: bool) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        points = [(n / STEPS, -HIGH * math.sin(2 * math.pi * n / STEPS)) for n in range(STEPS + 1)]
        third = STEPS // 3
        runs = (points[: third + 1], points[2 * third :]) if blown else (points,)
        self.segments.extend(Segment(run) for run in runs)


def element(state: str) -> Wave:
    """Return the fuse; blown, its wave is gone from the middle."""
    return Wave(blown=state == "blown")
