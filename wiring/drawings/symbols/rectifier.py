"""Bridge rectifier: a square on its corner with a diode inside."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentPoly


class Bridge(Element2Term):  # type: ignore[misc]
    """One side of the bridge between the leads; the other side is drawn in its own path."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1.2, 0)]))
        self.segments.append(SegmentPoly([(0, 0), (0.6, 0.6), (1.2, 0), (0.6, -0.6)]))
        self.segments.append(SegmentPoly([(0.42, -0.16), (0.42, 0.16), (0.72, 0)]))
        self.segments.append(Segment([(0.72, -0.16), (0.72, 0.16)]))
        self.segments.append(Segment([(0.3, 0), (0.9, 0)]))


def element(state: str) -> Bridge:
    """Return the bridge."""
    return Bridge()
