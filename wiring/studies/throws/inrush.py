"""What cold lamps draw at the moment of switching on, and whether supply and fuses stand it.

A cold filament has a tenth of its hot resistance, as the lamp law of the circuit model has it. Wires, fuses
and supplies keep their ohms. The rush is taken to fade as exp(-t / 30 ms): small lamps light up within about
0.1 s. Common practice, no source.
"""

import math
from collections.abc import Mapping, Sequence
from itertools import zip_longest
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.altered import Branches, with_cold_lamps
from wiring.circuit.figures import Figures
from wiring.circuit.many_readings import part_columns
from wiring.circuit.solve import solve
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.standards.fuses import gates_of, holds_for_s
from wiring.studies.alike import parts_but_for_place
from wiring.studies.keeping import kept
from wiring.studies.settings import number, text

FADES_S = 0.03
MATTERS = 1.05  # times the lasting current: less is no rush
SLOWEST_S = 60.0  # a gate that holds longer says nothing about a rush
SETTLED = 3.0  # of those times: a twentieth of the rush is left
HOLDS, MAY_BLOW, BLOWS = "holds", "may blow", "blows"


class FuseRush(NamedTuple):
    """A fuse in the way of a rush."""

    fuse: PartId
    cold_a: float
    hot_a: float
    verdict: str  # "holds", "may blow" or "blows"


class Inrush(NamedTuple):
    """A supply's first moment and its lasting current, amperes (RMS on AC)."""

    cold_a: float
    hot_a: float
    limit_a: float  # infinite where the supply has none
    settles_s: float | None  # None where there is no rush
    fuses: tuple[FuseRush, ...]

    @property
    def limited(self) -> bool:
        """Whether the rush runs into the supply's limit."""
        return self.cold_a > self.limit_a


def inrush(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    supply: PartId,
    figures: Figures | None = None,
) -> Inrush:
    """Return the rush of a supply in those positions, everything switched on at once; KeyError if none such.

    `figures` are of the same plan and positions; without them it is solved.
    """
    return rushes(plan, kinds, positions, figures or solve(plan, kinds, positions))[supply]


def rushes(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, figures: Figures
) -> dict[PartId, Inrush]:
    """Return the rush of every supply and battery that could be solved."""
    return rushes_in(plan, kinds, figures, with_cold_lamps(plan, kinds, positions))


def rushes_in(
    plan: Plan, kinds: Mapping[str, Kind], figures: Figures, cold: Branches
) -> dict[PartId, Inrush]:
    """Return the same from what flows with cold lamps."""
    rushing = fuse_rushes(plan, kinds, figures, cold)
    found: dict[PartId, Inrush] = {}
    for part_id in figures.supplies:
        cold_a, hot_a, limit_a = supply_rush(plan, kinds, figures, cold, part_id)
        near = tuple(rush for rush in rushing if cold.one_circuit(part_id, rush.fuse))
        settles_s = SETTLED * FADES_S if cold_a > MATTERS * hot_a else None
        found[part_id] = Inrush(cold_a, hot_a, limit_a, settles_s, near)
    return found


def supply_rush(
    plan: Plan, kinds: Mapping[str, Kind], figures: Figures, cold: Branches, supply: PartId
) -> tuple[float, float, float]:
    """Return a supply's current at first and later, and its limit; infinite where it has none."""
    part, hot_a = plan.parts[supply], abs(figures.supplies[supply].current_a)
    limit_a = number(part, kinds[part.kind], "limit_a") or math.inf
    first_a = abs(next(iter(cold.amps(supply)), 0.0))
    return max(first_a, hot_a), hot_a, limit_a


class _Fuses(NamedTuple):
    """Fuses in the plan's order, with rating and speed."""

    ids: Sequence[PartId]
    ratings_a: Sequence[float]
    speeds: Sequence[str]


def fuse_rushes(
    plan: Plan, kinds: Mapping[str, Kind], figures: Figures, cold: Branches
) -> tuple[FuseRush, ...]:
    """Return the rush through every fuse, from what flows through it with cold lamps."""
    fuses = kept(_fuses, parts_but_for_place(plan.parts), kinds)
    now = part_columns(figures, fuses.ids, plainly=True)
    first = map(abs, cold.first_amps(fuses.ids))
    rows = zip(*fuses, now.known.tolist(), np.abs(now.amps).tolist(), first, strict=True)
    return tuple(
        FuseRush(fuse, max(cold_a, hot_a), hot_a, verdict(rating_a, speed, max(cold_a, hot_a), hot_a))
        for fuse, rating_a, speed, is_known, hot_a, cold_a in rows
        if is_known
    )


def _fuses(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> _Fuses:
    some = [(p, kinds[p.kind]) for p in parts.values() if p.kind in kinds]
    rows = [(p.id, number(p, k, "rating_a"), _speed(p, k)) for p, k in some if k.behaviour == "fuse"]
    return _Fuses(*zip(*rows, strict=True)) if rows else _Fuses((), (), ())


def verdict(rating_a: float, speed: str, cold_a: float, hot_a: float) -> str:
    """Return whether a fuse stands a rush from `cold_a` that fades to `hot_a`, by the gates of its standard.

    A gate says at a multiple of the rating how long a fuse must hold and when it must have opened. Between
    two gates it holds at least as long as at the upper one; above the last nothing is promised. Up to about
    twice its rating a fuse takes minutes, so a rush that stays below does not matter.
    """
    if cold_a <= MATTERS * hot_a:
        return HOLDS  # what lasts is another check's business
    worst = HOLDS
    gates = [gate for gate in gates_of(rating_a, speed) if gate.not_before_s < SLOWEST_S]
    for gate, upper in zip_longest(gates, gates[1:]):
        above_s = _above_s(gate.multiple * rating_a, cold_a, hot_a)
        if above_s > 0.0 and above_s >= gate.not_after_s:
            return BLOWS
        promised_s = holds_for_s(rating_a, upper.multiple * rating_a, speed) if upper else 0.0
        if above_s > promised_s:
            worst = MAY_BLOW
    return worst


def _speed(part: Part, kind: Kind) -> str:
    return "slow" if text(part, kind, "speed") == "slow" else "fast"


def _above_s(level_a: float, cold_a: float, hot_a: float) -> float:
    """Return how long hot + (cold - hot) exp(-t / FADES_S) stays above a level."""
    if hot_a >= level_a:
        return math.inf
    if cold_a <= level_a:
        return 0.0
    return FADES_S * math.log((cold_a - hot_a) / (level_a - hot_a))
