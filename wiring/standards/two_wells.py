"""Charge in two wells: one the load draws from, one that refills it while the battery rests."""

import math
from typing import NamedTuple


class Wells(NamedTuple):
    """Charge at hand and charge bound, ampere-hours."""

    available_ah: float
    bound_ah: float

    @property
    def total_ah(self) -> float:
        """Both wells together."""
        return self.available_ah + self.bound_ah


def full(capacity_ah: float, share: float) -> Wells:
    """Return the wells of a fresh battery; `share` of its charge is at hand."""
    return Wells(share * capacity_ah, (1.0 - share) * capacity_ah)


def drawn(wells: Wells, current_a: float, hours: float, share: float, rate_per_h: float) -> Wells:
    """Return the wells after a constant current (0 = rest), exact for any length of time.

    Closed form of Manwell and McGowan's two-well law, as NREL's SSC has it.
    """
    decay = math.exp(-rate_per_h * hours)
    refilled = -math.expm1(-rate_per_h * hours)
    lag = rate_per_h * hours - refilled
    total = wells.available_ah + wells.bound_ah
    available = (
        wells.available_ah * decay
        + (total * rate_per_h * share - current_a) * refilled / rate_per_h
        - current_a * share * lag / rate_per_h
    )
    return Wells(available, total - current_a * hours - available)


def leaked(wells: Wells, kept: float) -> Wells:
    """Return the wells with a share of their charge lost on the shelf."""
    return Wells(wells.available_ah * kept, wells.bound_ah * kept)
