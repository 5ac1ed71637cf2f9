"""Switch worked by hand: a blade between two rings, without a sign of the hand."""

from wiring.drawings.symbols_ieee.contact import Ringed, element

__all__ = ["Ringed", "element"]
