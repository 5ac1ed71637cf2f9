"""The Wright omega function of a real number, w + ln w = z, without scipy: it must not slow the start."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
LOWEST = -700.0  # w is exp(z) there, and less than any number that counts
STEPS = 2


def wright_omega(z: Floats) -> Floats:
    """Return w with w + ln w = z.

    Steps of Fritsch, Shafer and Crowley (Algorithm 443, Communications of the ACM 16, 1973), each of fourth
    order, from the first terms of the series above one, and beneath it from x (1 + x) / (1 + 2 x + x^2 / 2)
    with x = exp(z), which has the first three terms of the series and is right at one to a quarter percent.
    """
    z = np.maximum(z, LOWEST)
    x = np.exp(np.minimum(z, 1.0))
    large = np.maximum(z, 1.0)
    log = np.log(large)
    w = np.where(z > 1.0, large - log + log / large, x * (1.0 + x) / (1.0 + x * (2.0 + 0.5 * x)))
    for _ in range(STEPS):
        rest = z - w - np.log(w)
        one = 1.0 + w
        twice = 2.0 * one * (one + rest * (2.0 / 3.0))
        w *= 1.0 + rest / one * (twice - rest) / (twice - 2.0 * rest)
    return np.asarray(w)
