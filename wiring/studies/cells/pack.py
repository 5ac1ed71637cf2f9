"""A battery as the two-well model sees it: cells in series and parallel, a grade, a temperature."""

import math
from bisect import bisect_right
from itertools import pairwise
from typing import NamedTuple

from wiring.standards.cells import CellType
from wiring.standards.two_wells import Wells, drawn, full, leaked

HOURS_PER_YEAR = 8766.0
FIRST_STEP = 0.25  # the voltage falls fastest at the start, so steps are this much shorter there
STEEP_UNTIL = 0.06  # of the available well
# Lead-acid makers' storage curves between 10 and 40 °C give this; taken for the others too.
SHELF_PER_10_K = 1.8


class Grade(NamedTuple):
    """How a cell stands to the measured good one of its type."""

    capacity: float = 1.0
    ohms: float = 1.0


class Pack(NamedTuple):
    """All numbers of one battery; volts, ohms and ampere-hours are those of the whole battery."""

    capacity_ah: float
    share: float  # of the charge that is at hand at once
    rate_per_h: float  # how quickly the bound charge follows
    ohms_full: float
    ohms_growth: float
    depths: tuple[float, ...]
    emfs_v: tuple[float, ...]
    floor_v: float
    shelf_per_h: float
    ageing_per_h: float = 0.0  # growth of the resistance with time, whatever is drawn

    def depth(self, wells: Wells) -> float:
        """Return which share of the charge at hand is gone, 0 to 1."""
        return 1.0 - wells.available_ah / (self.share * self.capacity_ah)

    def ohms(self, depth: float) -> float:
        """Return the internal resistance; it grows as the cells empty."""
        return self.ohms_full * (1.0 + self.ohms_growth * max(depth, 0.0))

    def emf_v(self, depth: float) -> float:
        """Return the voltage without load, straight between the table's points."""
        depths, emfs = self.depths, self.emfs_v
        if depth <= depths[0]:
            return emfs[0]
        if depth >= depths[-1]:
            return emfs[-1]
        i = bisect_right(depths, depth) - 1
        return emfs[i] + (emfs[i + 1] - emfs[i]) * (depth - depths[i]) / (depths[i + 1] - depths[i])

    def level(self, share: float) -> Wells:
        """Return the wells with that share of the charge, rested; 1 is fresh."""
        return full(self.capacity_ah * share, self.share)

    def thevenin(self, wells: Wells) -> tuple[float, float]:
        """Return volts without load, and ohms."""
        depth = self.depth(wells)
        return self.emf_v(depth), self.ohms(depth)

    def after(self, wells: Wells, current_a: float, hours: float) -> Wells:
        """Return the wells after a constant current, without loss to the shelf."""
        return drawn(wells, current_a, hours, self.share, self.rate_per_h)

    def leaked(self, wells: Wells, hours: float) -> Wells:
        """Return the wells with what the shelf takes in that time."""
        return leaked(wells, math.exp(-self.shelf_per_h * hours))

    def rested(self, wells: Wells, hours: float) -> Wells:
        """Return the wells after rest, with what the shelf takes."""
        return self.leaked(self.after(wells, 0.0, hours), hours)

    def step_ah(self, wells: Wells, step: float) -> float:
        """Return the charge of one step; the voltage falls fastest at the start, so it is less there."""
        share = step * FIRST_STEP if self.depth(wells) < STEEP_UNTIL else step
        return share * self.share * self.capacity_ah

    def spent(self, wells: Wells) -> bool:
        """Whether a part must be spared: a pack of equal cells ends by its volts alone."""
        return False

    def total_ah(self, wells: Wells) -> float:
        """Return the charge that is left."""
        return wells.total_ah

    def aged(self, hours: float) -> "Pack":
        """Return the battery as it is after some hours, with the resistance it has grown."""
        if not self.ageing_per_h:
            return self
        return self._replace(ohms_full=self.ohms_full * (1.0 + self.ageing_per_h * hours))


def packed(
    cell: CellType,
    in_series: int = 1,
    in_parallel: int = 1,
    capacity_ah: float = 0.0,
    grade: Grade = Grade(),  # noqa: B008 - a frozen value
    celsius: float = 20.0,
) -> Pack:
    """Return the battery made of those cells; a typed capacity (0 = none) scales the typical one.

    Cells of less capacity have more resistance in the same measure.
    """
    scale = capacity_ah / cell.rated_ah if capacity_ah > 0 else 1.0
    warm = _warmth(cell, celsius)
    cells = cell.cells_in_series * in_series
    return Pack(
        capacity_ah=cell.capacity_ah * scale * grade.capacity * warm.capacity * in_parallel,
        share=cell.c,
        rate_per_h=cell.k_per_h * warm.rate,
        ohms_full=cell.r0_ohm / scale * grade.ohms * warm.ohms * in_series / in_parallel,
        ohms_growth=cell.r1,
        depths=tuple(x for x, _ in cell.emf_table),
        emfs_v=tuple(v * cells for _, v in cell.emf_table),
        floor_v=cell.floor_v * cells,
        shelf_per_h=cell.shelf_per_year / HOURS_PER_YEAR * SHELF_PER_10_K ** ((celsius - 20.0) / 10.0),
        ageing_per_h=cell.ageing_ohm_per_year / HOURS_PER_YEAR,
    )


class _Warmth(NamedTuple):
    capacity: float = 1.0
    ohms: float = 1.0
    rate: float = 1.0


def _warmth(cell: CellType, celsius: float) -> _Warmth:
    """Return the factors of a temperature, straight between those of the type's table."""
    table = cell.warmth
    if celsius <= table[0][0]:
        return _Warmth(*table[0][1:])
    for low, high in pairwise(table):
        if celsius <= high[0]:
            part = (celsius - low[0]) / (high[0] - low[0])
            return _Warmth(*(a + (b - a) * part for a, b in zip(low[1:], high[1:], strict=True)))
    return _Warmth(*table[-1][1:])
