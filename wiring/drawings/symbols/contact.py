"""Contact of a relay or a machine: made, open, or changed over, in the position it stands in."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment

FOOT, HINGE = 0.15, 0.85
THROW = (0.07, 0.62)  # where the lead of the other throw ends, along the symbol and to its side


class Contact(Element2Term):  # type: ignore[misc]
    """The fixed contact comes first, the hinge of the blade last."""

    def __init__(self, closed: bool, other_throw: bool) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (1, 0)]))
        self.segments.append(Segment([(HINGE, 0), (1, 0)]))
        # a closed blade rests on the foot of its contact and reaches over it, to be seen as a blade
        fixed = [(0, 0), (FOOT, 0), (FOOT, 0.16)] if closed else [(0, 0), (FOOT, 0)]
        self.segments.append(Segment(fixed))
        self.blade = (0.03, 0.187) if closed else (0.12, 0.36)
        self.segments.append(Segment([(HINGE, 0), self.blade], lw=3))
        if other_throw:
            along, aside = THROW
            self.segments.append(Segment([(along, aside + 0.07), (along, aside - 0.13)]))

    def by_hand(self, legs: bool) -> None:
        """Add what a hand works the blade by: a bar, with legs where it is pushed."""
        middle = self.blade[1] * (HINGE - 0.5) / (HINGE - self.blade[0])
        self.segments.append(Segment([(0.5, middle), (0.5, -0.48)], ls="--"))
        bar = [(0.36, -0.48), (0.64, -0.48)]
        self.segments.append(Segment([(0.36, -0.38), *bar, (0.64, -0.38)] if legs else bar))


def element(state: str) -> Contact:
    """Return the contact; `state` holds "closed" and "changeover" where they are so."""
    return Contact("closed" in state, "changeover" in state)
