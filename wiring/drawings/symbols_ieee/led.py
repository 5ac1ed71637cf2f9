"""Light-emitting diode: a solid diode and two rays."""

from wiring.drawings.symbols.body import rays
from wiring.drawings.symbols_ieee.diode import Solid


def element(state: str) -> Solid:
    """Return the diode with its rays."""
    symbol = Solid()
    symbol.segments.extend(rays(0.12, -0.32))
    return symbol
