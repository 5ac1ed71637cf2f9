"""The position each switch, contact and motor of a plan stands in."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId
from wiring.plan.plan import Plan

Positions = Mapping[PartId, str]


_last: tuple[object, object, Positions] | None = None  # of the parts asked about last; replaced whole


def in_use(plan: Plan, kinds: Mapping[str, Kind]) -> dict[PartId, str]:
    """Return the positions while a session runs: the part's own, else what its kind has as usual.

    A throw of a switch asks many times: the answer for the last parts is kept, and given out in copies.
    """
    global _last
    last = _last
    if last is None or last[0] is not plan.parts or last[1] is not kinds:
        last = _last = plan.parts, kinds, _in_use(plan, kinds)
    return dict(last[2])


def _in_use(plan: Plan, kinds: Mapping[str, Kind]) -> Positions:
    found: dict[PartId, str] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None and kind.positions:
            found[part.id] = part.position or kind.in_use or kind.positions[0].name
    return found


def lasting(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> dict[PartId, str]:
    """Return the positions with everything that springs back as it stands in a session."""
    usual = in_use(plan, kinds)
    return {
        part: usual[part]
        if part in usual and _springs_back(kinds[plan.parts[part].kind], position)
        else position
        for part, position in positions.items()
    }


def _springs_back(kind: Kind, position: str) -> bool:
    return any(p.momentary for p in kind.positions if p.name == position)
