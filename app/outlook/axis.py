"""Round numbers for an axis, and the way from a value to a pixel."""

import math
from typing import NamedTuple

STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)


class Axis(NamedTuple):
    """A stretch of values laid along a stretch of pixels."""

    low: float
    high: float
    start_px: float
    end_px: float

    def px(self, value: float) -> float:
        """Return where a value lies."""
        if self.high == self.low:
            return self.start_px
        return self.start_px + (value - self.low) / (self.high - self.low) * (self.end_px - self.start_px)

    def value(self, px: float) -> float:
        """Return which value lies there."""
        if self.end_px == self.start_px:
            return self.low
        return self.low + (px - self.start_px) / (self.end_px - self.start_px) * (self.high - self.low)


def ticks(low: float, high: float, at_most: int) -> tuple[float, ...]:
    """Return round values from low to high, no more than told."""
    span = high - low
    if span <= 0 or at_most < 1 or not math.isfinite(span):
        return ()
    rough = span / at_most
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(s * power for s in STEPS if s * power >= rough * (1 - 1e-9))
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return tuple(n * step for n in range(first, last + 1))


def tick_words(value: float, step: float) -> str:
    """Return a tick's label with as many digits as its step needs."""
    digits = max(0, -math.floor(math.log10(step) + 1e-9)) if step > 0 else 0
    if step > 0 and abs(step * 10**digits - round(step * 10**digits)) > 1e-6:
        digits += 1
    return f"{value:.{digits}f}"
