"""Contact worked by hand or by a coil: made, open, or changed over, in the position it stands in."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentCircle

DOT = 0.07


class Contact(Element2Term):  # type: ignore[misc]
    """The fixed contact comes first, the hinge of the blade last."""

    def __init__(self, closed: bool, other_throw: bool) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        self.segments.append(SegmentCircle((DOT, 0), DOT))
        self.segments.append(SegmentCircle((1 - DOT, 0), DOT))
        # a closed blade lies on the fixed contact and reaches over it, so that it is seen to be a blade
        tip = (-0.02, 0.09) if closed else (0.16, 0.34)
        self.segments.append(Segment([(1 - 2 * DOT, 0), tip], lw=3))
        if other_throw:
            self.segments.append(SegmentCircle((DOT, 0.62), DOT))


def element(state: str) -> Contact:
    """Return the contact; `state` holds "closed" and "changeover" where they are so."""
    return Contact("closed" in state, "changeover" in state)
