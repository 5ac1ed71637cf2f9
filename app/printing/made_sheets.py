"""Makes the sheets of a plan as a person wants them."""

from typing import TYPE_CHECKING

from app.printing.wish import Wish
from wiring.plan.positions import in_use

if TYPE_CHECKING:
    from wiring.findings.situation import Situation
    from wiring.sheets.printed_set import PrintedSet
    from wiring.sheets.sheet_set import MadeSet


def made_of(
    situation: "Situation", wish: Wish | None = None, since: "PrintedSet | None" = None
) -> "MadeSet | str | None":
    """Return the sheets, with every switch as it stands in use whatever has been thrown on the screen.

    None for an empty plan; one plain sentence when they cannot be made as wanted.
    """
    from wiring.findings.situation import examine
    from wiring.sheets.sheet_set import made_set

    wish = wish or Wish()
    plan, kinds = situation.plan, situation.kinds
    if not plan.parts:
        return None
    if dict(situation.positions) != in_use(plan, kinds):
        situation = examine(plan, kinds)
    try:
        return made_set(
            situation,
            plan.habits.paper,
            only=wish.only,
            scene=wish.scene or None,
            tiling=wish.tiling,
            since=since,
            changed_only=wish.changed_only,
        )
    except ValueError as fault:
        return str(fault)
