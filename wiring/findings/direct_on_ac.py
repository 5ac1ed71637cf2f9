"""Parts made for DC that hang straight on AC."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wiring.findings.act import Act
from wiring.findings.asked import Asked, asked, settings_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.leds_across import DRAWING, refs_of
from wiring.findings.offers import rectifier_before, rectifier_behind
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names
from wiring.plan.names import PartId, TerminalRef
from wiring.studies.joints import LASTING, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.led_chains import led_chains
from wiring.studies.nets import Net
from wiring.studies.roles import LOADS, ONE_WAY, SOURCE_ENDS, THROUGH

ON_AC, FOR_DC = ("supply_ac",), (*ONE_WAY, "stall_motor")
PAST_RESISTORS = DRAWING - {"resistor"}


class _OnAC(NamedTuple):
    """What is made for DC and hangs on AC, and the one rectifier or the many that mend it."""

    parts: tuple[PartId, ...]
    supply: PartId  # behind which one rectifier serves all; "" where it cannot
    plus_leg: int  # 0 or 1: the terminal of that supply behind which plus belongs
    singly: bool  # each can have a rectifier of its own


_NOTHING = _OnAC((), "", 0, singly=False)


def find(situation: Situation) -> Iterator[Finding]:
    """Find DC parts that reach both legs of an AC supply past no diode, one finding for all of them."""
    supplies = asked(situation, ON_AC)
    if not supplies.ids:
        return
    net, near = situation.joints.net(LASTING | Link.RESISTOR), situation.joints.net(LASTING)
    some, loads = asked(situation, FOR_DC), asked(situation, LOADS)
    found = kept(_on_ac, supplies, some, asked(situation, PAST_RESISTORS), loads, net, near)
    if found.parts:
        parts = found.parts
        yield Finding(
            "dc-part-on-ac",
            Rank.DANGER,
            f"{part_names(situation.plan, parts)} {do(len(parts), 'is', 'are')} made for DC and "
            f"{do(len(parts), 'hangs', 'hang')} straight on AC.",
            "AC drives it backward half of the time: LEDs flicker and may die, motors only hum.",
            "Put a rectifier between the AC supply and the DC parts, or use a DC supply.",
            parts,
            act=_act(situation, found),
        )


def _act(situation: Situation, found: _OnAC) -> Act | None:
    if found.supply:
        return rectifier_behind(situation, found.supply, found.plus_leg)
    return rectifier_before(situation, found.parts) if found.singly else None


def _on_ac(supplies: Asked, some: Asked, drawing: Asked, loads: Asked, net: Net, near: Net) -> _OnAC:
    legs = {
        tuple(net.group_of(ref) for ref in ends(supply, SOURCE_ENDS[kind.behaviour])): supply
        for supply, kind in zip(supplies.ids, supplies.kinds, strict=True)
    }
    legs = {pair: supply for pair, supply in legs.items() if len(set(pair)) == 2 and -1 not in pair}
    if not legs:
        return _NOTHING
    sides = {frozenset(pair) for pair in legs}
    rows = list(zip(some.ids, some.kinds, strict=True))
    pairs = {part: ends(part, THROUGH[kind.behaviour][0]) for part, kind in rows}
    found = {part for part, pair in pairs.items() if frozenset(map(net.group_of, pair)) in sides}
    single = set(found)
    leds = [(part, *pairs[part]) for part, kind in rows if kind.behaviour == "led"]
    high = {part: net.group_of(pairs[part][0]) for part in found}  # on which leg plus is
    for chain in led_chains(leds, refs_of(drawing), net) if leds else ():
        if frozenset((chain.one, chain.other)) in sides:
            found |= {*chain.leds}
            # The chain begins at the end of its first LED that is its plus, unless that is turned round.
            lies = [net.group_of(pairs[led][0]) == chain.one for led in chain.leds[:1]]
            high |= dict.fromkeys(chain.leds, chain.one if all(lies) else chain.other)
    found -= _guarding_each_other(some, pairs, near)
    parts = tuple(part for part in some.ids if part in found)
    return _OnAC(parts, *_one_for_all(parts, some, high, loads, legs, net), singly=found <= single)


def _guarding_each_other(
    some: Asked, pairs: Mapping[PartId, tuple[TerminalRef, TerminalRef]], near: Net
) -> set[PartId]:
    """Return the LEDs back to back without resistors of their own: each bears the reverse of the other."""
    bare = settings_of(some, "series_ohm") <= 0
    ways: dict[tuple[int, int], list[PartId]] = {}
    for row, part, kind in some.rows(bare):
        if kind.behaviour == "led":
            one, other = map(near.group_of, pairs[some.ids[row]])
            ways.setdefault((one, other), []).append(part.id)
    return {
        led
        for (one, other), leds in ways.items()
        if one != other and len(ways.get((other, one), ())) == len(leds)
        for led in leds
    }


def _one_for_all(
    parts: tuple[PartId, ...],
    some: Asked,
    high: Mapping[PartId, int],
    loads: Asked,
    legs: Mapping[tuple[int, ...], PartId],
    net: Net,
) -> tuple[PartId, int]:
    """Return the supply behind which one rectifier serves all, and the leg of plus: all want DC, one way."""
    behaviour = {part: kind.behaviour for part, kind in zip(some.ids, some.kinds, strict=True)}
    wanted = {high.get(part, -1) for part in parts if behaviour[part] in ONE_WAY}
    served = {
        legs[pair] for pair in legs for part in parts if {*map(net.group_of, _ends(some, part))} & {*pair}
    }
    others = (part for part in loads.ids if part not in parts)
    if len(wanted) > 1 or len(served) != 1 or any(_hangs(loads, part, legs, net) for part in others):
        return "", 0
    supply = served.pop()
    pair = next(pair for pair in legs if legs[pair] == supply)
    return supply, pair.index(wanted.pop()) if wanted and wanted <= {*pair} else 0


def _ends(some: Asked, part: PartId) -> tuple[TerminalRef, TerminalRef]:
    kind = some.kinds[some.ids.index(part)]
    return ends(part, THROUGH[kind.behaviour][0])


def _hangs(loads: Asked, part: PartId, legs: Mapping[tuple[int, ...], PartId], net: Net) -> bool:
    """Whether a load draws on a leg of an AC supply."""
    return any(net.group_of(ref) in pair for pair in legs for ref in _ends(loads, part))
