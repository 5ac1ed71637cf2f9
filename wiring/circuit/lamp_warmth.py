"""Filaments on alternating current: too slow for its cycle, each keeps the ohms its RMS volts give it."""

from typing import NamedTuple

import numpy as np

from wiring.circuit.branches.filament import FILAMENT
from wiring.circuit.linear import Floats, Ints


class Lamps(NamedTuple):
    """Filaments that stand in a network as resistors: their places there, and their own laws' values."""

    places: Ints
    rated: Floats  # a row a filament

    @property
    def rated_ohms(self) -> Floats:
        """The ohms at rated volts, which is where to begin."""
        return np.asarray(self.rated[:, 0] / self.rated[:, 1])

    def ohms(self, volts: Floats) -> Floats:
        """Return the ohms at the volts of all branches, the last axis evenly spread moments of a cycle."""
        across = volts[self.places]
        return warm_ohms(self.rated, np.sqrt(np.mean(across * across, axis=-1)))


NO_LAMPS = Lamps(np.zeros(0, dtype=np.intp), np.zeros((0, 2)))


def warm_ohms(rows: Floats, rms_v: Floats) -> Floats:
    """Return the ohms of filaments at their RMS volts; `rows` are their laws' values, a row a filament."""
    amps, slopes = FILAMENT.current(rms_v, np.moveaxis(rows, 1, 0))
    return np.where(rms_v > 1e-9, rms_v / np.where(rms_v > 1e-9, amps, 1.0), 1.0 / slopes)
