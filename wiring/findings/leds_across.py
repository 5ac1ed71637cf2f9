"""LEDs, alone or in chains, that wires and contacts alone join to both ends of a supply."""

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.asked import Asked, asked, settings_of
from wiring.findings.situation import Situation
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.studies.joints import LASTING, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.led_chains import Chain, led_chains
from wiring.studies.nets import Net
from wiring.studies.resistor_choice import ResistorChoice, series_resistor
from wiring.studies.roles import FUSES, SOURCE_ENDS, SOURCES, THROUGH
from wiring.studies.settings import number

LEDS = ("led",)
DRAWING = frozenset({*THROUGH, *SOURCE_ENDS}) - FUSES
BRIDGE_V = 1.4  # what a bridge rectifier takes at LED currents: twice 0.7 V; common practice, no source
LEFT = 0.1  # of the volts, for the resistor, so that it still holds the current; common practice, no source


class Across(NamedTuple):
    """LEDs in series straight across a supply."""

    leds: tuple[PartId, ...]
    source: PartId
    alternating: bool
    bare: bool  # none of them has a resistor of its own
    supply_v: float  # what it gives to a light load; on AC the peaks behind a rectifier
    forward_v: float  # of all together
    most_v: float  # of the one that needs the most
    wished_a: float

    @property
    def lights(self) -> bool:
        """Whether the supply has volts enough for all of them."""
        return self.supply_v > self.forward_v

    def resistor(self) -> ResistorChoice | None:
        """Return the resistor that is right for all of them; None if none will do."""
        return series_resistor(self.supply_v, self.forward_v, self.wished_a)

    def fewer(self) -> tuple[int, ResistorChoice | None]:
        """Return how many of them the supply lights in series, and the resistor for so many."""
        count = min(math.floor((1.0 - LEFT) * self.supply_v / self.most_v), len(self.leds))
        return count, series_resistor(self.supply_v, count * self.most_v, self.wished_a) if count else None


def all_across(situation: Situation) -> Iterator[Across]:
    """Walk the chains of LEDs, most of them of one, across a supply in any position, LED by LED."""
    net = situation.joints.net(LASTING | Link.MOMENTARY)
    leds, sources = asked(situation, LEDS), asked(situation, SOURCES)
    for chain, bare, source, kind in kept(_joined, leds, asked(situation, DRAWING), sources, net):
        supply_v = _light_v(situation, source, kind)
        alternating = kind.behaviour == "supply_ac"
        if alternating:
            supply_v = math.sqrt(2.0) * supply_v - BRIDGE_V
        if supply_v <= 0:
            continue
        parts = [(situation.plan.parts[led], _kind(situation, led)) for led in chain.leds]
        forward = [number(p, k, "forward_v") * number(p, k, "in_series") for p, k in parts]
        wished_a = min(number(p, k, "forward_a") * number(p, k, "in_parallel") for p, k in parts)
        yield Across(
            chain.leds, source, alternating, bare, supply_v, sum(forward), max(*forward, 1e-3), wished_a
        )


def _light_v(situation: Situation, source: PartId, kind: Kind) -> float:
    """Return the volts of a supply that has little to feed: an unregulated one gives more than is printed."""
    part, figure = situation.plan.parts[source], situation.figures.supplies.get(source)
    printed_v = figure.nominal_v if figure is not None else number(part, kind, "volts")
    return max(printed_v, number(part, kind, "open_v"))


def straight_across(situation: Situation) -> Iterator[tuple[Part, str]]:
    """Walk the bare LEDs across a supply, with the supply."""
    for chain in all_across(situation):
        if chain.bare:
            for led in chain.leds:
                yield situation.plan.parts[led], chain.source


def burning(situation: Situation, source: PartId) -> tuple[PartId, ...]:
    """Return the bare LEDs that take all that a supply can give."""
    chains = [c for c in all_across(situation) if c.source == source and c.bare and c.lights]
    return tuple(led for chain in chains for led in chain.leds)


def _kind(situation: Situation, part: PartId) -> Kind:
    return situation.kinds[situation.plan.parts[part].kind]


def _joined(
    leds: Asked, drawing: Asked, sources: Asked, net: Net
) -> Sequence[tuple[Chain, bool, PartId, Kind]]:
    """Return the chains across a supply, and whether they are bare; no single LED with its own resistor."""
    sides: dict[frozenset[int], tuple[PartId, Kind]] = {}
    for source, kind in zip(sources.ids, sources.kinds, strict=True) if leds.ids else ():
        pair = frozenset(net.group_of(ref) for ref in ends(source, SOURCE_ENDS[kind.behaviour]))
        if -1 not in pair:
            sides.setdefault(pair, (source, kind))
    if not sides:
        return ()
    both = [(led, *ends(led, THROUGH["led"][0])) for led in leds.ids]
    held = dict(zip(leds.ids, (settings_of(leds, "series_ohm") > 0).tolist(), strict=True))
    found: list[tuple[Chain, bool, PartId, Kind]] = []
    for chain in led_chains(both, refs_of(drawing), net):
        pair, bare = frozenset((chain.one, chain.other)), not any(held[led] for led in chain.leds)
        if pair in sides and (bare or len(chain.leds) > 1):
            found.append((chain, bare, *sides[pair]))
    return found


def refs_of(some: Asked) -> list[TerminalRef]:
    """Return the terminals through which current goes into parts, or out of them."""
    found: list[TerminalRef] = []
    for part, kind in zip(some.ids, some.kinds, strict=True):
        for pair in (*THROUGH.get(kind.behaviour, ()), SOURCE_ENDS.get(kind.behaviour)):
            found += ends(part, pair) if pair is not None else ()
    return found
