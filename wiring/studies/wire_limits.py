"""The most a wire may carry, for any size a plan may name."""

import math
from functools import lru_cache

from wiring.standards.conductors import current_limit_a


@lru_cache(maxsize=256)
def limit_a(size: str) -> float:
    """Return the published limit of a wire in a bundle, amperes; infinite for a size nobody knows."""
    try:
        return current_limit_a(size)
    except ValueError:
        return math.inf
