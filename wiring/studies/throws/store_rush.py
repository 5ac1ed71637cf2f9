"""What empty smoothing capacitors draw at the moment of switching on; whether supplies and fuses stand it.

A fuse must carry certain multiples of its rating for certain times. In times so short no heat leaves its
wire, so what melts it is current squared times time: it stands at least what its shortest promise comes to,
and has melted at what its shortest limit comes to.
"""

import math
from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.smoothing_rush import Rush, rush_of_stores
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.standards.fuses import gates_of
from wiring.studies.roles import SOURCES
from wiring.studies.settings import number, text
from wiring.studies.throws.inrush import BLOWS, HOLDS, MAY_BLOW

MATTERS_A = 1e-3


class FuseFill(NamedTuple):
    """A fuse through which capacitors fill."""

    fuse: PartId
    peak_a: float
    heat_a2s: float  # current squared times time until they are full
    verdict: str  # "holds", "may blow" or "blows"


class SupplyFill(NamedTuple):
    """A supply that fills capacitors: its first moment, amperes."""

    supply: PartId
    peak_a: float
    limit_a: float  # infinite where the supply has none
    lasts_s: float  # the time in which two thirds are in

    @property
    def limited(self) -> bool:
        """Whether the rush runs into the supply's limit."""
        return self.peak_a > self.limit_a


class Fills(NamedTuple):
    """All that capacitors fill through."""

    stores: tuple[PartId, ...]
    supplies: tuple[SupplyFill, ...]
    fuses: tuple[FuseFill, ...]


NOTHING = Fills((), (), ())


def fills_of(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Fills:
    """Return the rush into all smoothing capacitors of a plan, switched on together at the mains' peak."""
    rush = rush_of_stores(plan, kinds, positions)
    if rush is None:
        return NOTHING
    supplies, fuses = [], []
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None or rush.peak_a(part.id) < MATTERS_A or rush.charge_as(part.id) <= 0.0:
            continue
        if kind.behaviour in SOURCES:
            supplies.append(_supply(rush, part, kind))
        elif kind.behaviour == "fuse":
            heat = rush.heat_a2s(part.id)
            stands = short_verdict(number(part, kind, "rating_a"), text(part, kind, "speed"), heat)
            fuses.append(FuseFill(part.id, rush.peak_a(part.id), heat, stands))
    return Fills(tuple(store.part for store in rush.stores), tuple(supplies), tuple(fuses))


def short_verdict(rating_a: float, speed: str, heat_a2s: float) -> str:
    """Return whether a fuse stands a rush of so much current squared times time, by its standard's gates."""
    gates = gates_of(rating_a, "slow" if speed == "slow" else "fast")
    promised = [(g.not_before_s, g.multiple) for g in gates if g.not_before_s > 0.0]
    limited = [(g.not_after_s, g.multiple) for g in gates if math.isfinite(g.not_after_s)]
    (holds_s, holds_at), (opens_s, opens_at) = min(promised), min(limited)
    if heat_a2s <= (holds_at * rating_a) ** 2 * holds_s:
        return HOLDS
    return BLOWS if heat_a2s >= (opens_at * rating_a) ** 2 * opens_s else MAY_BLOW


def _supply(rush: Rush, part: Part, kind: Kind) -> SupplyFill:
    peak_a = rush.peak_a(part.id)
    limit_a = number(part, kind, "limit_a") or math.inf
    return SupplyFill(part.id, peak_a, limit_a, rush.charge_as(part.id) / peak_a)
