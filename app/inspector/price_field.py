"""What one part of a sort costs, typed in the part's card; it counts for all parts that are bought alike."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QWidget

from app.inspector.committing import committed
from app.inspector.plain_number import plain_number
from app.inspector.typed_field import TypedField
from app.inspector.value_field import SEVERAL
from app.session import Session
from wiring.catalogue.kind import Kind
from wiring.edits.set_plan import set_plan
from wiring.plan.part import Part

Bought = tuple[Kind, Sequence[Part]]  # the parts on a card, all of one kind


class PriceField(TypedField):
    """The price each of the parts on a card."""

    def __init__(self, session: Session, bought: Callable[[], Bought], parent: QWidget) -> None:
        super().__init__("Price each", self._put, parent, hint="none")
        self._session = session
        self._bought = bought
        self.editor.setObjectName("part_price")
        self.setToolTip(
            "What one costs, for the parts list; it counts for every part of this kind with the same values."
        )

    def refresh(self) -> None:
        """Show the price as the plan has it, in the builder's own currency."""
        from wiring.sheets.part_prices import money, price_each, price_key

        plan = self._session.plan
        kind, parts = self._bought()
        own = {plan.prices.get(price_key(kind, part)) for part in parts} if plan.prices else {None}
        one = next(iter(own)) if len(own) == 1 else None
        found = price_each(plan, kind, parts[0]) if parts and plan.prices else None
        unset = f"in {plan.habits.currency}" if plan.habits.currency else "none"
        hint = SEVERAL if len(own) > 1 else f"{money(found)} for its cells" if found is not None else unset
        self.show_text("" if one is None else f"{one:g}", hint)

    def _put(self, typed: str) -> str:
        from wiring.sheets.part_prices import price_key

        prices = dict(self._session.plan.prices)
        try:
            amount = plain_number(typed) if typed.strip() else None
        except ValueError:
            return f"“{typed[:40]}” is no price; type a number such as 0.80, without a currency."
        kind, parts = self._bought()
        for part in parts:
            key = price_key(kind, part)
            if amount is None:
                prices.pop(key, None)
            else:
                prices[key] = amount
        return committed(self._session, set_plan(prices=prices))
