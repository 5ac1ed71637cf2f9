"""The most a wire may carry, and what makes it too hot, for any size a plan may name."""

import math
from functools import lru_cache

from wiring.standards.current_limits import current_limit_a
from wiring.standards.wire_size import read_size

_TABLE_ENDS_AT = "24 AWG"  # below it the published limit is a rule of thumb, far on the safe side


@lru_cache(maxsize=256)
def limit_a(size: str) -> float:
    """Return the published limit of a wire in a bundle, amperes; infinite for a size nobody knows."""
    try:
        return current_limit_a(size)
    except ValueError:
        return math.inf


@lru_cache(maxsize=256)
def warm_a(size: str) -> float:
    """Return the current at which a wire is as warm as the bundle table allows; infinite for no size.

    Thinner than 24 AWG the table is carried on with the three-quarters power of the area: what heats a wire
    goes with 1/d², what cools it about with d. Common practice, no source.
    """
    limit = limit_a(size)
    if math.isinf(limit):
        return limit
    share = read_size(size).area_mm2 / read_size(_TABLE_ENDS_AT).area_mm2
    return limit if share >= 1.0 else max(limit, current_limit_a(_TABLE_ENDS_AT) * share**0.75)
