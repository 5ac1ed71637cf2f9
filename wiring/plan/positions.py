"""The position each switch, contact and motor of a plan stands in."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId
from wiring.plan.plan import Plan

Positions = Mapping[PartId, str]


def in_use(plan: Plan, kinds: Mapping[str, Kind]) -> dict[PartId, str]:
    """Return the positions while a session runs: the part's own, else what its kind has as usual."""
    found: dict[PartId, str] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None and kind.positions:
            found[part.id] = part.position or kind.in_use or kind.positions[0].name
    return found
