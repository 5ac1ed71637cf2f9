"""Turnout coils whose pulse is too weak, for thin wire or a weak supply."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import size_to
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, part_name, part_names, percent, volts, wire_names
from wiring.studies.pulses import Pulse, pulses_of
from wiring.studies.sizing import size_for_pulse

MOST = 0.2  # of the volts on the wires: beyond it coils throw unreliably; common practice, no source


def find(situation: Situation) -> Iterator[Finding]:
    """Find motors whose wires take too much of the pulse, and supplies that cannot give it."""
    pulses = pulses_of(situation.plan, situation.kinds, situation.figures, situation.joints, above=MOST)
    weak = sorted((p for p in pulses if p.share > MOST), key=lambda p: -p.share)
    if weak:
        yield _weak(situation, weak)
    by_supply: dict[str, list[Pulse]] = {}
    for pulse in pulses:
        if pulse.current_a > pulse.limit_a:
            by_supply.setdefault(pulse.supply, []).append(pulse)
    for supply, found in by_supply.items():
        yield _starved(situation, supply, found)


def _weak(situation: Situation, weak: list[Pulse]) -> Finding:
    plan, worst = situation.plan, weak[0]
    motors = tuple(pulse.motor for pulse in weak)
    wires = tuple(dict.fromkeys(worst.wires))
    size = size_for_pulse(plan, situation.figures, worst, MOST)
    loses = do(len(motors), "loses", "lose up to")
    return Finding(
        "pulse-weak",
        Rank.WEAK,
        f"{part_names(plan, motors)} {loses} {percent(worst.share)} of the pulse on the wires: "
        f"{amps(plan, worst.current_a)} leave {volts(plan, worst.coil_v)} at the coil.",
        "A coil needs a strong pulse to throw the turnout all the way, every time.",
        f"Use {size} for {wire_names(plan, wires)}, or put a pulse unit near the turnout."
        if size
        else "Put a pulse unit near the turnout, or a supply nearer by.",
        motors,
        wires,
        size_to(wires, size),
    )


def _starved(situation: Situation, supply: str, found: list[Pulse]) -> Finding:
    plan = situation.plan
    most = max(found, key=lambda pulse: pulse.current_a)
    motors = tuple(pulse.motor for pulse in found)
    return Finding(
        "pulse-over-limit",
        Rank.WEAK,
        f"{part_names(plan, motors)} {do(len(motors), 'wants', 'want')} {amps(plan, most.current_a)} "
        f"in the pulse, and {part_name(plan, supply)} gives {amps(plan, most.limit_a)} at most.",
        "The coil throws weakly, and a supply that shuts off takes everything else on it down.",
        "Use a pulse unit that stores the energy, or a stronger supply for the turnouts alone.",
        (*motors, supply),
    )
