"""Strokes that several symbols share: the round and the square body, and the two rays of light."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentCircle, SegmentPoly


class Round(Element2Term):  # type: ignore[misc]
    """A circle one unit across between the two leads."""

    def __init__(self, radius: float = 0.5) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        self.segments.append(SegmentCircle((0.5, 0), radius))


class Box(Element2Term):  # type: ignore[misc]
    """A rectangle one unit long between the two leads."""

    def __init__(self, half_width: float = 0.25) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        self.segments.append(
            SegmentPoly([(0, -half_width), (1, -half_width), (1, half_width), (0, half_width)])
        )


def rays(x: float, y: float, reach: float = 0.26) -> list[Segment]:
    """Return two small arrows that leave to the negative side, as light does."""
    return [
        Segment(
            [(x + step, y), (x + step + 0.6 * reach, y - reach)],
            arrow="->",
            arrowwidth=0.11,
            arrowlength=0.14,
        )
        for step in (0.0, 0.24)
    ]
