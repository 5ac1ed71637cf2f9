"""The most every wire, fuse and supply carries over all sets of positions that can be met in use."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.assembly import assemble
from wiring.circuit.linear import Floats
from wiring.circuit.many_positions import solve_positions
from wiring.circuit.states import OPERATED
from wiring.plan.names import PartId, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.positions.bound import Bound
from wiring.studies.positions.groups import Family, families
from wiring.studies.positions.options import Option, options, relays
from wiring.studies.positions.sets import Given, count, resting
from wiring.studies.positions.trials import Met, added_up, alone
from wiring.studies.roles import FUSES, SOURCES
from wiring.studies.settings import number

MOST_SETS = 256  # of one group
MOST_SMOOTHED = 32  # where capacitors make each set a search for its steady state
ROUNDING = 1e-9


class Worst(NamedTuple):
    """The most amperes that were met, and how all that can be thrown in that circuit stood then."""

    amps: float
    positions: Positions
    exact: bool  # every set of positions that can be met was solved
    at_most_a: float  # proved for all sets; infinite where nothing is proved


class WorstCase(NamedTuple):
    """The worst of every wire, supply and fuse; `exact` where all of them are."""

    wires: Mapping[WireId, Worst]
    supplies: Mapping[PartId, Worst]
    fuses: Mapping[PartId, Worst]
    exact: bool
    limited: frozenset[PartId]  # supplies that reached their limit or shut off in some set
    sets_solved: int


class Tables(NamedTuple):
    """What is told of: wires, supplies and fuses."""

    wires: dict[WireId, Worst]
    supplies: dict[PartId, Worst]
    fuses: dict[PartId, Worst]


class _Task(NamedTuple):
    """One family as a plan of its own, and what to read: the place of its table and its name."""

    plan: Plan
    kinds: Mapping[str, Kind]
    base: Positions
    names: tuple[tuple[int, str], ...]


def worst_case(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, most_sets: int = MOST_SETS
) -> WorstCase:
    """Return the most each wire, supply and fuse carries, in amperes (RMS on AC).

    A relay between its two voltages stays as it stood, so each set is solved from either state of each relay.
    A group of up to `most_sets` sets is gone through completely. In a larger one every part is thrown alone,
    and for each wire, fuse and supply the choices that raise its current are put together and solved. That
    is a set that can be met, so the figure is never too high; it is the worst of all where throwing one part
    never turns round what another brings, and `exact` is False because that is not proved. What is proved
    then is `at_most_a`; see wiring.studies.positions.bound.
    """
    switched = options(plan, kinds, positions)
    base = {**positions, **resting(switched)}
    thrown, by_hand = (*switched, *relays(plan, kinds)), {option.part for option in switched}
    tables = Tables({}, {}, {})
    limited: set[PartId] = set()
    solved = 0
    for family in families(assemble(plan, kinds, positions), thrown):
        task = _task(plan, kinds, base, family)
        most_here = min(most_sets, MOST_SMOOTHED) if _smooths(task) else most_sets
        met, at_limit = _solved(task, list(alone(family, most_here)))
        more = list(added_up(family, met, range(len(task.names)), most_here))
        if more:
            again, later = _solved(task, more)
            met = Met(met.sets + again.sets, np.concatenate((met.amps, again.amps)))
            at_limit |= later
        exact = all(count(group.options) <= most_here for group in family.groups)
        exact = exact and (len(family.groups) < 2 or at_limit.isdisjoint(family.ideal))
        most = {} if exact else _most(task, [o for group in family.groups for o in group.options])
        for column, (table, name) in enumerate(task.names):
            row = _first_worst(met.amps[:, column])
            amps = float(met.amps[row, column])
            stands = {part: at for part, at in met.sets[row].items() if part in by_hand or at == OPERATED}
            tables[table][name] = Worst(amps, stands, exact, amps if exact else most[table, name])
        limited |= at_limit
        solved += len(met.sets)
    every_exact = all(worst.exact for table in tables for worst in table.values())
    return WorstCase(*tables, every_exact, frozenset(limited), solved)


def _first_worst(amps: Floats) -> int:
    """Return the first row that is as bad as the worst, but for rounding."""
    return int(np.argmax(amps >= (1.0 - ROUNDING) * amps.max()))


def _task(plan: Plan, kinds: Mapping[str, Kind], base: Positions, family: Family) -> _Task:
    wires = {w: plan.wires[w] for w in plan.wires if any(w in group.wires for group in family.groups)}
    own = {part for group in family.groups for part in group.parts} | family.supplies
    reached = own | {ref.part for wire in wires.values() for ref in (wire.start, wire.end)}
    parts = {p: part for p, part in plan.parts.items() if p in reached}
    supplies = [p for p, part in parts.items() if p in own and _behaves(kinds, part) in SOURCES]
    fuses = [p for p, part in parts.items() if p in own and _behaves(kinds, part) in FUSES]
    names = [*((0, w) for w in wires), *((1, p) for p in supplies), *((2, p) for p in fuses)]
    return _Task(plan.with_changes(parts=parts, wires=wires), kinds, base, tuple(names))


def _most(task: _Task, options: Sequence[Option]) -> dict[tuple[int, str], float]:
    bound = Bound(task.plan, task.kinds, task.base, options)
    return {
        (table, name): bound.of_supply(name) if table == 1 else bound.of_conductors.get(name, bound.total_a)
        for table, name in task.names
    }


def _smooths(task: _Task) -> bool:
    """Whether a smoothing capacitor is among the parts of a family that AC feeds."""
    parts = [(part, _behaves(task.kinds, part)) for part in task.plan.parts.values()]
    return any(behaviour == "supply_ac" for _, behaviour in parts) and any(
        behaviour == "rectifier" and number(part, task.kinds[part.kind], "capacitance") > 0.0
        for part, behaviour in parts
    )


def _behaves(kinds: Mapping[str, Kind], part: Part) -> str:
    kind = kinds.get(part.kind)
    return kind.behaviour if kind is not None else ""


def _solved(task: _Task, sets: list[Given]) -> tuple[Met, frozenset[PartId]]:
    """Solve one family by itself, since families do not feel one another; say which supplies were limited."""
    read = solve_positions(task.plan, task.kinds, [{**task.base, **given} for given in sets])
    columns = [
        {name: table[:, n] for n, name in enumerate(names)}
        for names, table in (
            (read.wires, read.wire_a), (read.supplies, read.supply_a), (read.parts, read.part_a)
        )
    ]  # fmt: skip
    nothing = np.zeros(len(sets))
    amps = np.abs([columns[table].get(name, nothing) for table, name in task.names])
    limited = frozenset(part for n, part in enumerate(read.supplies) if read.limited[:, n].any())
    return Met(sets, amps.reshape(len(task.names), len(sets)).T), limited
