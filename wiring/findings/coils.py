"""Coils: turnout coils that stay on, relays that do not pull in."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import part_name, part_names, volts
from wiring.plan.names import TerminalRef
from wiring.studies.joints import LASTING, ends
from wiring.studies.roles import SOURCE_ENDS, SOURCES
from wiring.studies.settings import number


def find(situation: Situation) -> Iterator[Finding]:
    """Find twin coils fed through contacts that stay closed, and relays short of volts."""
    held = tuple(_held(situation))
    if held:
        yield Finding(
            "coil-held",
            Rank.DANGER,
            f"{part_names(situation.plan, held)} can be left with a coil on: a contact that "
            "stays closed feeds it.",
            "These coils stand a pulse only; left on they burn out within a minute or so.",
            "Use push buttons, or a switch that springs back, for each coil.",
            held,
        )
    yield from _weak_relays(situation)


def _held(situation: Situation) -> Iterator[str]:
    sides: list[tuple[frozenset[TerminalRef], frozenset[TerminalRef]]] | None = None
    for part, _kind in situation.of("twin_coil"):
        if sides is None:
            sides = []
            for source, kind in situation.of(*SOURCES):
                plus, minus = ends(source.id, SOURCE_ENDS[kind.behaviour])
                reach = situation.joints.reach
                sides.append((reach((plus,), LASTING).terminals, reach((minus,), LASTING).terminals))
        middle = TerminalRef(part.id, "C")
        outer = [TerminalRef(part.id, "N"), TerminalRef(part.id, "R")]
        for plus_side, minus_side in sides:
            for one, other in ((plus_side, minus_side), (minus_side, plus_side)):
                if middle in one and any(end in other for end in outer):
                    yield part.id
                    break
            else:
                continue
            break


def _weak_relays(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
    for part, kind in situation.of("relay"):
        figure = situation.figures.parts.get(part.id)
        pull_in_v = number(part, kind, "pull_in_v")
        if figure is None or not 0.3 * pull_in_v < abs(figure.volts_v) < pull_in_v:
            continue
        if figure.state == "operated":
            continue
        yield Finding(
            "relay-weak",
            Rank.WEAK,
            f"{part_name(plan, part.id)} gets {volts(plan, abs(figure.volts_v))} and needs "
            f"{volts(plan, pull_in_v)} to pull in.",
            "Its contacts stay as they are, or chatter.",
            "Use thicker wire, a supply with more volts, or a relay for fewer volts.",
            (part.id,),
        )
