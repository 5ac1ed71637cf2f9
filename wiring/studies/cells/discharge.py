"""A battery run down session by session, with rest and shelf loss between them."""

import math
from typing import NamedTuple

from wiring.standards.two_wells import Wells, drawn, full, leaked
from wiring.studies.cells.load import Load, meeting_v
from wiring.studies.cells.pack import Pack

STEP = 0.02  # of the available well: error of the life below 0.01 % against a step of 0.0005
FIRST_STEP = 0.25  # the voltage falls fastest at the start, so steps are this much shorter there
FINEST_STEP = STEP / 20  # the last step, in which the end is interpolated, is no longer than this
STEEP_UNTIL = 0.06  # of the available well
TOGETHER = (
    0.25  # of a step: sessions that draw less than this are run together as one, or years of them take long
)
LEAST_SESSIONS = 40  # within the horizon, however little is drawn
MOMENT_H = 1e-9  # what is left of a session below this is rounding


class Schedule(NamedTuple):
    """How a battery is used: hours lit per session, and hours from one session's start to the next one's."""

    session_h: float
    period_h: float


class Sample(NamedTuple):
    """One point of a discharge, under load."""

    lit_h: float
    elapsed_h: float
    volts_v: float
    current_a: float


class Run(NamedTuple):
    """A whole discharge; `reached_end` is False where the horizon came first."""

    lit_h: float
    elapsed_h: float
    sessions: float
    reached_end: bool
    delivered_ah: float
    wells: Wells
    samples: tuple[Sample, ...]


class _Step(NamedTuple):
    hours: float
    current_a: float
    wells: Wells
    volts_v: float
    over: bool


def working_v(pack: Pack, load: Load, wells: Wells) -> float | None:
    """Return the voltage under load; None when the battery cannot carry it."""
    depth = pack.depth(wells)
    return meeting_v(load, pack.emf_v(depth), pack.ohms(depth))


def run_down(
    pack: Pack, load: Load, end_v: float, schedule: Schedule, horizon_h: float, step: float = STEP
) -> Run:
    """Return the discharge of a fresh pack until its volts fall to `end_v` or the horizon (hours) passes."""
    wells = full(pack.capacity_ah, pack.share)
    together = _together(pack, load, wells, schedule, horizon_h, step)
    schedule = Schedule(schedule.session_h * together, schedule.period_h * together)
    rest_h = max(schedule.period_h - schedule.session_h, 0.0)
    lit_h = elapsed_h = delivered_ah = 0.0
    sessions = 0
    over = False
    samples: list[Sample] = []
    fresh = pack
    while not over and elapsed_h < horizon_h:
        pack = fresh.aged(elapsed_h)
        left_h = min(schedule.session_h, horizon_h - elapsed_h)
        volts = working_v(pack, load, wells)
        over = volts is None or volts <= end_v  # the rest did not bring it back
        while not over and volts is not None and left_h > MOMENT_H:
            samples.append(Sample(lit_h, elapsed_h, volts, load.current_a(volts)))
            taken = _step(pack, load, end_v, wells, volts, left_h, step)
            lit_h += taken.hours
            elapsed_h += taken.hours
            left_h -= taken.hours
            delivered_ah += taken.current_a * taken.hours
            wells, volts, over = taken.wells, taken.volts_v, taken.over
        if volts is not None and lit_h > 0:
            samples.append(Sample(lit_h, elapsed_h, volts, load.current_a(volts)))
        if over:
            count = together * (sessions + 1.0 - left_h / schedule.session_h)
            return Run(lit_h, elapsed_h, count, True, delivered_ah, wells, tuple(samples))
        sessions += 1
        wells = leaked(
            drawn(wells, 0.0, rest_h, pack.share, pack.rate_per_h), math.exp(-pack.shelf_per_h * rest_h)
        )
        elapsed_h += rest_h
    count = float(together * sessions)
    return Run(lit_h, elapsed_h, count, False, delivered_ah, wells, tuple(samples))


def _together(pack: Pack, load: Load, wells: Wells, schedule: Schedule, horizon_h: float, step: float) -> int:
    """Return how many sessions to run as one: many only where each draws next to nothing."""
    volts = working_v(pack, load, wells)
    drawn_ah = load.current_a(volts) * schedule.session_h if volts is not None else 0.0
    most = max(int(horizon_h / schedule.period_h / LEAST_SESSIONS), 1)
    if drawn_ah <= 0:
        return most
    return min(max(int(TOGETHER * step * pack.share * pack.capacity_ah / drawn_ah), 1), most)


def _step(
    pack: Pack, load: Load, end_v: float, wells: Wells, volts_v: float, left_h: float, step: float
) -> _Step:
    """Take one step at the current of its middle; one that crosses the end is made finer and stops there."""
    hours = _length_h(pack, wells, load.current_a(volts_v), left_h, step)
    middle_v = working_v(pack, load, drawn(wells, load.current_a(volts_v), hours / 2, *_law(pack)))
    current = load.current_a(volts_v if middle_v is None else middle_v)
    after = drawn(wells, current, hours, *_law(pack))
    after_v = working_v(pack, load, after)
    if after_v is not None and after_v > end_v:
        return _Step(hours, current, leaked(after, math.exp(-pack.shelf_per_h * hours)), after_v, over=False)
    if step > FINEST_STEP:  # the voltage may fall steeply here: look closer before cutting the step short
        return _step(pack, load, end_v, wells, volts_v, left_h, step / 4)
    # A load that falls off altogether leaves no voltage to interpolate with.
    share = 0.5 if after_v is None else min(max((volts_v - end_v) / (volts_v - after_v), 0.0), 1.0)
    after = drawn(wells, current, hours * share, *_law(pack))
    return _Step(hours * share, current, after, end_v, over=True)


def _law(pack: Pack) -> tuple[float, float]:
    return pack.share, pack.rate_per_h


def _length_h(pack: Pack, wells: Wells, current_a: float, left_h: float, step: float) -> float:
    if current_a <= 0:
        return left_h
    hours = step * pack.share * pack.capacity_ah / current_a
    if pack.depth(wells) < STEEP_UNTIL:
        hours *= FIRST_STEP
    return min(left_h, hours)
