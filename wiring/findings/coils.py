"""Coils: turnout coils that stay on, relays that do not pull in."""

from collections.abc import Iterator

from wiring.findings.asked import Asked, asked
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import part_name, part_names, volts
from wiring.plan.names import PartId, TerminalRef
from wiring.studies.joints import LASTING, ends
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.roles import SOURCE_ENDS, SOURCES
from wiring.studies.settings import number

COILS = ("twin_coil",)


def find(situation: Situation) -> Iterator[Finding]:
    """Find twin coils fed through contacts that stay closed, and relays short of volts."""
    net = situation.joints.net(LASTING)
    held = kept(_held, asked(situation, COILS), asked(situation, SOURCES), net)
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


def _held(coils: Asked, supplies: Asked, net: Net) -> tuple[PartId, ...]:
    sides: set[tuple[int, int]] = set()
    for supply, kind in zip(supplies.ids, supplies.kinds, strict=True) if coils.ids else ():
        one, other = (net.group_of(ref) for ref in ends(supply, SOURCE_ENDS[kind.behaviour]))
        if one >= 0 and other >= 0:
            sides |= {(one, other), (other, one)}
    found: list[PartId] = []
    for part in coils.ids if sides else ():
        middle, *outer = (net.group_of(TerminalRef(part, name)) for name in ("C", "N", "R"))
        if any((middle, end) in sides for end in outer):
            found.append(part)
    return tuple(found)


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
