"""LEDs in series with nothing between them and nothing beside: all their current is the same."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from wiring.plan.names import PartId, TerminalRef
from wiring.studies.nets import Net


class Chain(NamedTuple):
    """LEDs one after the other, and the numbers of what both ends hang on; -1 for nothing."""

    leds: tuple[PartId, ...]
    one: int
    other: int


def led_chains(
    leds: Sequence[tuple[PartId, TerminalRef, TerminalRef]], drawing: Iterable[TerminalRef], net: Net
) -> tuple[Chain, ...]:
    """Return the chains of those LEDs (each with its two ends), in the order of their first LED.

    `drawing` holds all terminals through which current goes into a part, those of the LEDs among them: where
    more than two of them meet, current can part, and a chain ends.
    """
    met: dict[int, list[TerminalRef]] = {}
    for ref in dict.fromkeys(drawing):
        met.setdefault(net.group_of(ref), []).append(ref)
    across = {ref: other for _, a, k in leds for ref, other in ((a, k), (k, a))}
    found: list[Chain] = []
    seen: set[PartId] = set()
    for led, a, k in leds:
        if led in seen:
            continue
        before, one = _walked(a, met, across, net, {led})
        behind, other = _walked(k, met, across, net, {led, *before})
        chain = (*reversed(before), led, *behind)
        seen.update(chain)
        found.append(Chain(chain, one, other))
    return tuple(found)


def _walked(
    end: TerminalRef,
    met: dict[int, list[TerminalRef]],
    across: dict[TerminalRef, TerminalRef],
    net: Net,
    passed: set[PartId],
) -> tuple[list[PartId], int]:
    """Return the LEDs beyond an end of one, and what the last of them hangs on."""
    found: list[PartId] = []
    while True:
        group = net.group_of(end)
        here = met.get(group, []) if group >= 0 else []
        beyond = here[here[0] == end] if len(here) == 2 else None
        if beyond is None or beyond not in across or beyond.part in {*passed, *found}:
            return found, group
        found.append(beyond.part)
        end = across[beyond]
