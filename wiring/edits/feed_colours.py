"""The colour rule of a circuit: every supply its own pair, a stripe behind a switch. Letters of IEC 60757.

Which colour stands for what on low voltage is common practice, no source. Green-and-yellow is never used, and
AC has blue, so that nobody takes its two legs for plus and minus. The builder's own colours come first.
"""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.poles import Pole, source_ends
from wiring.plan.circuit_colours import CircuitColours
from wiring.plan.names import PartId
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
    kind = kinds[plan.parts[source].kind]
    ends = source_ends(kind) or ("+", "-")
    chosen = plan.circuit_colours.get(source, CircuitColours())
    found = []
    pair = zip(ends, (chosen.plus, chosen.minus), usual_pair(plan, kinds, source), strict=True)
    for name, own, usual in pair:
        there = (w.colour for w in plan.wires.values() if (source, name) in (w.start, w.end))
        found.append(own or next(there, usual))
    behind = striped(found[0])
    switched = chosen.switched or (behind if behind != found[1] else SECOND_LEG_TAKEN)
    return Colours(found[0], found[1], switched)


def usual_pair(plan: Plan, kinds: Mapping[str, Kind], source: PartId) -> tuple[str, str]:
    """Return plus and minus that a supply has by its place among the supplies of the plan."""
    ends = source_ends(kinds[plan.parts[source].kind]) or ("+", "-")
    if ends[0].startswith("~"):
        return ALTERNATING
    return DIRECT[supplies(plan, kinds).index(source) % len(DIRECT)]


def supplies(plan: Plan, kinds: Mapping[str, Kind]) -> list[PartId]:
    """Return the supplies and batteries of a plan, in plan order."""
    return [p.id for p in plan.parts.values() if p.kind in kinds and source_ends(kinds[p.kind])]
