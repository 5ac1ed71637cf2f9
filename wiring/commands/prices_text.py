"""Prices as they are typed on the command line: ``alkaline AA=0.9,mains kWh=0.3``."""

from collections.abc import Mapping

from wiring.commands.refusal import Refused
from wiring.plan.battery_log_faults import price_faults
from wiring.standards.cells import CELLS

MAINS = "mains kWh"


def read_prices(typed: str) -> Mapping[str, float]:
    """Return the prices by battery type; Refused, in one sentence, when they are not understood."""
    prices: dict[str, float] = {}
    for piece in filter(None, (p.strip() for p in typed.split(","))):
        name, equals, amount = (t.strip() for t in piece.partition("="))
        if not equals:
            raise Refused(f"“{piece[:60]}” sets no price; write it as alkaline AA=0.9.")
        if name not in CELLS and name != MAINS:
            raise Refused(
                f"There is no battery type “{name[:40]}” to price; write one such as alkaline AA, or "
                f"{MAINS} for a kilowatt-hour."
            )
        try:
            prices[name] = float(amount)
        except ValueError:
            raise Refused(f"“{amount[:60]}” is no price for {name}; write a number such as 0.9.") from None
    for fault in price_faults(prices):
        raise Refused(fault)
    return prices
