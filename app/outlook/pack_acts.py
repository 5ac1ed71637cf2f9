"""What is done from the list of other packs: put one into the plan, or note what it costs."""

from datetime import date
from typing import TYPE_CHECKING

from app.inspector.committing import committed
from app.inspector.plain_number import plain_number
from app.session import Session
from wiring.edits.edit import Edit
from wiring.edits.set_plan import set_plan
from wiring.edits.swap_pack import swap_for_mains, swap_pack

if TYPE_CHECKING:
    from wiring.plan.plan import Plan
    from wiring.studies.compare_packs import Candidate


def put_in(session: Session, battery: str, one: "Candidate", today: date) -> bool:
    """Let the plan have that pack in the battery's place, fitted today, as one step that can be undone.

    Batteries that work together get the same cells together.
    """
    if one.outlook is None:
        return session.do(swap_for_mains(battery, one.nominal_v, kinds=session.kinds))
    first = (battery, one.in_series, one.in_parallel)
    steps = [
        swap_pack(part, one.cell, series, parallel, fitted=today, kinds=session.kinds)
        for part, series, parallel in (first, *((mate, count, 1) for mate, count in one.mates))
    ]

    def apply(plan: "Plan") -> "Plan":
        for step in steps:
            plan = step.apply(plan)
        return plan

    return session.do(steps[0] if len(steps) == 1 else Edit("Swap batteries", apply))


def priced(session: Session, key: str, typed: str) -> str:
    """Keep a price as typed, or forget it when nothing was; return "" or why it cannot be."""
    prices = dict(session.plan.prices)
    prices.pop(key, None)
    if typed:
        try:
            prices[key] = plain_number(typed)
        except ValueError:
            return f"“{typed[:40]}” is no price; type a number such as 0.80, without a currency."
    return committed(session, set_plan(prices=prices))
