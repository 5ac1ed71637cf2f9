"""The ways in which what is selected can be fed, each an edit with its words."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from app.canvas.rerouting import with_new_wires_routed
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.feed import feed
from wiring.edits.feed_beside import beside_each_other
from wiring.edits.feed_ends import Group, sorted_out
from wiring.edits.feed_gates import uses_both
from wiring.edits.joined import remembered
from wiring.edits.load_ends import second_ends
from wiring.edits.poles import poles
from wiring.edits.tables import counted
from wiring.plan.plan import Plan

ONE_POLE = ("Only plus switched", "The switch breaks the feed and leaves the return alone")
IN_SERIES = ("One switch after another", "All current goes through every switch; else each has its own loads")
BOTH_POLES = ("Both conductors switched", "The second pole of the switch breaks the return as well")


class FeedWay(NamedTuple):
    """One way to feed the selection."""

    words: str
    tip: str
    edit: Edit


def feed_title(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> str:
    """Return what the strip of choices says before them."""
    found = sorted_out(plan, kinds, ids)
    beside = beside_each_other(found.gates, kinds, poles(plan, kinds))
    fed = (*found.loads, *found.coils, *found.movers, *beside)
    return f"Feed {counted(len(fed), 'part')}"


def feed_ways(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> tuple[FeedWay, ...]:
    """Return the ways; EditRefused when nothing selected needs feeding or nothing feeds it."""
    from wiring.studies.feeding import feeding_volts, groups, has_bare_leds

    chosen = tuple(ids)
    alone: tuple[Group, ...] = ()
    strings: tuple[Group, ...] = ()
    if has_bare_leds(plan, kinds, chosen):
        volts = feeding_volts(plan, kinds, chosen)
        alone = groups(plan, kinds, chosen, volts)
        strings = groups(plan, kinds, chosen, volts, in_series=True)
    ways = [
        FeedWay("Chain", "From part to part", feed(chosen, "chain", alone, kinds=kinds)),
        FeedWay("Star", "Two wires of its own for each part", feed(chosen, "star", alone, kinds=kinds)),
    ]
    found = sorted_out(plan, kinds, chosen)
    gates, loads = found.gates, found.loads
    double = [g for g in gates if second_ends(g, kinds[g.kind]) is not None]
    if double:
        both = uses_both(double[0], kinds[double[0].kind], 0)
        other = feed(chosen, "chain", alone, wanted_poles=1 if both else 2, kinds=kinds)
        words, tip = ONE_POLE if both else BOTH_POLES
        ways.append(FeedWay(words, tip, other))
    if any(len(group.parts) > 1 for group in strings):
        ways.append(
            FeedWay(
                "LEDs in series",
                "As many LEDs behind one resistor as the volts allow",
                feed(chosen, "chain", strings, kinds=kinds),
            )
        )
    if loads and len(beside_each_other(gates, kinds, poles(plan, kinds))) > 1:
        words, tip = IN_SERIES
        ways.append(FeedWay(words, tip, feed(chosen, "chain", alone, in_series=True, kinds=kinds)))
    ways = [way._replace(edit=remembered(with_new_wires_routed(way.edit, kinds))) for way in ways]
    ways[0].edit.apply(plan)  # refuses here, before anything is shown
    return tuple(ways)
