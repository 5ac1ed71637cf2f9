"""What is wrong with the battery log and the prices of a plan, in plain sentences."""

import math
from collections.abc import Iterator, Mapping
from datetime import date

from wiring.plan.battery_log import EVENTS, MEASURED, BatteryReading
from wiring.plan.limits import LONGEST_NAME, id_is_fair, text_is_fair

HIGHEST_V = 100.0
MOST_PRICES = 1000
HIGHEST_PRICE = 1_000_000


def log_faults(entry: BatteryReading) -> Iterator[str]:
    """Say what is wrong with one entry."""
    if not id_is_fair(entry.battery):
        yield f"An entry of the battery log names the part “{entry.battery[:40]}”, which is no id."
    if not _is_day(entry.day):
        yield f"“{entry.day[:40]}” in the battery log is no date; write it as 2026-03-01."
    if entry.event not in EVENTS:
        yield f"“{entry.event[:40]}” in the battery log must be one of {', '.join(EVENTS)}."
    if not (math.isfinite(entry.volts_v) and 0 <= entry.volts_v <= HIGHEST_V):
        yield f"Volts in the battery log must lie between 0 and {HIGHEST_V:g}."
    elif entry.event == MEASURED and entry.volts_v == 0:
        yield "A measured entry of the battery log needs volts of more than nothing."
    if not text_is_fair(entry.note):
        yield "A note in the battery log must be at most 2000 readable characters."


def price_faults(prices: Mapping[str, float]) -> Iterator[str]:
    """Say what is wrong with the prices."""
    if len(prices) > MOST_PRICES:
        yield f"A plan keeps at most {MOST_PRICES} prices."
    for name, price in prices.items():
        if not (name and text_is_fair(name, LONGEST_NAME)):
            yield "A price needs the name of what it is for."
        elif not (math.isfinite(price) and 0 <= price <= HIGHEST_PRICE):
            yield f"The price of {name} must lie between 0 and {HIGHEST_PRICE}."


def _is_day(text: str) -> bool:
    try:
        return len(text) == 10 and bool(date.fromisoformat(text))
    except ValueError:
        return False
