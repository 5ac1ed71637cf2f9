"""Diode, anode first: the conductor runs through its triangle."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentPoly


class Rectifying(Element2Term):  # type: ignore[misc]
    """Anode first."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (0.5, -0.28), (0.5, 0.28), gap, (0.5, 0)]))
        self.segments.append(SegmentPoly([(0, 0.28), (0.5, 0), (0, -0.28)]))
        self.segments.append(Segment([(0, 0), (0.5, 0)]))


def element(state: str) -> Rectifying:
    """Return the diode."""
    return Rectifying()
