"""The forecast for one battery under its use pattern."""

from datetime import date
from typing import NamedTuple

from wiring.plan.names import PartId


class Span(NamedTuple):
    """Low, typical and high value of one quantity: cells, grades and temperatures differ."""

    low: float
    typical: float
    high: float


class Curve(NamedTuple):
    """The typical course of a discharge, one row a sample."""

    hours: tuple[float, ...]  # hours lit so far
    days: tuple[
        float, ...
    ]  # days since the battery was fitted, or since the reading the forecast starts from
    volts: tuple[float, ...]  # at the battery's terminals under load
    lightness: tuple[
        float, ...
    ]  # CIE 1976, of 100 when fresh, of the faintest lamp; empty when nothing shines
    sessions: tuple[tuple[float, float], ...] = ()  # first and last day of each; tiny ones run together


class Outlook(NamedTuple):
    """How long a battery lasts, and why it ends."""

    battery: PartId
    hours: Span
    sessions: Span
    days: Span
    swap_on: date | None  # from the fitting date, typical; None when no fitting date is known
    first_load_a: float  # current it gives when fresh
    end_reason: str  # one plain sentence
    words: str  # "about 40 sessions; swap around August"
    curve: Curve
    end_v: float = 0.0  # at its terminals, where it is over
    spare_v: float = 0.0  # volts under load when fresh, above that end
    counted_from: date | None = None  # the day hours, sessions, days and the curve are counted from
    measured: bool = False  # whether a reading of the log, not a fresh battery, is what it starts from
    notes: tuple[str, ...] = ()  # more plain sentences: charging, scenes of their own hours, weak cells
    swap_between: tuple[date, date] | None = None  # earliest and latest, by the band
    dim_lightness: float = 0.0  # of 100 when fresh: below it the plan calls light too dim
    always_on: bool = False  # nothing of it is ever switched off, so sessions mean nothing
