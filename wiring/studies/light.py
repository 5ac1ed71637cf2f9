"""How bright lamps look, and how even they are."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from wiring.circuit.figures import Figures
from wiring.circuit.many_readings import light_column
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.standards.lightness import lightness

DARK = 0.005  # of the rated light: a lamp below this is off, not dim


class Evenness(NamedTuple):
    """The brightest and the faintest of a group of lamps, CIE 1976 lightness."""

    faintest: PartId
    brightest: PartId
    low: float
    high: float

    @property
    def spread(self) -> float:
        """How far apart they look."""
        return self.high - self.low


def lit(figures: Figures, lamps: Sequence[PartId]) -> dict[PartId, float]:
    """Return the lightness of every lamp that is on, of 100 at rated light (brighter ones are over 100).

    The lamps must be the same object as long as they are the same.
    """
    light = light_column(figures, lamps)
    on = np.flatnonzero(light > DARK)
    return {lamps[n]: lightness(one) for n, one in zip(on.tolist(), light[on].tolist(), strict=True)}


def alike_by_scene(plan: Plan, shine: Mapping[PartId, float]) -> dict[tuple[str, str], list[PartId]]:
    """Return the lamps that are on, grouped by scene and kind: those the eye compares."""
    groups: dict[tuple[str, str], list[PartId]] = {}
    for part_id in shine:
        part = plan.parts[part_id]
        groups.setdefault((part.scene, part.kind), []).append(part_id)
    return groups


def evenness(shine: Mapping[PartId, float], lamps: list[PartId]) -> Evenness:
    """Return the two ends of a group of lamps."""
    faintest = min(lamps, key=lambda lamp: shine[lamp])
    brightest = max(lamps, key=lambda lamp: shine[lamp])
    return Evenness(faintest, brightest, shine[faintest], shine[brightest])
