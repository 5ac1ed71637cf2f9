"""Lengths of time as people say them."""

_UNITS = (("year", 365.25, 730.0), ("month", 365.25 / 12, 60.0), ("week", 7.0, 21.0))


def time_words(days: float) -> str:
    """Return a time in the unit a person would use: ``3 days``, ``5 weeks``, ``9 months``, ``2 years``."""
    for name, length, from_days in _UNITS:
        if days >= from_days:
            return f"{round(days / length)} {name}s"
    count = max(round(days), 1)
    return "1 day" if count == 1 else f"{count} days"
