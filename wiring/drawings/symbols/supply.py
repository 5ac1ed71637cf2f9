"""Supply from the mains that gives direct current: a box, alternating above and direct below its diagonal."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentBezier, SegmentPoly


class Converter(Element2Term):  # type: ignore[misc]
    """Plus first."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1.2, 0)]))
        self.segments.append(SegmentPoly([(0, -0.6), (1.2, -0.6), (1.2, 0.6), (0, 0.6)]))
        self.segments.append(Segment([(1.2, -0.6), (0, 0.6)]))
        self.segments.append(SegmentBezier([(0.35, -0.45), (0.1, -0.3), (0.6, -0.3), (0.35, -0.12)]))
        for row in (0.8, 0.88):
            self.segments.append(Segment([(row, 0.14), (row, 0.44)]))


def element(state: str) -> Converter:
    """Return the box."""
    return Converter()
