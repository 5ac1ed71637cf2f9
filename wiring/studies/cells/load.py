"""What hangs on a battery, as a table of current against voltage, and where the two meet."""

from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple


class Load(NamedTuple):
    """Current drawn at each voltage of the battery's terminals; volts rise from 0."""

    volts: tuple[float, ...]
    amps: tuple[float, ...]
    rising: bool  # whether the current never falls as the voltage rises

    def current_a(self, volts_v: float) -> float:
        """Return the current at a voltage, straight between the table's points."""
        i = min(max(bisect_right(self.volts, volts_v) - 1, 0), len(self.volts) - 2)
        v0, v1 = self.volts[i], self.volts[i + 1]
        return self.amps[i] + (self.amps[i + 1] - self.amps[i]) * (volts_v - v0) / (v1 - v0)


def tabled(volts: Sequence[float], amps: Sequence[float]) -> Load:
    """Return the load of a table; a current that would charge the battery counts as none."""
    drawn = tuple(max(float(a), 0.0) for a in amps)
    slack = 1e-6 * max(drawn, default=0.0)
    rising = all(b >= a - slack for a, b in pairwise(drawn))
    return Load(tuple(float(v) for v in volts), drawn, rising)


def meeting_v(load: Load, emf_v: float, ohms: float) -> float | None:
    """Return the voltage where battery and load agree, V + R·I(V) = EMF; the upper one where there are two.

    None when the battery cannot carry the load at any voltage.
    """
    volts, amps = load.volts, load.amps
    if volts[-1] + ohms * amps[-1] <= emf_v:  # above the table: extend its last piece
        low = len(volts) - 2
    elif load.rising:
        low, high = 0, len(volts) - 1
        while high - low > 1:
            middle = (low + high) // 2
            if volts[middle] + ohms * amps[middle] <= emf_v:
                low = middle
            else:
                high = middle
    else:
        low = len(volts) - 2
        while low >= 0 and volts[low] + ohms * amps[low] > emf_v:
            low -= 1
        if low < 0:
            return None
    left = volts[low] + ohms * amps[low]
    right = volts[low + 1] + ohms * amps[low + 1]
    if right == left:
        return volts[low]
    return volts[low] + (volts[low + 1] - volts[low]) * (emf_v - left) / (right - left)
