"""Light-emitting diode: a diode and two rays."""

from schemdraw.elements import Element2Term
from schemdraw.elements.elements import gap
from schemdraw.segments import Segment, SegmentPoly

from wiring.drawings.symbols.body import rays


class LightEmitting(Element2Term):  # type: ignore[misc]
    """Anode first."""

    def __init__(self) -> None:
        super().__init__()
        self.segments.append(Segment([(0, 0), gap, (0.5, -0.28), (0.5, 0.28), gap, (0.5, 0)]))
        self.segments.append(SegmentPoly([(0, 0.28), (0.5, 0), (0, -0.28)]))
        self.segments.extend(rays(0.12, -0.32))


def element(state: str) -> LightEmitting:
    """Return the diode with its rays."""
    return LightEmitting()
