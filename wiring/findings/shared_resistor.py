"""Unlike LEDs side by side behind one resistor: those that need the fewest volts take all the current."""

from collections.abc import Iterator, Mapping

from wiring.findings.asked import Asked, asked, settings_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names
from wiring.plan.names import PartId
from wiring.studies.joints import STIFF, ends
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.roles import THROUGH
from wiring.studies.settings import number

LEDS = ("led",)
STARVED = 0.1  # of the current that one beside it takes; common practice, no source


def find(situation: Situation) -> Iterator[Finding]:
    """Find LEDs without resistors of their own that stay dark beside others that take their current."""
    leds = asked(situation, LEDS)
    if len(leds.ids) < 2:
        return
    plan, figures = situation.plan, situation.figures.parts
    for beside in kept(_side_by_side, leds, situation.joints.net(STIFF)).values():
        amps = {led: max(figures[led].current_a, 0.0) for led in beside if led in figures}
        most_a = max(amps.values(), default=0.0)
        lit = tuple(led for led, a in amps.items() if a > STARVED * most_a)
        dark = tuple(led for led, a in amps.items() if a <= STARVED * most_a)
        wished_a = min((_wished_a(situation, led) for led in lit), default=0.0)
        if dark and most_a > STARVED * wished_a > 0.0:
            yield Finding(
                "leds-share-resistor",
                Rank.WEAK,
                f"{part_names(plan, dark)} {do(len(dark), 'stays', 'stay')} dark beside "
                f"{part_names(plan, lit)}: one resistor is before all of them.",
                "LEDs side by side have the same volts; those that need the fewest take all the current.",
                f"Give each a resistor of its own, or put {do(len(dark), 'it', 'them')} in series instead.",
                (*dark, *lit),
            )


def _side_by_side(leds: Asked, net: Net) -> Mapping[tuple[int, int], tuple[PartId, ...]]:
    """Return the LEDs without own resistors that are joined at both ends, the same way round."""
    found: dict[tuple[int, int], list[PartId]] = {}
    for _, part, _kind in leds.rows(settings_of(leds, "series_ohm") <= 0):
        one, other = map(net.group_of, ends(part.id, THROUGH["led"][0]))
        if -1 not in (one, other) and one != other:
            found.setdefault((one, other), []).append(part.id)
    return {pair: tuple(some) for pair, some in found.items() if len(some) > 1}


def _wished_a(situation: Situation, led: PartId) -> float:
    part = situation.plan.parts[led]
    kind = situation.kinds[part.kind]
    return number(part, kind, "forward_a") * number(part, kind, "in_parallel")
