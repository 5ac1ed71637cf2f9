"""Discharges kept while nothing they follow from is another: a title is no reason to work one out."""

from collections import deque
from collections.abc import Callable, Hashable
from datetime import date
from typing import Any, NamedTuple

from wiring.circuit.load_line import LoadLine
from wiring.studies.anchor import Anchor
from wiring.studies.battery_part import BatteryPart
from wiring.studies.cells.discharge import Run
from wiring.studies.uses import Use

KEPT = 8


class Band(NamedTuple):
    """The discharge of a poor, an ordinary and a very good battery of the type."""

    low: Run[Any]
    typical: Run[Any]
    high: Run[Any]


class Follows(NamedTuple):
    """All that a discharge follows from."""

    battery: BatteryPart
    uses: tuple[Use, ...]
    anchor: Anchor
    start: date
    limits: Hashable  # at which it is over, and where the table of the load begins and ends


_bands: deque[tuple[LoadLine, Follows, Band]] = deque(maxlen=KEPT)


def kept_band(line: LoadLine, follows: Follows, work_out: Callable[[], Band]) -> Band:
    """Return a band, worked out unless it is known; the same line means that the plan draws the same."""
    for known, asked, band in tuple(_bands):
        if known is line and asked == follows:
            return band
    band = work_out()
    _bands.append((line, follows, band))
    return band
