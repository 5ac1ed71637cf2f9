"""Which sets of positions of a family are solved: those of each group alone, then what they add up to."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple

from wiring.circuit.linear import Floats
from wiring.plan.names import PartId
from wiring.studies.positions.groups import Family, Group
from wiring.studies.positions.options import HELD, LASTING, MOVING, Option
from wiring.studies.positions.sets import Given, count, every, of, one_by_one, resting, together, turns

NO_TURN: frozenset[str] = frozenset()
Best = dict[frozenset[str], tuple[float, Given]]  # by what a set makes use of: what it brings, and the set


class Met(NamedTuple):
    """Sets of one family that were solved and what was read in them, a row each; the first is at rest."""

    sets: list[Given]
    amps: Floats  # one column a wire, supply or fuse


def alone(family: Family, most_sets: int) -> Iterator[Given]:
    """Go through small groups completely and through large ones part by part, the other groups at rest."""
    base = _rest(family.groups)
    yield base
    for group in family.groups:
        small = count(group.options) <= most_sets
        sets: Iterable[Given] = every(group.options) if small else _thrown_alone(group)
        yield from (base | given for given in sets)


def added_up(family: Family, met: Met, columns: Sequence[int], most_sets: int) -> Iterator[Given]:
    """Put together, for each column, what the parts of large groups and the groups of a family bring it."""
    large = [count(group.options) > most_sets for group in family.groups]
    if not any(large) and len(family.groups) < 2:
        return
    told: set[tuple[tuple[str, str], ...]] = set()
    for column in columns:
        given = _added(family, met, column, large)
        key = tuple(given.items())
        if key not in told:
            told.add(key)
            yield given


def _added(family: Family, met: Met, column: int, large: Sequence[bool]) -> Given:
    """Return the best of each group where nothing is held or moves, and one group each that is or does."""
    base = _rest(family.groups)
    place = {tuple(given.items()): row for row, given in enumerate(met.sets)}

    def gain(given: Given) -> float:
        return float(met.amps[place[tuple((base | given).items())], column] - met.amps[0, column])

    best = [
        _best_of_large(group.options, gain) if is_large else _best_of_small(group.options, gain)
        for group, is_large in zip(family.groups, large, strict=True)
    ]
    chosen = [found[NO_TURN] for found in best]
    for group_place, better in max(_upgrades(best), key=lambda way: _worth(way, chosen)).items():
        chosen[group_place] = better
    whole = dict(base)
    for _, given in chosen:
        whole |= given
    return whole


def _best_of_small(options: Sequence[Option], gain: Callable[[Given], float]) -> Best:
    found: Best = {NO_TURN: (0.0, resting(options))}
    for given in every(options):
        used = turns(options, given)
        if gain(given) > found.get(used, (0.0, {}))[0]:
            found[used] = (gain(given), given)
    return found


def _best_of_large(options: Sequence[Option], gain: Callable[[Given], float]) -> Best:
    gains = {(o.part, choice.position): gain(given) for o, choice, given in one_by_one(options)}
    given = together(options, gains)
    lasting = together(options, {key: value for key, value in gains.items() if _lasts(options, key)})
    found = {NO_TURN: (sum(gains.get(pair, 0.0) for pair in lasting.items()), lasting)}
    found[turns(options, given)] = (sum(gains.get(pair, 0.0) for pair in given.items()), given)
    return found


def _lasts(options: Sequence[Option], key: tuple[PartId, str]) -> bool:
    return any(o.part == key[0] and any(c.position == key[1] for c in of(o, LASTING)) for o in options)


def _upgrades(
    best: Sequence[Best],
) -> list[dict[int, tuple[float, Given]]]:
    """List the ways in which one group holds and one moves, by the place of the groups that do."""
    found: list[dict[int, tuple[float, Given]]] = [{}]
    for one, sets in enumerate(best):
        found += [{one: value} for used, value in sets.items() if used]
        for other, more in enumerate(best):
            if one != other and frozenset({HELD}) in sets and frozenset({MOVING}) in more:
                found.append({one: sets[frozenset({HELD})], other: more[frozenset({MOVING})]})
    return found


def _worth(way: dict[int, tuple[float, Given]], chosen: Sequence[tuple[float, Given]]) -> float:
    return sum(gain - chosen[place][0] for place, (gain, _) in way.items())


def _thrown_alone(group: Group) -> Iterator[Given]:
    return (given for _, _, given in one_by_one(group.options))


def _rest(groups: Sequence[Group]) -> Given:
    return {part: position for group in groups for part, position in resting(group.options).items()}
