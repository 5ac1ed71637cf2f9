"""A coil in its loop, and the capacitor that feeds it."""

from typing import NamedTuple

LEAST_HENRY = 1e-7  # less than any wire; a coil without inductance would need no state
DIODE_V = 0.8  # of a silicon diode at some amperes; common practice, no source


class Coil(NamedTuple):
    """One coil, and all that lies in its way from the store: ohms, seconds, volts."""

    ohms: float
    rise_s: float  # inductance over resistance
    loop_ohms: float = 0.0  # wires, contacts and fuses of its loop
    offset_v: float = 0.0  # lost in diodes in its way, whatever the current
    one_way: bool = False  # a diode in its way keeps the current from coming back
    freewheel_v: float | None = None  # drop of a diode across the coil; None where there is none
    rated_v: float = 16.0
    pulse_s: float = 0.1  # the pulse it is made for, at rated volts

    @property
    def henry(self) -> float:
        """The coil's inductance."""
        return max(self.rise_s * self.ohms, LEAST_HENRY)


class Store(NamedTuple):
    """A capacitor, full at first, that a resistance fills again from a feed of so many volts."""

    farads: float
    volts_v: float
    charge_ohm: float

    @property
    def energy_j(self) -> float:
        """What it holds when full: half of C V²."""
        return 0.5 * self.farads * self.volts_v * self.volts_v
