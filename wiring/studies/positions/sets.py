"""Sets of positions that can be met in use, listed or counted."""

from collections.abc import Iterator, Sequence
from itertools import product
from math import prod

from wiring.plan.names import PartId
from wiring.studies.positions.options import HELD, LASTING, MOVING, Choice, Option

Given = dict[PartId, str]


def count(options: Sequence[Option]) -> int:
    """Return how many sets of positions a group can be met in."""
    lasting = prod(len(of(option, LASTING)) for option in options)
    # A part that is held or moves does not stand in one of its lasting positions meanwhile: the sum below
    # takes each such part out of the product.
    ways = {how: _weight(options, how) for how in (HELD, MOVING)}
    both = sum(
        len(of(one, HELD)) * len(of(other, MOVING)) / (len(of(one, LASTING)) * len(of(other, LASTING)))
        for one in options
        for other in options
        if one is not other
    )
    return round(lasting * (1.0 + ways[HELD] + ways[MOVING] + both))


def _weight(options: Sequence[Option], how: str) -> float:
    return sum(len(of(option, how)) / len(of(option, LASTING)) for option in options)


def of(option: Option, how: str) -> tuple[Choice, ...]:
    """Return the choices of one sort; a part none of whose positions last stands in its first."""
    found = tuple(choice for choice in option.choices if choice.how == how)
    return found or (option.choices[:1] if how == LASTING else ())


def every(options: Sequence[Option]) -> Iterator[Given]:
    """List every set of positions of a group, the present one first."""
    for held in (None, *options):
        for moving in (None, *options):
            if held is not None and held is moving:
                continue
            rows = [
                of(option, HELD if option is held else MOVING if option is moving else LASTING)
                for option in options
            ]
            for choices in product(*rows):
                yield {option.part: choice.position for option, choice in zip(options, choices, strict=True)}


def one_by_one(options: Sequence[Option]) -> Iterator[tuple[Option, Choice, Given]]:
    """List the present set with one part thrown, for every part and choice but its first."""
    base = resting(options)
    for option in options:
        for choice in option.choices[1:]:
            yield option, choice, {**base, option.part: choice.position}


def resting(options: Sequence[Option]) -> Given:
    """Return the set in which nothing is held and nothing moves."""
    return {option.part: option.choices[0].position for option in options}


def together(options: Sequence[Option], gain: dict[tuple[PartId, str], float]) -> Given:
    """Return the allowed set that takes each part's most gainful choice, one held and one moving at most.

    `gain` is what a choice brings over the part's first one.
    """
    given, best = resting(options), {option.part: 0.0 for option in options}
    for option in options:
        for choice in of(option, LASTING)[1:]:
            if gain.get((option.part, choice.position), 0.0) > best[option.part]:
                given[option.part], best[option.part] = choice.position, gain[option.part, choice.position]
    taken: set[PartId] = set()
    for how in (HELD, MOVING):
        extra = [
            (gain.get((o.part, c.position), 0.0) - best[o.part], o.part, c.position)
            for o in options
            for c in of(o, how)
            if o.part not in taken
        ]
        if extra and max(extra)[0] > 0.0:
            _, part, position = max(extra)
            given[part] = position
            taken.add(part)
    return given


def turns(options: Sequence[Option], given: Given) -> frozenset[str]:
    """Return which of "held" and "moving" a set makes use of."""
    used = {
        c.how for o in options for c in o.choices if c.position == given.get(o.part, o.choices[0].position)
    }
    return frozenset(used - {LASTING})
