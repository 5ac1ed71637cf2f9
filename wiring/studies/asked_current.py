"""What a supply would have to give if nothing in it held back."""

import math
from collections.abc import Mapping
from types import MappingProxyType

import msgspec

from wiring.catalogue.kind import Kind
from wiring.circuit.solve import solve
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.settings import number

FAR_OFF = 1e3  # times the limit: beyond what its load may ask for
TOO_MUCH = 20.0  # times the limit: no load but a fault, which no larger supply would mend


def asked_a(plan: Plan, kinds: Mapping[str, Kind], positions: Positions, supply: PartId) -> float | None:
    """Return the amperes its load asks of a limited supply; None for a fault, or without limit."""
    part = plan.parts[supply]
    given_a = number(part, kinds[part.kind], "limit_a")
    if given_a <= 0:
        return None
    strong = msgspec.structs.replace(part, settings={**part.settings, "limit_a": FAR_OFF * given_a})
    parts = MappingProxyType({**plan.parts, supply: strong})
    figure = solve(msgspec.structs.replace(plan, parts=parts), kinds, positions).supplies.get(supply)
    if figure is None or figure.limited or not math.isfinite(figure.current_a):
        return None
    return figure.current_a if given_a < figure.current_a < TOO_MUCH * given_a else None
