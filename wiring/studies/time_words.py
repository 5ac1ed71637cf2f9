"""Lengths of time as people say them."""

DAYS_FROM = 2.5  # below it hours say more
_UNITS = (("year", 365.25, 730.0), ("month", 365.25 / 12, 60.0), ("week", 7.0, 21.0))


def time_words(days: float) -> str:
    """Return a time in the unit a person would use: ``36 hours``, ``5 weeks``, ``9 months``, ``2 years``."""
    for name, length, from_days in _UNITS:
        if days >= from_days:
            return f"{round(days / length)} {name}s"
    if days >= DAYS_FROM:
        return f"{round(days)} days"
    hours = max(round(days * 24), 1)
    return "1 hour" if hours == 1 else f"{hours} hours"
