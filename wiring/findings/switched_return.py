"""Switches of one pole that break the return and leave the feed on.

Contacts belong into the conductor that is not the common one: IEC 60204-1, control circuits (from memory).
Where all switches of a supply stand in its return, plus is the common one and that is well.
"""

from collections.abc import Iterator, Mapping

from wiring.catalogue.kind import Kind
from wiring.edits.poles import Pole, poles
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_name, part_names
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.studies.keeping import kept


def find(situation: Situation) -> Iterator[Finding]:
    """Find the switches in the return of each DC supply, where others of it, or none, stand in plus."""
    if not any(True for _ in situation.of("switch")):
        return
    by_supply = kept(_in_return, situation.parts, situation.landed, situation.kinds)
    for supply, switches in by_supply.items():
        many = len(switches)
        yield Finding(
            "switch-in-return",
            Rank.NOTE,
            f"{part_names(situation.plan, switches)} {do(many, 'breaks', 'break')} the return to "
            f"{part_name(situation.plan, supply)}, and plus stays on.",
            "What is switched so keeps its volts when off: any other way back, such as a shared return, "
            "lights it.",
            f"Put {do(many, 'the switch', 'each switch')} into plus, or let a second pole break both.",
            switches,
        )


def _in_return(
    parts: Mapping[PartId, Part], wires: Mapping[WireId, Wire], kinds: Mapping[str, Kind]
) -> Mapping[PartId, tuple[PartId, ...]]:
    plan = Plan(parts=parts, wires=wires)
    known = poles(plan, kinds)
    found: dict[PartId, list[PartId]] = {}
    in_plus: set[PartId] = set()
    for part in parts.values():
        kind = kinds.get(part.kind)
        if kind is None or kind.behaviour != "switch":
            continue
        sides = _sides(part, kind, known)
        for source, is_plus in sides:
            alternating = kinds[parts[source].kind].behaviour == "supply_ac"
            if is_plus:
                in_plus.add(source)
            elif not alternating and (source, True) not in sides:
                found.setdefault(source, []).append(part.id)
    return {s: tuple(some) for s, some in found.items() if s in in_plus or len(some) == 1}


def _sides(part: Part, kind: Kind, known: Mapping[TerminalRef, Pole]) -> set[tuple[PartId, bool]]:
    """Return of which supplies a switch breaks plus or minus: both sides of a contact on one pole."""
    found: set[tuple[PartId, bool]] = set()
    for pair in {pair for position in kind.positions for pair in position.closes}:
        one, other = (known.get(TerminalRef(part.id, name)) for name in pair)
        if one is not None and other is not None and one[:2] == other[:2] and one.switched != other.switched:
            found.add((one.source, one.is_plus))
    return found
