"""The Wright omega function of a real number, w + ln w = z, without scipy: it must not slow the start."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
TINY_BELOW = -36.0  # from here down w is exp(z) to the last digit
STEPS = 2


def wright_omega(z: Floats) -> Floats:
    """Return w with w + ln w = z.

    Steps of Fritsch, Shafer and Crowley (Algorithm 443, Communications of the ACM 16, 1973), each of fourth
    order, from the first terms of the series at either end.
    """
    z = np.asarray(z, dtype=np.float64)
    inner = np.maximum(z, TINY_BELOW)
    large = np.maximum(inner, 1.0)
    log = np.log(large)
    small = np.exp(np.minimum(inner, 1.0))
    middle = 0.5671432904097838 + (inner * (0.3618962566348892 + 0.0736777822 * inner))
    w = np.where(
        inner > 3.0, large - log + log / large, np.where(inner < -2.0, small * (1.0 - small), middle)
    )
    for _ in range(STEPS):
        rest = inner - w - np.log(w)
        one = 1.0 + w
        twice = 2.0 * one * (one + rest * (2.0 / 3.0))
        w = w * (1.0 + rest / one * (twice - rest) / (twice - 2.0 * rest))
    return np.where(z < TINY_BELOW, np.exp(np.minimum(z, 0.0)), w)
