"""Diode, anode first: a solid triangle against a bar."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentPoly


class Solid(Element2Term):  # type: ignore[misc]
    """Anode first."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (0.5, -0.28), (0.5, 0.28), gap, (0.5, 0)]))
        self.segments.append(SegmentPoly([(0, 0.28), (0.5, 0), (0, -0.28)], fill="black"))


def element(state: str) -> Solid:
    """Return the diode."""
    return Solid()
