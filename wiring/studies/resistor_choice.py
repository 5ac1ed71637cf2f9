"""The resistor to put in series with LEDs."""

from typing import NamedTuple

from wiring.standards.preferred import next_e24_up

RATINGS_W = (0.25, 0.5, 1.0, 2.0, 3.0, 5.0)  # common practice, no source: what shops keep
DERATE = 0.6  # common practice, no source: a resistor at its full rating burns fingers


class ResistorChoice(NamedTuple):
    """A value of the E24 series, the power it takes, and the rating to buy."""

    ohms: float
    power_w: float
    rated_w: float


def series_resistor(supply_v: float, forward_v: float, current_a: float) -> ResistorChoice | None:
    """Return the resistor for LEDs of that forward voltage; None if the supply is too low or none will do.

    The next value up of IEC 60063's E24 series, so that the current is never above the wished one.
    """
    left_v = supply_v - forward_v
    if left_v <= 0 or current_a <= 0:
        return None
    ohms = next_e24_up(left_v / current_a)
    power_w = left_v * left_v / ohms
    rated_w = next((rating for rating in RATINGS_W if power_w <= DERATE * rating), None)
    return ResistorChoice(ohms, power_w, rated_w) if rated_w is not None else None
