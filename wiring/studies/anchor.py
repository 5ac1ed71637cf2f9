"""Where a forecast starts: a fresh battery on the day it was fitted, or the state a reading shows."""

from datetime import date
from typing import Any, NamedTuple

from wiring.plan.battery_log import FRESH, MEASURED, BatteryReading
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.studies.battery_part import day
from wiring.studies.cells.discharge import working_v
from wiring.studies.cells.load import Load
from wiring.studies.cells.store import Store

LEAST_LEFT = 0.002  # of the charge; a battery that reads lower is empty
HALVINGS = 40


class Anchor(NamedTuple):
    """The day a forecast is counted from, and the reading taken on it, if there is one."""

    start: date | None
    reading: BatteryReading | None = None


def anchor_of(plan: Plan, battery: PartId, fitted: date | None) -> Anchor:
    """Return the last reading since the battery was last fitted, swapped or charged, else that day."""
    entries = [(d, e) for e in plan.battery_log if e.battery == battery and (d := day(e.day)) is not None]
    fresh = [d for d, e in entries if e.event in FRESH]
    since = max([*fresh, *([fitted] if fitted is not None else [])], default=None)
    readings = [(d, e) for d, e in entries if e.event == MEASURED and (since is None or d >= since)]
    if not readings:
        return Anchor(since)
    last, entry = max(readings, key=lambda pair: pair[0])
    return Anchor(last, entry)


def share_at(store: Store[Any], load: Load | None, volts_v: float) -> float:
    """Return the share of its charge with which a rested battery reads that voltage under a load, or none.

    1 where it reads more than a fresh one, next to none where it reads less than an empty one.
    """

    def reads(share: float) -> float:
        state = store.level(share)
        if load is None:
            return store.thevenin(state)[0]
        return working_v(store, load, state) or 0.0

    if volts_v >= reads(1.0):
        return 1.0
    low, high = LEAST_LEFT, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if reads(middle) >= volts_v else (middle, high)
    return high
