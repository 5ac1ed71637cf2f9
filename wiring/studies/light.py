"""How bright lamps look, and how even they are."""

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import NamedTuple

import numpy as np

from wiring.circuit.figures import Figures
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.many_readings import light_column
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.standards.lightness import lightness, relative_light

DARK = 0.005  # of the rated light: a lamp below this is off, not dim
BARELY = 1.0 + 1e-9  # the inverse of the lightness is as exact


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


def lit(figures: Figures, lamps: Sequence[PartId]) -> "Shine":
    """Return the light of lamps; they must be the same object as long as they are the same."""
    return Shine(lamps, light_column(figures, lamps))


class Shine(Mapping[PartId, float]):
    """The lightness of every lamp that is on, of 100 at rated light (brighter ones are over 100)."""

    def __init__(self, lamps: Sequence[PartId], light: Floats) -> None:
        """Take the lamps and the light of each over its rated one, NaN where it is not known."""
        self._lamps, self._light = lamps, np.where(light > DARK, light, np.nan)

    @cached_property
    def _lightness(self) -> dict[PartId, float]:
        rows = zip(self._lamps, self._light.tolist(), strict=True)
        return {lamp: lightness(light) for lamp, light in rows if light > DARK}

    def below(self, least: float) -> list[PartId]:
        """Return the lamps whose lightness is less."""
        near = np.flatnonzero(self._light <= relative_light(least) * BARELY).tolist()
        return [self._lamps[n] for n in near if self[self._lamps[n]] < least]

    def apart(self, groups: "Alike", spread: float) -> list[list[PartId]]:
        """Return of each group the lamps that are on, where they look farther apart, by their first ones."""
        if not len(groups.order):
            return []
        light = self._light[groups.order]
        low, high = (each.reduceat(light, groups.begins).tolist() for each in (np.fmin, np.fmax))
        ends = (*groups.begins[1:].tolist(), len(light))
        found = []
        for begin, end, one, other in zip(groups.begins.tolist(), ends, low, high, strict=True):
            if one < other and lightness(other) - lightness(one) > spread:
                rows = groups.order[begin:end]
                found.append(rows[~np.isnan(self._light[rows])].tolist())
        return [[self._lamps[n] for n in rows] for rows in sorted(found)]

    def __getitem__(self, lamp: PartId) -> float:
        return self._lightness[lamp]

    def __iter__(self) -> Iterator[PartId]:
        return iter(self._lightness)

    def __len__(self) -> int:
        return len(self._lightness)


class Alike(NamedTuple):
    """Lamps group by group, as places among all; a group is what the eye compares: one kind in one scene."""

    order: Ints
    begins: Ints  # of each group


def alike_by_scene(lamps: Sequence[Part]) -> Alike:
    """Return the lamps grouped by scene and kind."""
    groups: dict[tuple[str, str], list[int]] = {}
    for place, part in enumerate(lamps):
        groups.setdefault((part.scene, part.kind), []).append(place)
    sizes = np.array([len(rows) for rows in groups.values()], dtype=np.intp)
    order = np.array([place for rows in groups.values() for place in rows], dtype=np.intp)
    return Alike(order, np.cumsum(sizes) - sizes)


def evenness(shine: Mapping[PartId, float], lamps: Sequence[PartId]) -> Evenness:
    """Return the two ends of a group of lamps."""
    faintest = min(lamps, key=lambda lamp: shine[lamp])
    brightest = max(lamps, key=lambda lamp: shine[lamp])
    return Evenness(faintest, brightest, shine[faintest], shine[brightest])
