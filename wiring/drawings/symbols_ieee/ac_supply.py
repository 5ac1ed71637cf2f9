"""Accessory transformer: two windings with a core between them."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentArc

LOOPS = 4
PRIMARY = -0.7


class Windings(Element2Term):  # type: ignore[misc]
    """The winding that feeds the layout lies between the leads, the mains winding beside it."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        step = 1 / LOOPS
        for loop in range(LOOPS):
            middle = (loop + 0.5) * step
            self.segments.append(SegmentArc((middle, 0), step, step, theta1=180, theta2=360))
            self.segments.append(SegmentArc((middle, PRIMARY), step, step, theta1=0, theta2=180))
        for y in (PRIMARY / 2 - 0.06, PRIMARY / 2 + 0.06):
            self.segments.append(Segment([(0, y), (1, y)]))
        for x in (0, 1):
            self.segments.append(Segment([(x, PRIMARY), (x, PRIMARY - 0.12)]))


def element(state: str) -> Windings:
    """Return the windings."""
    return Windings()
