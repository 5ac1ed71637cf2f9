"""Contact of a relay or a machine with rings at its ends: made, open, or changed over, as it stands."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentCircle

RING = 0.07


class Ringed(Element2Term):  # type: ignore[misc]
    """The fixed contact comes first, the hinge of the blade last."""

    def __init__(self, closed: bool, other_throw: bool) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        self.segments.append(SegmentCircle((RING, 0), RING))
        self.segments.append(SegmentCircle((1 - RING, 0), RING))
        # a closed blade lies on the fixed contact and reaches over it, so that it is seen to be a blade
        tip = (-0.02, 0.09) if closed else (0.16, 0.34)
        self.segments.append(Segment([(1 - 2 * RING, 0), tip], lw=3))
        if other_throw:
            self.segments.append(SegmentCircle((RING, 0.62), RING))


def element(state: str) -> Ringed:
    """Return the contact; `state` holds "closed" and "changeover" where they are so."""
    return Ringed("closed" in state, "changeover" in state)
