"""Lit building: the outline of a house with a lamp inside; an own sign, no standard has one."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentCircle, SegmentPoly


class House(Element2Term):  # type: ignore[misc]
    """The ridge points along the first lead."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1.1, 0)]))
        self.segments.append(SegmentPoly([(0, 0), (0.3, 0.46), (1.1, 0.46), (1.1, -0.46), (0.3, -0.46)]))
        self.segments.append(SegmentCircle((0.65, 0), 0.3))
        r = 0.3 / 2**0.5
        self.segments.append(Segment([(0.65 - r, -r), (0.65 + r, r)]))
        self.segments.append(Segment([(0.65 - r, r), (0.65 + r, -r)]))
        self.segments.append(Segment([(0, 0), (0.35, 0)]))
        self.segments.append(Segment([(0.95, 0), (1.1, 0)]))


def element(state: str) -> House:
    """Return the house."""
    return House()
