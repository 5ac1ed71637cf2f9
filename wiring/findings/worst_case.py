"""Supplies, fuses and wires that are right as things stand, but not in every position met in use."""

from collections.abc import Iterator
from math import isfinite

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import size_to
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name, part_names, wire_names
from wiring.plan.names import PartId
from wiring.studies.positions.worst import Worst, WorstCase, worst_case
from wiring.studies.protection import carries_a
from wiring.studies.roles import FUSES, SOURCES
from wiring.studies.sizing import size_for_current
from wiring.studies.wire_limits import limit_a, warm_a

OVER = 1.001  # rounding is no overload


def find(situation: Situation) -> Iterator[Finding]:
    """Solve the plan in all positions that can be met, where that was wished, and find what is too much."""
    if not situation.every_position:
        return
    found = worst_case(situation.plan, situation.kinds, situation.positions)
    yield from _supplies(situation, found)
    yield from _fuses(situation, found)
    yield from _wires(situation, found)


def _supplies(situation: Situation, found: WorstCase) -> Iterator[Finding]:
    plan = situation.plan
    for part, _kind in situation.of(*SOURCES):
        now, worst = situation.figures.supplies.get(part.id), found.supplies.get(part.id)
        if now is None or worst is None or now.limited or now.current_a > OVER * now.rated_a:
            continue
        asked = worst.amps > OVER * now.rated_a
        limited = part.id in found.limited
        if not (isfinite(now.rated_a) and (asked or limited)):
            continue
        rated = amps(plan, now.rated_a)
        name = part_name(plan, part.id)
        yield Finding(
            "supply-worst-case",
            Rank.DANGER,
            f"{name} is made for {rated} and is asked for more {_when(situation, worst)}."
            if limited
            else f"{name} is made for {rated} and gives {amps(plan, worst.amps)} {_when(situation, worst)}.",
            "As things stand it is enough, but not when all of that is on together.",
            "Use a larger supply, or move some of the parts to a second one.",
            (part.id, *_thrown(situation, worst)),
        )


def _fuses(situation: Situation, found: WorstCase) -> Iterator[Finding]:
    plan = situation.plan
    for part, kind in situation.of(*FUSES):
        rating_a = carries_a(part, kind)
        now, worst = situation.figures.parts.get(part.id), found.fuses.get(part.id)
        if now is None or worst is None or now.current_a > rating_a or worst.amps <= OVER * rating_a:
            continue
        yield Finding(
            "fuse-worst-case",
            Rank.DANGER,
            f"{part_name(plan, part.id)} is {amps(plan, rating_a)} and carries {amps(plan, worst.amps)} "
            f"{_when(situation, worst)}.",
            "It holds as things stand and blows then.",
            "Split the load between two fuses, or use a larger one if the wire behind it allows.",
            (part.id, *_thrown(situation, worst)),
        )


def _wires(situation: Situation, found: WorstCase) -> Iterator[Finding]:
    """One finding for each size and set of positions, the worst wire's."""
    plan, figures = situation.plan, situation.figures
    over: dict[tuple[str, tuple[PartId, ...]], list[tuple[float, str]]] = {}
    for wire in plan.wires.values():
        now, worst = figures.wires.get(wire.id), found.wires.get(wire.id)
        if now is None or worst is None or worst.amps <= OVER * limit_a(wire.size):
            continue
        if abs(now.current_a) <= limit_a(wire.size):
            key = (wire.size, _thrown(situation, worst))
            over.setdefault(key, []).append((worst.amps, wire.id))
    for (size, thrown), some in over.items():
        some.sort(reverse=True)
        most, first = some[0]
        wires = tuple(wire for wire in plan.wires if any(wire == one for _, one in some))
        thicker = size_for_current(plan, most)
        yield Finding(
            "wire-worst-case",
            Rank.DANGER if most > warm_a(size) else Rank.WEAK,
            f"{wire_names(plan, wires)} should carry no more than {amps(plan, limit_a(size))}, and "
            f"{amps(plan, most)} flows {_when(situation, found.wires[first])}.",
            "As things stand the current is right, but not then.",
            f"Use {thicker} there, or share the current between two runs."
            if thicker
            else "Share the current between several runs, each with its own fuse.",
            thrown,
            wires,
            size_to(wires, thicker),
        )


def _thrown(situation: Situation, worst: Worst) -> tuple[PartId, ...]:
    """Return the parts that stand otherwise than now where it is worst."""
    return tuple(p for p, position in worst.positions.items() if situation.positions.get(p) != position)


def _when(situation: Situation, worst: Worst) -> str:
    thrown = _thrown(situation, worst)
    positions = {worst.positions[part] for part in thrown}
    if not thrown:
        return "in use"
    if len(positions) == 1:
        stand = "stands at" if len(thrown) == 1 else "stand at"
        return f"when {part_names(situation.plan, thrown)} {stand} “{positions.pop()}”"
    return f"when {part_names(situation.plan, thrown)} {'is' if len(thrown) == 1 else 'are'} thrown over"
