"""When what is on: sessions of several patterns laid over each other, with months off, as slices of time.

The rule where several scenes hang on one battery: all patterns begin together on the first day, each comes
round after its own period, and two that are on at the same time draw at the same time. A session that would
begin in a month off does not take place; one that has begun is finished.
"""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from typing import NamedTuple

MOMENT_H = 1e-9  # what is left of a session below this is rounding


class Pattern(NamedTuple):
    """Hours on per session, hours from one start to the next, and months (1 to 12) without any."""

    session_h: float
    period_h: float
    months_off: frozenset[int] = frozenset()

    @property
    def always(self) -> bool:
        """Whether it is never off."""
        return self.session_h >= self.period_h and not self.months_off

    def times(self, count: int) -> "Pattern":
        """Return the pattern with that many sessions run as one."""
        return self._replace(session_h=self.session_h * count, period_h=self.period_h * count)


class Slice(NamedTuple):
    """A stretch of time in which nothing is switched; `on` has a bit for each pattern that is on."""

    hours: float
    on: int


def slices(patterns: Sequence[Pattern], horizon_h: float, start: date | None = None) -> Iterator[Slice]:
    """Walk the time up to the horizon (hours); without a start date there are no months off."""
    now_h = 0.0
    starts = [0.0 for _ in patterns]
    ends = [0.0 for _ in patterns]
    while now_h < horizon_h - MOMENT_H:
        on = 0
        for i, pattern in enumerate(patterns):
            if starts[i] <= now_h + MOMENT_H:
                if not _off(pattern, start, now_h):
                    ends[i] = starts[i] + min(pattern.session_h, pattern.period_h)
                starts[i] += pattern.period_h
            if ends[i] > now_h + MOMENT_H:
                on |= 1 << i
        following = [ends[i] for i in range(len(patterns)) if on >> i & 1]
        until_h = min((*following, *starts, horizon_h))
        yield Slice(until_h - now_h, on)
        now_h = until_h


def _off(pattern: Pattern, start: date | None, now_h: float) -> bool:
    if start is None or not pattern.months_off:
        return False
    return day_of(start, now_h).month in pattern.months_off


def day_of(start: date, hours: float) -> date:
    """Return the day some hours after the start of a day; the last day there is when it lies beyond."""
    try:
        return start + timedelta(hours=hours)
    except OverflowError:
        return date.max
