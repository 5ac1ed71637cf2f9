"""What a pulse does to each coil, whatever it comes from."""

from typing import NamedTuple

import numpy as np

from wiring.studies.throws.coil import Coil
from wiring.studies.throws.enough import margin
from wiring.studies.throws.linear_phase import Floats


class CoilPulse(NamedTuple):
    """One coil's share of a pulse."""

    peak_a: float
    peak_at_s: float
    energy_j: float  # heat in its winding, the tail in a freewheel diode's loop included
    amps: Floats  # at the pulse's times
    margin: float  # of what a throw needs; 1 just throws

    @property
    def throws(self) -> bool:
        """Whether it is enough."""
        return self.margin >= 1.0


class Pulse(NamedTuple):
    """One press of a button: the coil that is asked about first, then those thrown with it."""

    coils: tuple[CoilPulse, ...]
    times_s: Floats
    store_v: Floats  # of the capacitor, or of the supply's terminals, at those times
    left_v: float  # when the button is let go
    recharge_s: float  # from then to 95 % of full; nought for a supply
    stored_j: float  # in the full capacitor; nought for a supply
    limited: bool = False  # the supply gave less than the coils would have taken

    @property
    def peak_a(self) -> float:
        """Peak current in the first coil."""
        return self.coils[0].peak_a

    @property
    def peak_at_s(self) -> float:
        """When the first coil's current is at its peak."""
        return self.coils[0].peak_at_s

    @property
    def energy_coil_j(self) -> float:
        """Heat in the first coil."""
        return self.coils[0].energy_j

    @property
    def margin(self) -> float:
        """The least margin of all coils thrown at once."""
        return min(coil.margin for coil in self.coils)

    @property
    def throws(self) -> bool:
        """Whether every coil gets enough."""
        return self.margin >= 1.0


def coil_pulse(coil: Coil, amps: Floats, peak_a: float, peak_at_s: float, energy_j: float) -> CoilPulse:
    """Return one coil's share, judged."""
    return CoilPulse(peak_a, peak_at_s, energy_j, np.asarray(amps), margin(coil, peak_a, energy_j))
