"""The most every wire, fuse and supply carries over all sets of positions that can be met in use."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import zip_longest
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.many_positions import ManyReadings, solve_positions
from wiring.circuit.states import settle
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.positions.groups import Family, families
from wiring.studies.positions.options import options
from wiring.studies.positions.sets import Given, count, resting
from wiring.studies.positions.trials import Met, added_up, alone
from wiring.studies.roles import FUSES

MOST_SETS = 256  # of one group


class Worst(NamedTuple):
    """The most amperes that were met, and how all that can be thrown in that circuit stood then."""

    amps: float
    positions: Positions
    exact: bool  # every set of positions that can be met was solved


class WorstCase(NamedTuple):
    """The worst of every wire, supply and fuse; `exact` where all of them are."""

    wires: Mapping[WireId, Worst]
    supplies: Mapping[PartId, Worst]
    fuses: Mapping[PartId, Worst]
    exact: bool
    limited: frozenset[PartId]  # supplies that reached their limit or shut off in some set
    sets_solved: int


def worst_case(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, most_sets: int = MOST_SETS
) -> WorstCase:
    """Return the most each wire, supply and fuse carries, in amperes (RMS on AC).

    A group of up to `most_sets` sets is gone through completely. In a larger one every part is thrown alone,
    and for each wire, fuse and supply the choices that raise its current are put together and solved. That
    is a set that can be met, so the figure is never too high; it is the worst of all where throwing one part
    never turns round what another brings, and `exact` is False because that is not proved.
    """
    thrown = options(plan, kinds, positions)
    found = families(settle(plan, kinds, positions, None).assembly, thrown)
    fuses = tuple(p.id for p in plan.parts.values() if p.kind in kinds and kinds[p.kind].behaviour in FUSES)
    base = {**positions, **resting(thrown)}
    first = [list(alone(family, most_sets)) for family in found]
    read, met = _solved(plan, kinds, base, first, fuses)
    columns, limited = [_columns(family, read, fuses) for family in found], _limited(read)
    second = [list(added_up(f, m, c, most_sets)) for f, m, c in zip(found, met, columns, strict=True)]
    if any(second):
        again, more = _solved(plan, kinds, base, second, fuses)
        limited |= _limited(again)
        met = [Met(a.sets + b.sets, np.concatenate((a.amps, b.amps))) for a, b in zip(met, more, strict=True)]
    worst: dict[int, Worst] = {}
    for family, mine, cols in zip(found, met, columns, strict=True):
        exact = all(count(group.options) <= most_sets for group in family.groups)
        exact = exact and (len(family.groups) < 2 or limited.isdisjoint(family.ideal))
        rows = np.argmax(mine.amps[:, cols], axis=0) if cols else []
        for column, row in zip(cols, rows, strict=True):
            worst[column] = Worst(float(mine.amps[row, column]), mine.sets[row], exact)
    wires, supplies = len(read.wires), len(read.supplies)

    def table(names: Sequence[str], start: int) -> dict[str, Worst]:
        return {name: worst[start + n] for n, name in enumerate(names) if start + n in worst}

    return WorstCase(
        table(read.wires, 0),
        table(read.supplies, wires),
        table(fuses, wires + supplies),
        all(one.exact for one in worst.values()),
        limited,
        _height(first) + _height(second),
    )


def _limited(read: ManyReadings) -> frozenset[PartId]:
    return frozenset(part for n, part in enumerate(read.supplies) if read.limited[:, n].any())


def _height(sets: Sequence[list[Given]]) -> int:
    return max(map(len, sets), default=0)


def _solved(
    plan: Plan,
    kinds: Mapping[str, Kind],
    base: Positions,
    sets: Sequence[list[Given]],
    fuses: Sequence[PartId],
) -> tuple[ManyReadings, list[Met]]:
    """Solve one set of every family at a time, since families do not feel one another."""
    read = solve_positions(plan, kinds, list(_rows(base, sets)))
    place = {part: n for n, part in enumerate(read.parts)}
    fuse_a = [read.part_a[:, place[f]] if f in place else np.zeros(len(read.part_a)) for f in fuses]
    columns = (read.wire_a, read.supply_a, np.array(fuse_a).reshape(len(fuses), len(read.wire_a)).T)
    amps = np.abs(np.concatenate(columns, axis=1))
    return read, [Met(some, amps[: len(some)]) for some in sets]


def _rows(base: Positions, sets: Sequence[list[Given]]) -> Iterator[Positions]:
    nothing: Given = {}
    for givens in zip_longest(*sets, fillvalue=nothing):
        row = dict(base)
        for given in givens:
            row |= given
        yield row


def _columns(family: Family, read: ManyReadings, fuses: Sequence[PartId]) -> list[int]:
    """Return the columns of a family's own wires, supplies and fuses."""
    wires = {wire for group in family.groups for wire in group.wires}
    parts = {part for group in family.groups for part in group.parts} | family.supplies
    mine = [*(w in wires for w in read.wires), *(p in parts for p in (*read.supplies, *fuses))]
    return [n for n, is_mine in enumerate(mine) if is_mine]
