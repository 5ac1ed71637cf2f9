"""The ways in which what is selected can be fed, each an edit with its words."""

from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import NamedTuple

from app.canvas.rerouting import with_new_wires_routed
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.feed import Manner, feed, shares
from wiring.edits.feed_beside import beside_each_other
from wiring.edits.feed_ends import Group, sorted_out
from wiring.edits.feed_gates import Poles, uses_both
from wiring.edits.feed_shares import Share
from wiring.edits.feed_tiers import Far
from wiring.edits.joined import remembered
from wiring.edits.load_ends import second_ends
from wiring.edits.poles import poles
from wiring.edits.tables import counted
from wiring.plan.designations import part_label
from wiring.plan.plan import Plan

ONE_POLE = ("Only plus switched", "The switch breaks the feed and leaves the return alone")
IN_SERIES = ("One switch after another", "All current goes through every switch; else each has its own loads")
NAMED = 4  # loads named in a share before the others are counted
BOTH_POLES = ("Both conductors switched", "The second pole of the switch breaks the return as well")


class FeedWay(NamedTuple):
    """One way to feed the selection."""

    words: str
    tip: str
    edit: Edit
    told: str = ""  # how it shares the loads out, where there is more than one way for them to go


def feed_title(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> str:
    """Return what the strip of choices says before them."""
    found = sorted_out(plan, kinds, ids)
    beside = beside_each_other(found.gates, kinds, poles(plan, kinds))
    fed = (*found.loads, *found.coils, *found.movers, *beside)
    return f"Feed {counted(len(fed), 'part')}"


def feed_ways(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> tuple[FeedWay, ...]:
    """Return the ways; EditRefused when nothing selected needs feeding or nothing feeds it."""
    from wiring.routing.way_length import way_lengths
    from wiring.studies.feeding import feeding_volts, groups, has_bare_leds

    chosen, far = tuple(ids), way_lengths(plan)
    alone: tuple[Group, ...] = ()
    strings: tuple[Group, ...] = ()
    if has_bare_leds(plan, kinds, chosen):
        volts = feeding_volts(plan, kinds, chosen)
        alone = groups(plan, kinds, chosen, volts)
        strings = groups(plan, kinds, chosen, volts, in_series=True)

    @cache  # most ways share the loads out alike
    def told(grouped: tuple[Group, ...], in_series: bool) -> str:
        return _shares_told(plan, kinds, chosen, grouped, in_series=in_series, far=far)

    def way(
        words: str,
        tip: str,
        manner: Manner = "chain",
        grouped: tuple[Group, ...] = alone,
        poles_wanted: Poles = 0,
        *,
        in_series: bool = False,
    ) -> FeedWay:
        edit = feed(
            chosen,
            manner,
            grouped,
            wanted_poles=poles_wanted,
            in_series=in_series,
            kinds=kinds,
            far=far,
        )
        return FeedWay(words, tip, remembered(with_new_wires_routed(edit, kinds)), told(grouped, in_series))

    ways = [
        way("Chain", "From part to part"),
        way("Star", "Two wires of its own for each part", "star"),
    ]
    found = sorted_out(plan, kinds, chosen)
    double = [g for g in found.gates if second_ends(g, kinds[g.kind]) is not None]
    if double:
        both = uses_both(double[0], kinds[double[0].kind], 0)
        ways.append(way(*(ONE_POLE if both else BOTH_POLES), poles_wanted=1 if both else 2))
    if any(len(group.parts) > 1 for group in strings):
        ways.append(
            way("LEDs in series", "As many LEDs behind one resistor as the volts allow", "chain", strings)
        )
    if found.loads and len(beside_each_other(found.gates, kinds, poles(plan, kinds))) > 1:
        ways.append(way(*IN_SERIES, in_series=True))
    ways[0].edit.apply(plan)  # refuses here, before anything is shown
    return tuple(ways)


def _shares_told(
    plan: Plan,
    kinds: Mapping[str, Kind],
    ids: tuple[str, ...],
    grouped: tuple[Group, ...],
    *,
    in_series: bool,
    far: Far,
) -> str:
    """Return how the loads are shared out among fuses and switches; nothing where they all go one way."""
    try:
        found = shares(plan, ids, grouped, in_series=in_series, kinds=kinds, far=far)
    except EditRefused:
        return ""  # told where the way itself is laid
    found = tuple(share for share in found if share.via or share.loads)
    if len(found) < 2 or not any(share.loads for share in found):
        return ""
    against = [part for share in found for part in share.by_scene]
    words = "; ".join(_share(plan, share) for share in found)
    if against:
        words += f". {_named(plan, against)} by scene, though another is nearer"
    return f"{words}."


def _share(plan: Plan, share: Share) -> str:
    """Return ``-F1 with -S1 feeds -E1, -E2 and 3 more``."""
    if not share.via:
        return f"straight from the feed: {_named(plan, share.loads)}"
    gates = " with ".join(part_label(plan, gate) for gate in share.via)
    return f"{gates} feeds {_named(plan, share.loads) if share.loads else 'nothing yet'}"


def _named(plan: Plan, parts: Sequence[str]) -> str:
    labels = [part_label(plan, part) for part in parts]
    if len(labels) > NAMED + 1:
        labels = [*labels[:NAMED], f"{len(labels) - NAMED} more"]
    return f"{', '.join(labels[:-1])} and {labels[-1]}" if len(labels) > 1 else labels[0]
