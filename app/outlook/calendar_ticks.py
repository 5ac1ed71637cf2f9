"""Where the months and days of a calendar stand along an axis of days."""

from datetime import date, timedelta

from app.outlook.axis import tick_words, ticks

MONTH_STEPS = (1, 2, 3, 6, 12, 24, 60)
DAY_STEPS = (1, 2, 7, 14)
_DAYS_A_MONTH = 30.44


def calendar_ticks(start: date | None, days: float, at_most: int) -> tuple[tuple[float, str], ...]:
    """Return days from the start and their words: firsts of months, days of a short time, or numbers.

    Without a start date the days are counted.
    """
    if start is None or days <= 0:
        found = ticks(0.0, days, at_most)
        step = found[1] - found[0] if len(found) > 1 else 1.0
        return tuple((value, f"day {tick_words(value, step)}") for value in found)
    if days <= at_most * DAY_STEPS[-1] and days < 2 * _DAYS_A_MONTH:
        step_days = next((s for s in DAY_STEPS if days / s <= at_most), DAY_STEPS[-1])
        return tuple((float(n), _day(start + timedelta(days=n))) for n in range(0, int(days) + 1, step_days))
    months = next((m for m in MONTH_STEPS if days / (m * _DAYS_A_MONTH) <= at_most), MONTH_STEPS[-1])
    return tuple(_firsts(start, days, months))


def _firsts(start: date, days: float, months: int) -> list[tuple[float, str]]:
    found: list[tuple[float, str]] = []
    year, month = start.year, start.month
    while True:
        month += 1
        year, month = (year + 1, 1) if month > 12 else (year, month)
        if year > date.max.year:
            return found
        first = date(year, month, 1)
        away = (first - start).days
        if away > days:
            return found
        if (month - 1) % min(months, 12) == 0 and (months <= 12 or year % (months // 12) == 0):
            named = f"{first:%b %Y}" if month == 1 or not found else f"{first:%b}"
            found.append((float(away), f"{first:%Y}" if months >= 12 else named))


def _day(day: date) -> str:
    return f"{day.day} {day:%b}"
