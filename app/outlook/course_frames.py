"""Where a battery's course lies in a room: two plots, what their axes mean, and what is read at a place."""

from bisect import bisect_left
from datetime import date, timedelta
from typing import NamedTuple

from PySide6.QtCore import QRectF

from app.outlook.axis import Axis
from app.theme.words import lined, scaled
from wiring.studies.outlook import Curve, Outlook, Span

LEFT, RIGHT, TOP, BOTTOM, BETWEEN = 58.0, 26.0, 48.0, 46.0, 32.0
VOLTS_SHARE = 0.6  # of the height, when there is light to show below
AIR = 1.04  # of what lasts longest, to the right of it
HOURS, DAYS = "hours", "days"  # what lies along the foot
_DAYS_A_MONTH = 30.44


class Frames(NamedTuple):
    """Where the two plots lie and what their axes mean."""

    volts_box: QRectF
    light_box: QRectF | None
    across: Axis
    volts: Axis
    light: Axis | None
    along: str

    @property
    def foot_px(self) -> float:
        """Return how low the lower plot reaches."""
        return (self.light_box or self.volts_box).bottom()


class Reading(NamedTuple):
    """What the curve says at one moment."""

    hours: float
    days: float
    volts: float
    lightness: float | None


def along(curve: Curve, what: str) -> tuple[float, ...]:
    """Return the samples' places along the foot."""
    return curve.days if what == DAYS else curve.hours


def lasts(outlook: Outlook, what: str) -> Span:
    """Return how long it lasts, in what lies along the foot."""
    return outlook.days if what == DAYS else outlook.hours


def frames(outlook: Outlook, room: QRectF, what: str = HOURS) -> Frames:
    """Return where everything goes in a room of that size."""
    curve = outlook.curve
    left, right = room.left() + scaled(LEFT), room.right() - scaled(RIGHT)
    top, bottom = room.top() + lined(TOP, 2), room.bottom() - lined(BOTTOM, 2)
    longest = max([lasts(outlook, what).high, *along(curve, what)[-1:]]) or 1.0
    across = Axis(0.0, longest * AIR, left, right)
    split = top + (bottom - top) * VOLTS_SHARE if curve.lightness else bottom
    volts_box = QRectF(left, top, right - left, split - top)
    low, high = min(curve.volts, default=0.0), max(curve.volts, default=1.0)
    air = max((high - low) * 0.12, 0.05)
    volts = Axis(max(0.0, low - air), high + air, volts_box.bottom(), volts_box.top())
    if not curve.lightness:
        return Frames(volts_box, None, across, volts, None, what)
    light_box = QRectF(left, split + lined(BETWEEN), right - left, bottom - split - lined(BETWEEN))
    light = Axis(0.0, max(105.0, max(curve.lightness) * 1.05), light_box.bottom(), light_box.top())
    return Frames(volts_box, light_box, across, volts, light, what)


def reading_at(curve: Curve, place: float, what: str = HOURS) -> Reading | None:
    """Return the curve's sample nearest to a place along the foot."""
    places = along(curve, what)
    if not places:
        return None
    after = min(bisect_left(places, place), len(places) - 1)
    before = max(after - 1, 0)
    nearest = before if place - places[before] < places[after] - place else after
    light = curve.lightness[nearest] if curve.lightness else None
    return Reading(curve.hours[nearest], curve.days[nearest], curve.volts[nearest], light)


def sessions_along(curve: Curve, what: str) -> tuple[tuple[float, float], ...]:
    """Return where each session begins and ends along the foot."""
    if what == DAYS:
        return curve.sessions
    return tuple((_hours_at(curve, first), _hours_at(curve, last)) for first, last in curve.sessions)


def _hours_at(curve: Curve, days: float) -> float:
    """Return the hours lit by a day; they stand still while it rests, so any of a rest will do."""
    after = bisect_left(curve.days, days)
    if after <= 0:
        return curve.hours[0]
    if after >= len(curve.days):
        return curve.hours[-1]
    span = curve.days[after] - curve.days[after - 1]
    part = (days - curve.days[after - 1]) / span if span > 0 else 1.0
    return curve.hours[after - 1] + part * (curve.hours[after] - curve.hours[after - 1])


def when_words(days: float, fitted: date | None) -> str:
    """Return a date, or how long after fitting when no date is known."""
    if fitted is not None:
        return (fitted + timedelta(days=int(days))).strftime("%d %b %Y").lstrip("0")
    if days < 2 * _DAYS_A_MONTH:
        return f"{days:.0f} days after fitting"
    return f"{days / _DAYS_A_MONTH:.1f} months after fitting"
