"""What hangs on a battery while one set of its scenes is on, and the volts at which that is over."""

from collections.abc import Hashable, Iterator, Mapping
from copy import copy
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.load_line import LoadLine
from wiring.circuit.solve import solve
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.standards.lightness import EPSILON, KAPPA
from wiring.studies.cells.discharge import Demand
from wiring.studies.cells.ends import GLOWS, End, end_of
from wiring.studies.cells.load import Load, meeting_v, tabled
from wiring.studies.load_lines import PUT_OUT, Hung, line_of, put_out
from wiring.studies.settings import number
from wiring.studies.uses import Use

NEEDS_VOLTS = frozenset({"constant_power", "flasher", "servo"})
LEAST_POINTS = 3  # of the table that were solved, for a forecast to be made
LEAST_LOAD_A = 1e-6


class Lit(NamedTuple):
    """One set of scenes that is on: its load line, what it draws, when it is over, volts when fresh."""

    line: LoadLine
    load: Load
    end: End
    start_v: float


class Demands(Mapping[int, Demand]):
    """The demands of each set of patterns that are on, worked out when first asked for.

    No entry means that nothing draws or that what draws could not be calculated.
    """

    def __init__(
        self,
        hung: Hung,
        uses: tuple[Use, ...],
        source: tuple[float, float],
        floor_v: float,
        bright_v: float = 0.0,
    ) -> None:
        """Take what hangs on the battery, when it is on, EMF and ohms when fresh, and the volts of its end.

        Lamps are compared with what they give at `bright_v`.
        """
        self._hung, self._uses = hung, uses
        self._source, self._floor_v, self._bright_v = source, floor_v, bright_v
        self._amps = 1.0
        self._lit: dict[int, Lit | None] = {}

    @property
    def limits(self) -> Hashable:
        """All they follow from beside what draws, when it is on, and how dim is too dim."""
        hung = self._hung
        return (
            self._source, self._floor_v, hung.top_v, hung.lowest_v, self._bright_v, hung.off, hung.joined,
            self._amps, hung.plan.habits.dim_lightness,
        )  # fmt: skip

    def lit(self, on: int) -> Lit | None:
        """Return what is known of one set of patterns; None when it draws nothing."""
        if on not in self._lit:
            self._lit[on] = self._made(on)
        return self._lit[on]

    def scaled(self, amps: float) -> "Demands":
        """Return the demands with that many times the current."""
        other = copy(self)
        other._lit, other._amps = {}, self._amps * amps
        return other

    def __getitem__(self, on: int) -> Demand:
        found = self.lit(on)
        if found is None:
            raise KeyError(on)
        return Demand(found.load, found.end.volts_v)

    def __iter__(self) -> Iterator[int]:
        return iter([on for on, found in self._lit.items() if found is not None])

    def __len__(self) -> int:
        return sum(found is not None for found in self._lit.values())

    def _made(self, on: int) -> Lit | None:
        if on == 0:
            return None
        hung, plan, kinds = self._hung, self._hung.plan, self._hung.kinds
        whole = line_of(hung)
        lit = frozenset().union(*(u.loads for i, u in enumerate(self._uses) if on >> i & 1))
        off = frozenset(p for p in whole.parts if kinds[plan.parts[p].kind].behaviour in PUT_OUT) - lit
        line = whole
        if off:
            line = line_of(hung._replace(off=hung.off | off))
        if line.solved.sum() < LEAST_POINTS:
            return None
        load = tabled(line.volts[line.solved].tolist(), (self._amps * line.amps[line.solved]).tolist())
        start_v = meeting_v(load, *self._source)
        if (load.current_a(start_v) if start_v is not None else max(load.amps)) < LEAST_LOAD_A:
            return None
        dark_plan, dark_kinds = put_out(plan, kinds, off)
        end = end_of(
            line.volts.tolist(),
            {part: light.tolist() for part, light in line.lights.items()},
            drop_outs(dark_plan, dark_kinds, hung.positions, line.parts),
            start_v or 0.0,
            self._floor_v,
            plan.habits.dim_lightness,
            self._bright_v,
        )
        return Lit(line, load, end, start_v or 0.0)


def drop_outs(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, parts: tuple[PartId, ...]
) -> dict[PartId, float]:
    """Return the battery's volts at which each module of its circuit (the battery first) stops.

    What wires and switches lose on the way is taken as it is with a fresh battery, which is a little
    more than at the end, so that the forecast is on the safe side.
    """
    needy = [p for p in parts if kinds[plan.parts[p].kind].behaviour in NEEDS_VOLTS]
    if not needy:
        return {}
    figures = solve(plan, kinds, positions)
    fresh = figures.supplies.get(parts[0])
    found: dict[PartId, float] = {}
    for part_id in needy:
        part, reading = plan.parts[part_id], figures.parts.get(part_id)
        least_v = number(part, kinds[part.kind], "min_v")
        if fresh is not None and reading is not None and reading.volts_v >= least_v:
            found[part_id] = least_v + max(fresh.volts_v - reading.volts_v, 0.0)
    return found


def faintest(lit: Lit, volts: NDArray[np.float64]) -> NDArray[np.float64] | None:
    """Return CIE 1976 lightness, of 100 when fresh, of the faintest lamp at each voltage; None if dark."""
    table = np.array(list(lit.line.lights.values()))
    if not len(table):
        return None
    place = np.interp(np.append(volts, lit.start_v), lit.line.volts, np.arange(len(lit.line.volts)))
    low = np.minimum(place.astype(np.intp), len(lit.line.volts) - 2)
    light = table[:, low] + (table[:, low + 1] - table[:, low]) * (place - low)
    shining = light[light[:, -1] > GLOWS]
    if not len(shining):
        return None
    least = np.maximum((shining[:, :-1] / shining[:, -1:]).min(axis=0), 0.0)
    look = np.where(least <= EPSILON, KAPPA * least, 116.0 * np.cbrt(least) - 16.0)
    return np.asarray(look, dtype=np.float64)
