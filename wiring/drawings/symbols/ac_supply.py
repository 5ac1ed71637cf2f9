"""Accessory transformer: the two rings of a transformer."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentBezier, SegmentCircle


class Rings(Element2Term):  # type: ignore[misc]
    """The winding that feeds the layout lies between the leads, the mains winding beside it."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        self.segments.append(SegmentCircle((0.5, 0), 0.5))
        self.segments.append(SegmentCircle((0.5, -0.62), 0.5))
        self.segments.append(SegmentBezier([(0.5, -0.02), (0.3, 0.1), (0.7, 0.1), (0.5, 0.22)]))


def element(state: str) -> Rings:
    """Return the rings."""
    return Rings()
