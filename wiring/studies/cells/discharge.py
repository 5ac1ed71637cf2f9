"""A battery run down slice by slice of time, with rest and shelf loss between sessions."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Generic, NamedTuple

from wiring.studies.cells.load import Load, meeting_v
from wiring.studies.cells.store import S, Store
from wiring.studies.cells.timeline import MOMENT_H, Pattern, slices

STEP = 0.02  # of the available well: error of the life below 0.01 % against a step of 0.0005
FINEST_STEP = STEP / 20  # the last step, in which the end is interpolated, is no longer than this
# A fuller string lifts a weak one over its end again and again, each time in steps of the finest. After so
# many closer looks (ordinary runs take up to 20) the end is where a whole step meets it, or strings of unlike
# cells, one of them nearly dead, would take ten seconds.
MOST_LOOKS = 100
# Sessions that together draw less than this many steps are run as one, or years of them take long: error of
# the life below 0.2 %.
TOGETHER = 1.0
LEAST_SESSIONS = 40  # within the horizon, however little is drawn
LONGEST_PERIOD_H = 14 * 24.0  # of sessions run together where months off matter


class Demand(NamedTuple):
    """What hangs on the battery in a slice of time, and the volts below which that is over."""

    load: Load
    end_v: float


class Sample(NamedTuple):
    """One point of a discharge, under load."""

    lit_h: float
    elapsed_h: float
    volts_v: float
    current_a: float
    on: int = 1  # a bit for each pattern that is on


class Run(NamedTuple, Generic[S]):
    """A whole discharge; `reached_end` is False where the horizon came first."""

    lit_h: float
    elapsed_h: float
    sessions: float
    reached_end: bool
    delivered_ah: float
    wells: S
    samples: tuple[Sample, ...]
    ended_on: int = 0  # the patterns that were on at the end


class _Step(NamedTuple, Generic[S]):
    hours: float
    current_a: float
    state: S
    volts_v: float
    over: bool
    looks: int = 0  # how often the step was made finer


def working_v(store: Store[S], load: Load, state: S) -> float | None:
    """Return the voltage under load; None when the battery cannot carry it."""
    return meeting_v(load, *store.thevenin(state))


def run_patterns(
    store: Store[S],
    demands: Mapping[int, Demand],
    patterns: Sequence[Pattern],
    horizon_h: float,
    *,
    start: date | None = None,
    state: S | None = None,
    step: float = STEP,
) -> Run[S]:
    """Return the discharge of a battery by several patterns laid over each other.

    `demands` has what draws for each set of patterns that are on at once, as bits; where it has none nothing
    draws. Sessions are those of the first pattern. Hours are lit while one that is not always on is on.
    """
    charge = store.level(1.0) if state is None else state
    lamps = sum(1 << i for i, p in enumerate(patterns) if not p.always) or 1
    pace = _together(store, demands, charge, patterns, horizon_h, step)
    lit_h = elapsed_h = delivered_ah = led_h = 0.0
    samples: list[Sample] = []
    over, on, looks = False, 0, 0
    fresh = store
    for piece in slices(pace, horizon_h, start):
        store = fresh.aged(elapsed_h)
        on, demand, left_h = piece.on, demands.get(piece.on), piece.hours
        if demand is None:
            charge = store.rested(charge, left_h)
            elapsed_h += left_h
            continue
        volts = working_v(store, demand.load, charge)
        over = volts is None or volts <= demand.end_v or store.spent(charge)  # rest did not bring it back
        while not over and volts is not None and left_h > MOMENT_H:
            samples.append(Sample(lit_h, elapsed_h, volts, demand.load.current_a(volts), on))
            finest = FINEST_STEP if looks < MOST_LOOKS else step
            taken = _step(store, demand, charge, volts, left_h, step, finest)
            looks += taken.looks
            lit_h += taken.hours if on & lamps else 0.0
            led_h += taken.hours if on & 1 else 0.0
            elapsed_h += taken.hours
            left_h -= taken.hours
            delivered_ah += taken.current_a * taken.hours
            charge, volts, over = taken.state, taken.volts_v, taken.over
        if volts is not None and elapsed_h > 0:
            samples.append(Sample(lit_h, elapsed_h, volts, demand.load.current_a(volts), on))
        if over:
            break
    sessions = led_h / patterns[0].session_h if patterns and patterns[0].session_h > 0 else 0.0
    return Run(lit_h, elapsed_h, sessions, over, delivered_ah, charge, tuple(samples), on if over else 0)


def _together(
    store: Store[S],
    demands: Mapping[int, Demand],
    state: S,
    patterns: Sequence[Pattern],
    horizon_h: float,
    step: float,
) -> list[Pattern]:
    """Return the patterns with as many sessions run as one as draw next to nothing together.

    The most frequent pattern sets the pace; rarer ones keep step with it, so that what coincides still does.
    """
    if not patterns:
        return []
    shortest_h = min(p.period_h for p in patterns)
    most = max(int(horizon_h / shortest_h / LEAST_SESSIONS), 1)
    if any(p.months_off for p in patterns):
        most = min(most, max(int(LONGEST_PERIOD_H / shortest_h), 1))
    amps = 0.0
    demands.get((1 << len(patterns)) - 1)  # demands may be worked out when first asked for
    for demand in demands.values():
        volts = working_v(store, demand.load, state)
        amps = max(amps, demand.load.current_a(volts) if volts is not None else 0.0)
    drawn_ah = amps * sum(min(p.session_h / p.period_h, 1.0) for p in patterns) * shortest_h
    if drawn_ah > 0:
        most = min(max(int(TOGETHER * store.step_ah(store.level(0.5), step) / drawn_ah), 1), most)
    return [p.times(max(int(most * shortest_h / p.period_h + MOMENT_H), 1)) for p in patterns]


def _step(
    store: Store[S], demand: Demand, state: S, volts_v: float, left_h: float, step: float, finest: float
) -> _Step[S]:
    """Take one step at the current of its middle; one that crosses the end is made finer and stops there."""
    load, end_v = demand
    first_a = load.current_a(volts_v)
    hours = min(left_h, store.step_ah(state, step) / first_a) if first_a > 0 else left_h
    middle_v = working_v(store, load, store.after(state, first_a, hours / 2))
    current = load.current_a(volts_v if middle_v is None else middle_v)
    after = store.after(state, current, hours)
    after_v = working_v(store, load, after)
    if after_v is not None and after_v > end_v and not store.spent(after):
        return _Step(hours, current, store.leaked(after, hours), after_v, over=False)
    if step > finest:  # the voltage may fall steeply here: look closer before cutting the step short
        closer = _step(store, demand, state, volts_v, left_h, step / 4, finest)
        return closer._replace(looks=closer.looks + 1)
    if after_v is not None and after_v > end_v:
        return _Step(hours, current, after, after_v, over=True)
    # A load that falls off altogether leaves no voltage to interpolate with.
    share = 0.5 if after_v is None else min(max((volts_v - end_v) / (volts_v - after_v), 0.0), 1.0)
    return _Step(hours * share, current, store.after(state, current, hours * share), end_v, over=True)
