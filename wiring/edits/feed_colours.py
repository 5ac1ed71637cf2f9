"""The colour rule of a circuit: every supply its own pair, a stripe behind a switch. Letters of IEC 60757.

Which colour stands for what on low voltage is common practice, no source. Green-and-yellow is never used, and
AC has blue, so that nobody takes its two legs for plus and minus. The builder's own colours come first.
"""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.poles import Pole, source_ends
from wiring.plan.circuit_colours import CircuitColours
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan

DIRECT = (("RD", "BK"), ("OG", "GY"), ("YE", "BN"), ("VT", "WH"))  # first supply of the plan, second ...
ALTERNATING = ("BU", "BUWH")
STRIPE = "WH"
SECOND_LEG_TAKEN = "TQ"  # behind a switch where the striped colour is the other leg's


class Colours(NamedTuple):
    """Colours of the conductors of one supply."""

    plus: str
    minus: str
    switched: str  # plus behind a switch

    def of(self, pole: Pole) -> str:
        """Return the colour of a wire that is joined to that pole."""
        if pole.is_plus:
            return self.switched if pole.switched else self.plus
        return striped(self.minus) if pole.switched else self.minus


def striped(colour: str) -> str:
    """Return a colour with a white stripe; white and what has a stripe already stay."""
    return colour + STRIPE if len(colour) == 2 and colour != STRIPE else colour


def feed_colours(plan: Plan, kinds: Mapping[str, Kind], source: PartId) -> Colours:
    """Return the colours of a supply: the builder's, else those of the wires it has, else the usual ones."""
    return _colours(plan, kinds, source, _at_ends(plan, {source}), usual_pair(plan, kinds, source))


def colours_of_all(plan: Plan, kinds: Mapping[str, Kind]) -> dict[PartId, Colours]:
    """Return the same of every supply, in plan order; the wires are walked once for all."""
    there = supplies(plan, kinds)
    laid = _at_ends(plan, set(there))
    return {
        source: _colours(plan, kinds, source, laid, _usual(plan, kinds, source, place))
        for place, source in enumerate(there)
    }


def _at_ends(plan: Plan, sources: set[PartId]) -> dict[TerminalRef, str]:
    """Return the colour of the first wire on each terminal of those supplies."""
    found: dict[TerminalRef, str] = {}
    for wire in plan.wires.values():
        for ref in (wire.start, wire.end):
            if ref.part in sources:
                found.setdefault(ref, wire.colour)
    return found


def _colours(
    plan: Plan,
    kinds: Mapping[str, Kind],
    source: PartId,
    laid: Mapping[TerminalRef, str],
    usual: tuple[str, str],
) -> Colours:
    ends = source_ends(kinds[plan.parts[source].kind]) or ("+", "-")
    chosen = plan.circuit_colours.get(source, CircuitColours())
    plus, minus = (
        own or laid.get(TerminalRef(source, name), first)
        for name, own, first in zip(ends, (chosen.plus, chosen.minus), usual, strict=True)
    )
    behind = striped(plus)
    return Colours(plus, minus, chosen.switched or (behind if behind != minus else SECOND_LEG_TAKEN))


def usual_pair(plan: Plan, kinds: Mapping[str, Kind], source: PartId) -> tuple[str, str]:
    """Return plus and minus that a supply has by its place among the supplies of the plan."""
    return _usual(plan, kinds, source, supplies(plan, kinds).index(source))


def _usual(plan: Plan, kinds: Mapping[str, Kind], source: PartId, place: int) -> tuple[str, str]:
    ends = source_ends(kinds[plan.parts[source].kind]) or ("+", "-")
    return ALTERNATING if ends[0].startswith("~") else DIRECT[place % len(DIRECT)]


def supplies(plan: Plan, kinds: Mapping[str, Kind]) -> list[PartId]:
    """Return the supplies and batteries of a plan, in plan order."""
    return [p.id for p in plan.parts.values() if p.kind in kinds and source_ends(kinds[p.kind])]
