"""The run of wire from a supply to each load and back, and the volts lost on it."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.behaviours.all_behaviours import RESTATING
from wiring.circuit.figures import Figures
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.many_readings import part_columns, wire_columns
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.studies.alike import parts_but_for_place
from wiring.studies.best_ways import WireCosts, kept_ways
from wiring.studies.joints import Joints, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.roles import LOADS, SOURCE_ENDS, THROUGH
from wiring.studies.ways import FAR, Ways, wires_back

_DIRECT = Link.WIRE | Link.CLOSED | Link.FUSE | Link.RESISTOR | Link.DIODE
DRAWS_A = 1e-5  # less is no current


class Run(NamedTuple):
    """Wires from a supply to a load and back; the volts lost on them, and their share of the supply's."""

    load: PartId
    supply: PartId
    wires: tuple[WireId, ...]
    drop_v: float
    share: float


class Runs(Mapping[PartId, Run]):
    """The run of each load that draws current; written out when one is asked for."""

    def __init__(
        self,
        rows: Mapping[PartId, int],
        sources: Sequence["_Source"],
        ends_at: Sequence[tuple[TerminalRef, TerminalRef]],
        chosen: Ints,
        drops_v: Floats,
    ) -> None:
        """Take the loads; of each row its ends, the source and way round chosen, and the volts lost."""
        self._rows, self._sources, self._ends, self._drops_v = rows, sources, ends_at, drops_v
        self._source, self._turned = np.divmod(chosen, 2)
        self._supply_v = np.array([volts for _, _, _, volts in sources], dtype=np.float64)

    def over(self, share: float) -> list[tuple[PartId, PartId, float]]:
        """Return the loads that lose more than that share of their supply's volts, with supply and share."""
        if not self._rows:
            return []
        rows = np.fromiter(self._rows.values(), dtype=np.intp, count=len(self._rows))
        source = self._source[rows]
        supply_v, lost = self._supply_v[source], self._drops_v[rows]
        shares = np.where(supply_v > 0, lost / np.where(supply_v > 0, supply_v, 1.0), 0.0)
        loads = list(self._rows)
        return [
            (loads[n], self._sources[int(source[n])].part, float(shares[n]))
            for n in np.flatnonzero(shares > share).tolist()
        ]

    def supply_of(self, load: PartId) -> PartId | None:
        """Return the supply that feeds a load, None where it has no run."""
        row = self._rows.get(load)
        return None if row is None else self._sources[int(self._source[row])].part

    def __getitem__(self, load: PartId) -> Run:
        row = self._rows[load]
        source = self._sources[int(self._source[row])]
        one, other = self._ends[row][::-1] if self._turned[row] else self._ends[row]
        wires = (*reversed(wires_back(source.plus, one)), *wires_back(source.minus, other))
        drop_v = float(self._drops_v[row])
        return Run(load, source.part, wires, drop_v, drop_v / source.volts if source.volts > 0 else 0.0)

    def __iter__(self) -> Iterator[PartId]:
        return iter(self._rows)

    def __len__(self) -> int:
        return len(self._rows)


NO_RUNS = Runs({}, (), (), np.zeros(0, dtype=np.intp), np.zeros(0))


class _Source(NamedTuple):
    part: PartId
    plus: Ways
    minus: Ways
    volts: float


_Feed = tuple[PartId, tuple[TerminalRef, TerminalRef]]


class _Loads(NamedTuple):
    """The loads of a plan by whether their figures are read off plainly, and each pair of ends as a row."""

    plainly: Sequence[PartId]
    otherwise: Sequence[PartId]
    of_row: Sequence[PartId]
    ends: Sequence[tuple[TerminalRef, TerminalRef]]
    load: Ints  # of each row its place among those read plainly, then the others


def runs_of(plan: Plan, kinds: Mapping[str, Kind], figures: Figures, joints: Joints) -> Runs:
    """Return the run of each load that draws current, from the supply that feeds it most directly.

    On a mesh every way round loses the same volts (Kirchhoff), so one way stands for all.
    """
    parts = parts_but_for_place(plan.parts)
    loads, feeds = kept(_loads, parts, kinds), kept(_feeds, parts, kinds)
    draws = _drawing(figures, loads)
    columns = wire_columns(figures)
    costs = WireCosts(columns.rows, np.where(columns.known, np.abs(columns.drops_v), np.inf))
    # Nearly all loads are fed past no other: only where one is not, ways through loads are looked for.
    found = _runs(_sources(feeds, figures, joints, _DIRECT, costs), loads, draws)
    if len(found) == len({loads.of_row[row] for row in draws}):
        return found
    return _runs(_sources(feeds, figures, joints, _DIRECT | Link.LOAD, costs), loads, draws)


def _runs(sources: tuple[_Source, ...], loads: _Loads, draws: Sequence[int]) -> Runs:
    """Return the runs of what draws along those ways."""
    if not sources or not draws:
        return NO_RUNS
    places = kept(_places, loads, sources[0].plus.net.number)
    found = [kept(_led, places, plus, minus) for _, plus, minus, _ in sources]
    passed, lost = (np.concatenate(column) for column in zip(*found, strict=True))
    fewest = passed.min(axis=0)
    chosen = np.where(passed == fewest, lost, np.inf).argmin(axis=0)
    drops_v = lost[chosen, np.arange(len(chosen))]
    best: dict[PartId, int] = {}
    of_row, far, drop_v = loads.of_row, fewest.tolist(), drops_v.tolist()
    for row in draws:
        if far[row] < FAR:
            load = of_row[row]
            other = best.setdefault(load, row)
            if other != row and (far[row], drop_v[row]) < (far[other], drop_v[other]):
                best[load] = row
    return Runs(best, sources, loads.ends, chosen, drops_v)


def _led(places: tuple[Ints, Ints], plus: Ways, minus: Ways) -> tuple[Ints, Floats]:
    """Return the loads passed on the way from a source to both ends of loads and back, and its cost.

    One row for each way round.
    """
    plus_at, minus_at = ([way.at(side) for side in places] for way in (plus, minus))
    pairs = [(plus_at[0], minus_at[1]), (plus_at[1], minus_at[0])]
    passed, lost = ([there[n] + back[n] for there, back in pairs] for n in (0, 1))
    return np.stack(passed), np.stack(lost)


def _drawing(figures: Figures, loads: _Loads) -> Sequence[int]:
    """Return the rows of the loads that draw current."""
    plainly, otherwise = (
        part_columns(figures, ids, plainly=plain)
        for ids, plain in ((loads.plainly, True), (loads.otherwise, False))
    )
    draws = [found.known & (np.abs(found.amps) >= DRAWS_A) for found in (plainly, otherwise)]
    rows: list[int] = np.flatnonzero(np.concatenate(draws)[loads.load]).tolist()
    return rows


def _loads(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> _Loads:
    some = [(part.id, kinds[part.kind].behaviour) for part in parts.values() if part.kind in kinds]
    plainly = [load for load, behaviour in some if behaviour in LOADS - RESTATING]
    otherwise = [load for load, behaviour in some if behaviour in LOADS & RESTATING]
    place = {load: n for n, load in enumerate((*plainly, *otherwise))}
    rows = [(load, ends(load, pair)) for load, b in some if b in LOADS for pair in THROUGH[b]]
    of_row, pairs = zip(*rows, strict=True) if rows else ((), ())
    load = np.array([place[load] for load in of_row], dtype=np.intp)
    return _Loads(plainly, otherwise, of_row, pairs, load)


def _places(loads: _Loads, number: Mapping[TerminalRef, int]) -> tuple[Ints, Ints]:
    one, other = np.array([[number.get(ref, -1) for ref in pair] for pair in loads.ends], dtype=np.intp).T
    return one, other


def _sources(
    feeds: Iterable[_Feed], figures: Figures, joints: Joints, through: int, costs: WireCosts
) -> tuple[_Source, ...]:
    found: list[_Source] = []
    for part, pair in feeds:
        supply = figures.supplies.get(part)
        if supply is not None and all(ref in joints.edges for ref in pair):
            plus, minus = (kept_ways(joints, end, through, costs) for end in pair)
            found.append(_Source(part, plus, minus, abs(supply.volts_v)))
    return tuple(found)


def _feeds(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> tuple[_Feed, ...]:
    behaviours = ((part.id, kinds[part.kind].behaviour) for part in parts.values() if part.kind in kinds)
    return tuple((part, ends(part, SOURCE_ENDS[b])) for part, b in behaviours if b in SOURCE_ENDS)
