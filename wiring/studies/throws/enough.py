"""Whether a pulse is enough to throw a turnout. Both shares are common practice, no source.

Nobody publishes the force a turnout needs. What is known: a pulse of 0.05 to 0.1 s at rated volts throws it
with much in hand, and units of 2200 or 4700 µF, charged to some 20 V, are sold for one turnout or two. An
eighth of that long pulse's heat, near its rated current, agrees with both.
"""

from wiring.studies.throws.coil import Coil

ENERGY_SHARE = 0.125  # of the heat a full pulse at rated volts gives
PEAK_SHARE = 0.7  # of the rated current, that the peak must reach


def needed_j(coil: Coil) -> float:
    """Return the heat a coil must get for a throw, in joules."""
    return ENERGY_SHARE * coil.rated_v**2 / coil.ohms * coil.pulse_s


def needed_a(coil: Coil) -> float:
    """Return the peak current a coil must reach for a throw, in amperes."""
    return PEAK_SHARE * coil.rated_v / coil.ohms


def margin(coil: Coil, peak_a: float, energy_j: float) -> float:
    """Return how much a pulse gives over what is needed: 1 just throws, less does not."""
    return min(peak_a / needed_a(coil), energy_j / needed_j(coil))
