"""The colour rule of a feed: every supply its own pair, a stripe behind a switch. Letters of IEC 60757.

Which colour stands for what on low voltage is common practice, no source. Green-and-yellow is never used, and
AC has blue, so that nobody takes its two legs for plus and minus.
"""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.poles import source_ends
from wiring.plan.names import PartId
from wiring.plan.plan import Plan

DIRECT = (("RD", "BK"), ("OG", "GY"), ("YE", "BN"), ("VT", "WH"))  # first supply of the plan, second ...
ALTERNATING = ("BU", "BUWH")
STRIPE = "WH"


class Colours(NamedTuple):
    """Colours of the two conductors of one supply."""

    plus: str
    minus: str

    def behind(self, kind: Kind, colour: str) -> str:
        """Return the colour behind a switch or fuse: striped once behind a switch, else unchanged."""
        return colour + STRIPE if kind.behaviour == "switch" and len(colour) == 2 else colour


def feed_colours(plan: Plan, kinds: Mapping[str, Kind], source: PartId) -> Colours:
    """Return the colours of a supply: those of the wires it has, else by its place among the supplies."""
    kind = kinds[plan.parts[source].kind]
    ends = source_ends(kind) or ("+", "-")
    supplies = [p.id for p in plan.parts.values() if p.kind in kinds and source_ends(kinds[p.kind])]
    usual = ALTERNATING if ends[0].startswith("~") else DIRECT[supplies.index(source) % len(DIRECT)]
    found = []
    for name, colour in zip(ends, usual, strict=True):
        there = (w.colour for w in plan.wires.values() if (source, name) in (w.start, w.end))
        found.append(next(there, colour))
    return Colours(*found)
