"""What the parts of a list cost, from the prices the builder gave; none is known otherwise."""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.limits import LONGEST_NAME
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.sheets.value_words import value_words


class Cost(NamedTuple):
    """What a list of parts costs in all, and how many of its rows have a price."""

    total: float
    priced: int
    without: int


def price_key(kind: Kind, part: Part) -> str:
    """Return the name the price of a part is kept under: its kind and the values that make its sort."""
    values = value_words(kind, part)
    return f"{kind.key}: {values}"[:LONGEST_NAME] if values else kind.key


def price_each(plan: Plan, kind: Kind | None, part: Part) -> float | None:
    """Return the price of one part; of a battery without one, that of its cells; None when not given."""
    if kind is None:
        return None
    own = plan.prices.get(price_key(kind, part))
    if own is not None or kind.behaviour != "battery":
        return own
    values = kind.values(part.settings)
    cell = plan.prices.get(str(values.get("cell", "")))
    if cell is None:
        return None
    return cell * float(values.get("in_series") or 1) * float(values.get("in_parallel") or 1)


def cost_of(rows: Sequence[tuple[int, float | None]]) -> Cost:
    """Return the total of rows of pieces to buy and the price of one."""
    priced = [pieces * each for pieces, each in rows if each is not None]
    return Cost(sum(priced), len(priced), len(rows) - len(priced))


def money(amount: float) -> str:
    """Return an amount as it is printed, without a currency."""
    return f"{amount:,.2f}".replace(",", "\u202f")


def cost_words(cost: Cost, currency: str) -> str:
    """Return what the rows cost in one sentence; "" when no price is given."""
    if not cost.priced:
        return ""
    unit = f" {currency}" if currency else ""
    rest = ""
    if cost.without:
        rest = f"; {cost.without} {'sort has' if cost.without == 1 else 'sorts have'} no price"
    return f"With spares they come to {money(cost.total)}{unit}{rest}."
