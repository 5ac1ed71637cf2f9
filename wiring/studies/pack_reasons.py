"""Why a pack stands where it does among the others, in plain sentences."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from wiring.studies.time_words import time_words

if TYPE_CHECKING:
    from wiring.studies.compare_packs import Candidate

YEAR_DAYS = 365.25
LITTLE_V = 0.05  # of its volts: less to spare than this is called tight


def with_reasons(ordered: Sequence["Candidate"]) -> tuple["Candidate", ...]:
    """Return the candidates with what speaks for and against each."""
    there = next((c for c in ordered if c.there), None)
    return tuple(c._replace(reasons=tuple(_reasons(c, ordered, there))) for c in ordered)


def _reasons(
    one: "Candidate", all_of_them: Sequence["Candidate"], there: "Candidate | None"
) -> Iterator[str]:
    lit = [c for c in all_of_them if c.lights]
    if not one.lights:
        if one.outlook is None or one.spare_v <= 0:
            yield "It gives too few volts: from the start lamps are too dim, or modules do not work."
        else:
            yield one.outlook.end_reason
        return
    if one.outlook is None:
        yield "Never needs swapping, but needs a cable to a socket."
        if one.mates:
            yield "Take the other batteries of its circuit out before you feed it from the mains."
    else:
        yield _lasting(one)
    if one.there:
        yield "This is what the plan has."
    elif there is not None and one.outlook is not None and there.lights and there.swaps_a_year > 0:
        ratio = there.swaps_a_year / one.swaps_a_year
        if ratio >= 1.3:
            yield f"Lasts {ratio:.1f} times as long as what the plan has."
        elif ratio <= 0.75:
            yield f"Lasts only {ratio:.0%} as long as what the plan has."
        elif 0.95 <= ratio <= 1.05:
            yield "Lasts as long as what the plan has."
        else:
            yield f"Lasts {ratio:.0%} as long as what the plan has."
    priced = [c.cost_a_year for c in lit if c.cost_a_year is not None]
    if one.cost_a_year is not None and len(priced) > 1 and one.cost_a_year == min(priced):
        yield "Costs the least a year."
    if one.spare_v < LITTLE_V * one.nominal_v:
        yield "Has next to no volts to spare."
    sizes = [_volume(c) for c in lit if c.size_mm is not None]
    if one.size_mm is not None and len(sizes) > 1 and _volume(one) == min(sizes):
        yield "Takes the least room."


def _lasting(one: "Candidate") -> str:
    days = YEAR_DAYS / one.swaps_a_year
    word = "charge" if one.rechargeable else "set"
    if one.outlook is not None and one.outlook.sessions.typical < 2:
        return f"One {word} lasts a single session."
    return f"One {word} lasts about {time_words(days)}."


def _volume(one: "Candidate") -> float:
    width, height, depth = one.size_mm or (0.0, 0.0, 0.0)
    return width * height * depth
