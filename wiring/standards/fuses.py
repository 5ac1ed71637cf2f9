"""Fuses: the ratings that are sold, and how fast they must and must not open.

IEC 60127-2 gates verified in makers' sheets: quick-acting (F, sheet 2) of 5 × 20 mm glass fuses, two
editions; time-lag (T, sheet 3) of a maker's 5 × 20 mm type. From 8 A on the standard ends and the makers go
on. Such a fuse carries its rating for ever: a fuse maker's text, verified. Ratings from memory of IEC 60127:
the R10 series and common ones between.
"""

import math
from typing import NamedTuple

RATINGS_A = (
    0.032, 0.04, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1.0, 1.25, 1.6,
    2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0, 10.0,
)  # fmt: skip


class Gate(NamedTuple):
    """When a fuse opens at a multiple of its rating; 0 and infinity where nothing is said."""

    multiple: float
    not_before_s: float
    not_after_s: float


class Speed(NamedTuple):
    """One kind of fuse up to a rating, from where the row before it of that name ends."""

    name: str  # as the setting "speed" of a fuse says
    to_a: float
    gates: tuple[Gate, ...]


_HOUR = 3600.0
_FAST = "fast"
_SLOW = "slow"
SPEEDS: tuple[Speed, ...] = (
    Speed(_FAST, 0.1, (
        Gate(1.5, _HOUR, math.inf), Gate(2.1, 0.0, 1800.0), Gate(2.75, 0.01, 0.5), Gate(4.0, 0.003, 0.1),
        Gate(10.0, 0.0, 0.02),
    )),
    Speed(_FAST, 6.3, (
        Gate(1.5, _HOUR, math.inf), Gate(2.1, 0.0, 1800.0), Gate(2.75, 0.05, 2.0), Gate(4.0, 0.01, 0.3),
        Gate(10.0, 0.0, 0.02),
    )),
    Speed(_FAST, 10.0, (
        Gate(1.5, _HOUR / 2, math.inf), Gate(2.1, 0.0, 1800.0), Gate(2.75, 0.05, 2.0), Gate(4.0, 0.01, 0.4),
        Gate(10.0, 0.0, 0.04),
    )),
    Speed(_SLOW, 0.1, (
        Gate(1.5, _HOUR, math.inf), Gate(2.1, 0.0, 120.0), Gate(2.75, 0.2, 10.0), Gate(4.0, 0.04, 3.0),
        Gate(10.0, 0.01, 0.3),
    )),
    Speed(_SLOW, 6.3, (
        Gate(1.5, _HOUR, math.inf), Gate(2.1, 0.0, 120.0), Gate(2.75, 0.6, 10.0), Gate(4.0, 0.15, 3.0),
        Gate(10.0, 0.02, 0.3),
    )),
    Speed(_SLOW, 20.0, (
        Gate(1.5, _HOUR / 2, math.inf), Gate(2.1, 0.0, 120.0), Gate(2.75, 0.6, 10.0), Gate(4.0, 0.15, 3.0),
        Gate(10.0, 0.02, 0.3),
    )),
)  # fmt: skip


def rating_up(amps: float) -> float | None:
    """Return the smallest rating that carries the current for ever; None beyond the largest."""
    return next((r for r in RATINGS_A if r >= amps * (1 - 1e-9)), None)


def opens_within_s(rating_a: float, current_a: float, speed: str = _FAST) -> float:
    """Return the longest time the fuse may take; infinite where its standard promises no opening."""
    return min(
        (g.not_after_s for g in gates_of(rating_a, speed) if current_a >= g.multiple * rating_a),
        default=math.inf,
    )


def holds_for_s(rating_a: float, current_a: float, speed: str = _FAST) -> float:
    """Return the time the fuse is sure to carry the current; nothing where its standard promises nothing."""
    return max(
        (g.not_before_s for g in gates_of(rating_a, speed) if current_a <= g.multiple * rating_a), default=0.0
    )


def gates_of(rating_a: float, speed: str) -> tuple[Gate, ...]:
    """Return the gates of a rating, beyond the largest those of that; KeyError for an unknown speed."""
    rows = [row for row in SPEEDS if row.name == speed]
    if not rows:
        raise KeyError(speed)
    return next((row.gates for row in rows if rating_a <= row.to_a * (1 + 1e-9)), rows[-1].gates)
