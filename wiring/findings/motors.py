"""Motors, servos and modules that get too few or too many volts."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names, volts
from wiring.studies.settings import number

# Of rated volts: a stall motor then throws slowly and holds with little force; common practice, no source.
WEAK = 0.6
OVER = 1.25
OFF = 0.05  # of rated volts: switched off, not weak


def find(situation: Situation) -> Iterator[Finding]:
    """Find motors outside their volts, then electronics below the least they need."""
    weak: list[tuple[float, str]] = []
    over: list[tuple[float, str]] = []
    for part, kind in situation.of("stall_motor", "servo"):
        figure = situation.figures.parts.get(part.id)
        rated_v = number(part, kind, "rated_v")
        if figure is None or rated_v <= 0:
            continue
        share = abs(figure.volts_v) / rated_v
        if OFF < share < WEAK:
            weak.append((share, part.id))
        elif share > OVER:
            over.append((-share, part.id))
    yield from _motors(situation, "motor-weak", sorted(weak))
    yield from _motors(situation, "motor-over-volts", sorted(over))
    yield from _starved(situation)


def _starved(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
    starved: dict[str, list[str]] = {}
    for part, kind in situation.of("flasher", "constant_current", "servo"):
        figure = situation.figures.parts.get(part.id)
        least_v = number(part, kind, "min_v")
        if figure is not None and OFF * least_v < figure.volts_v < least_v:
            starved.setdefault(part.kind, []).append(part.id)
    for kind_key, parts in starved.items():
        least_v = number(plan.parts[parts[0]], situation.kinds[kind_key], "min_v")
        yield Finding(
            "module-starved",
            Rank.WEAK,
            f"{part_names(plan, parts)} {do(len(parts), 'gets', 'get')} "
            f"{volts(plan, situation.figures.parts[parts[0]].volts_v)} and needs {volts(plan, least_v)}.",
            "It drops out or works badly.",
            "Use thicker wire, or a supply with more volts.",
            tuple(parts),
        )


_WORDS = {
    "motor-weak": (
        "only ",
        "It throws slowly or not at all, and holds with little force.",
        "Use thicker wire, or a supply with more volts.",
    ),
    "motor-over-volts": (
        "",
        "It runs hot, wears quickly and may fail.",
        "Use a supply with fewer volts, or a resistor in series.",
    ),
}


def _motors(situation: Situation, rule: str, found: list[tuple[float, str]]) -> Iterator[Finding]:
    if not found:
        return
    plan = situation.plan
    only, why, mend = _WORDS[rule]
    parts = tuple(part for _, part in found)
    worst = plan.parts[parts[0]]
    rated_v = number(worst, situation.kinds[worst.kind], "rated_v")
    got_v = abs(situation.figures.parts[worst.id].volts_v)
    yield Finding(
        rule,
        Rank.WEAK,
        f"{part_names(plan, parts)} {do(len(parts), 'gets', 'get')} {only}{volts(plan, got_v)} "
        f"and {do(len(parts), 'is', 'are')} made for {volts(plan, rated_v)}.",
        why,
        mend,
        parts,
    )
