"""Resettable fuse: a resistor that rises with heat."""

from schemdraw.elements import Thermistor


def element(state: str) -> Thermistor:
    """Return the temperature-dependent resistor."""
    return Thermistor()
