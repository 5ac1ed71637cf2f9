"""One plan in many sets of positions, solved side by side as columns of one network.

Contacts that are open in some sets are very high resistances there. What needs more than a solve, as relays,
AC, converters and supplies that fold back do, is not for this.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.building import build
from wiring.circuit.compiled import Mould, mould_of
from wiring.circuit.cores import core_of_plan, scope_of_plan, solved_core
from wiring.circuit.dead_ends import hang
from wiring.circuit.islands import find_islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.many_moulds import Wide, wide_mould
from wiring.circuit.steady import resting_amps
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

DECIDE_FOR_THEMSELVES = frozenset({"relay", "supply_ac", "converter"})
SOURCE = LAW_NUMBER["source"]
COLUMNS = 64  # solved at once; more do not fit the processor's own memory


class Setting(NamedTuple):
    """Values of a part's branches in some of the sets, and which of them are open there."""

    branches: range
    sets: Ints
    rows: Floats
    absent: NDArray[np.bool_]


class SideBySide(NamedTuple):
    """A plan with every branch that any of the sets has."""

    assembly: Assembly
    settings: tuple[Setting, ...]
    sets: int


class Columns(NamedTuple):
    """Readings of some sets, a column each, and for which branches they hold."""

    sets: Ints
    volts: Floats
    amps: Floats
    found: NDArray[np.bool_]
    values: Floats  # of the branches
    absent: NDArray[np.bool_]  # contacts that are open


def side_by_side(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Sequence[Positions],
    deciding: frozenset[str] = DECIDE_FOR_THEMSELVES,
) -> SideBySide | None:
    """Return the plan ready to be solved in all sets; None where it needs more than that.

    `deciding` are the behaviours that the caller does not deal with.
    """
    known = [kinds[p.kind] for p in plan.parts.values() if p.kind in kinds]
    if any(kind.behaviour in deciding for kind in known):
        return None
    wide: dict[PartId, tuple[Wide, list[Ints]]] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None or not kind.positions:
            continue
        moulds: dict[int, Mould] = {}
        of_set = np.empty(len(positions), dtype=np.intp)
        for place, given in enumerate(positions):
            mould = mould_of(part, kind, given.get(part.id, ""))
            moulds[id(mould)] = mould
            of_set[place] = list(moulds).index(id(mould))
        if len(moulds) < 2:
            continue
        joined = wide_mould(list(moulds.values()))
        if joined is None:
            return None
        wide[part.id] = joined, [np.flatnonzero(of_set == n) for n in range(len(moulds))]
    assembly = build(plan, kinds, positions[0], {part: both[0].mould for part, both in wide.items()})
    settings = [
        Setting(assembly.spans[part], sets, np.array(rows), np.array(absent, dtype=np.bool_))
        for part, (joined, places) in wide.items()
        for sets, rows, absent in zip(places, joined.rows, joined.absent, strict=True)
        if len(assembly.spans[part])
    ]
    return SideBySide(assembly, tuple(settings), len(positions))


def read_columns(many: SideBySide) -> Iterator[Columns]:
    """Solve all sets, some at once."""
    for begin in range(0, many.sets, COLUMNS):
        sets = np.arange(begin, min(begin + COLUMNS, many.sets))
        yield solved_columns(many, sets, *_values(many, sets))


def solved_columns(many: SideBySide, sets: Ints, values: Floats, absent: NDArray[np.bool_]) -> Columns:
    """Solve some sets with these values of the branches."""
    assembly = many.assembly
    islands = find_islands(assembly)
    core, scope = core_of_plan(assembly, islands), scope_of_plan(assembly, islands)
    loops = np.flatnonzero((islands.of_branch >= 0) & islands.circling)
    solved = solved_core(core, values[scope.branches])
    nodes = np.zeros((assembly.node_count, len(sets)))
    nodes[scope.nodes] = solved.nodes
    emf = np.where((assembly.laws == SOURCE)[:, None], values[:, 0], 0.0)
    hang(islands.dead.layers, emf, assembly.a, nodes)
    fed = islands.of_branch >= 0
    volts = np.where(fed[:, None], nodes[assembly.a] - nodes[assembly.b], 0.0)
    amps = np.zeros_like(volts)
    amps[scope.branches[core.branches]] = solved.amps
    amps[loops] = resting_amps(assembly, loops, assembly.values)[:, None]
    volts[absent] = amps[absent] = 0.0
    sound = np.ones((len(islands.references) + 1, len(sets)), dtype=np.bool_)
    sound[np.flatnonzero(~islands.alternating)[core.islands]] = solved.converged
    return Columns(sets, volts, amps, sound[islands.of_branch], values, absent)


def _values(many: SideBySide, sets: Ints) -> tuple[Floats, NDArray[np.bool_]]:
    """Return the branches' values in some sets, and which branches are open there."""
    assembly = many.assembly
    values = np.repeat(assembly.values[:, :, None], len(sets), axis=2)
    absent = np.zeros((len(assembly.values), len(sets)), dtype=np.bool_)
    for setting in many.settings:
        mine = setting.sets[(setting.sets >= sets[0]) & (setting.sets <= sets[-1])] - sets[0]
        if len(mine):
            rows = slice(setting.branches.start, setting.branches.stop)
            values[rows][:, :, mine] = setting.rows[:, :, None]
            absent[rows, mine] = setting.absent[:, None]
    return values, absent
