"""When a battery counts as empty: the light, a module or the cells themselves give up first."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.plan.names import PartId
from wiring.standards.lightness import relative_light

GLOWS = 0.01  # of rated light when fresh: a lamp below this is off, and its fading ends nothing


class End(NamedTuple):
    """The voltage at which it is over, what gives up there, and which part."""

    volts_v: float
    cause: str  # "light", "drop-out" or "cells"
    part: PartId | None = None


def end_of(
    volts: Sequence[float],
    lights: Mapping[PartId, Sequence[float]],
    drop_outs: Mapping[PartId, float],
    fresh_v: float,
    floor_v: float,
    dim_lightness: float,
    bright_v: float = 0.0,
) -> End:
    """Return the highest voltage at which something gives up, coming down from the fresh one.

    Volts rise; lights are relative to rated, lightness is relative to what each lamp gives when fresh;
    `drop_outs` are the battery's volts below which a module stops. With `bright_v` a lamp is compared with
    what it gives at those volts, not with what the fresh battery gives.
    """
    found = End(floor_v, "cells")
    target = relative_light(dim_lightness)
    for part, light in lights.items():
        fresh = between(volts, light, bright_v or fresh_v)
        if fresh < GLOWS:
            continue
        if between(volts, light, fresh_v) < target * fresh:
            return End(fresh_v, "light", part)
        below = _falls_below(volts, light, fresh_v, target * fresh)
        if below is not None and below > found.volts_v:
            found = End(below, "light", part)
    for part, least_v in drop_outs.items():
        if found.volts_v < least_v < fresh_v:
            found = End(least_v, "drop-out", part)
    return found


def between(volts: Sequence[float], values: Sequence[float], at_v: float) -> float:
    """Return a value of a table, straight between its points."""
    if at_v <= volts[0]:
        return float(values[0])
    for i in range(1, len(volts)):
        if at_v <= volts[i]:
            part = (at_v - volts[i - 1]) / (volts[i] - volts[i - 1])
            return float(values[i - 1] + (values[i] - values[i - 1]) * part)
    return float(values[-1])


def _falls_below(
    volts: Sequence[float], values: Sequence[float], from_v: float, level: float
) -> float | None:
    """Return the first voltage, coming down, where a value is below a level."""
    above_v, above = from_v, between(volts, values, from_v)
    for i in range(len(volts) - 1, -1, -1):
        if volts[i] >= from_v:
            continue
        here = float(values[i])
        if here < level <= above:
            return volts[i] + (above_v - volts[i]) * (level - here) / (above - here)
        above_v, above = volts[i], here
    return None
