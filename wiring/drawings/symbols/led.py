"""Light-emitting diode: a diode and two rays."""

from wiring.drawings.symbols.body import rays
from wiring.drawings.symbols.diode import Rectifying


def element(state: str) -> Rectifying:
    """Return the diode with its rays."""
    symbol = Rectifying()
    symbol.segments.extend(rays(0.12, -0.32))
    return symbol
