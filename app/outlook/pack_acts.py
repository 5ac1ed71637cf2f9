"""What is done from the list of other packs: put one into the plan, or note what it costs."""

from typing import TYPE_CHECKING

from app.inspector.committing import committed
from app.inspector.plain_number import plain_number
from app.session import Session
from wiring.edits.set_plan import set_plan
from wiring.edits.swap_pack import swap_for_mains, swap_pack

if TYPE_CHECKING:
    from wiring.studies.compare_packs import Candidate


def put_in(session: Session, battery: str, one: "Candidate") -> bool:
    """Let the plan have that pack in the battery's place, as one step that can be undone."""
    if one.outlook is None:
        return session.do(swap_for_mains(battery, one.nominal_v, kinds=session.kinds))
    return session.do(swap_pack(battery, one.cell, one.in_series, one.in_parallel, kinds=session.kinds))


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
