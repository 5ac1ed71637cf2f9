"""Feed these: lay both conductors from a supply, block or switch to many loads in one step."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Literal, NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.feed_beside import Branch, Lay, branches, switches_alone
from wiring.edits.feed_coils import feed_coils, stored_outlet
from wiring.edits.feed_ends import Group, Sorted, sorted_out
from wiring.edits.feed_gates import Outlet, Poles, take
from wiring.edits.feed_leads import Lead, Leads
from wiring.edits.feed_reversing import feed_reversing
from wiring.edits.feed_roots import roots
from wiring.edits.feed_shares import ROOT, Share, Sharing, shares_of
from wiring.edits.feed_tiers import Far, slots
from wiring.edits.laying import MOST_ON_TERMINAL, Laying
from wiring.edits.poles import poles
from wiring.edits.run_order import run_order
from wiring.edits.tables import counted, known_kinds
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point, on_plan
from wiring.plan.plan import Plan

Manner = Literal["chain", "star"]
GAP_MM = 5.0  # from a resistor's lead to the LED's
RESISTOR = "resistor"


class _Ends(NamedTuple):
    plus: Lead
    minus: Lead
    middle: Point  # between the places where wires land


def feed(
    ids: Iterable[str],
    manner: Manner = "chain",
    groups: Sequence[Group] = (),
    *,
    wanted_poles: Poles = 0,
    in_series: bool = False,
    kinds: Mapping[str, Kind] | None = None,
    far: Far = math.dist,
) -> Edit:
    """Wire every selected load that is not fed yet to the selected supply, block or switch.

    A chain goes from load to load, a star gives each its own two wires. `groups` name loads that are fed
    through a resistor, alone or in series, as :func:`wiring.studies.feeding.groups` works out; all others are
    fed as they are. Unwired fuses, switches and blocks among the ids are put between supply and loads; a
    switch of two poles breaks both conductors where `wanted_poles` is 2, or 0 and it does nothing else.
    Twin-coil motors go over the selected push buttons or centre-off switches, behind a selected discharge
    unit; stall motors over changeovers of two poles. Several fuses are fed side by side, and so are several
    switches; each load is behind one that feeds its scene already, else behind the one to which `far` tells
    the shortest way. With `in_series` all current goes through one switch after the other. What hangs on a
    resistor or plug is fed at its free end.
    """
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        leads = Leads(plan, known)
        found = sorted_out(plan, known, wanted, leads)
        if not (found.loads or found.coils or found.movers or switches_alone(plan, known, found)):
            raise EditRefused(
                "Nothing selected needs feeding; select lamps, buildings or motors that have no wires yet."
            )
        laying = Laying(plan, known, [p.id for part in found for p in part])
        sides = roots(laying, found, wanted_poles, in_series=in_series, far=far)
        if found.coils:
            stored = stored_outlet(laying, found.stores, sides.plus)
            feed_coils(laying, found.coils, found.throwers, stored, sides.minus)
        if found.movers:
            feed_reversing(laying, found.movers, found.reversers, sides.plus, sides.minus)
        lay = _chain if manner == "chain" else _star
        root = Branch(sides.plus, sides.minus)
        given = poles(plan, known)
        ways = branches(laying, sides.stems, root, sides.colours, given, wanted_poles, lay)
        there = slots(sides.stems)
        sharing = Sharing(plan, known, given, there, sides.colours, far)
        _lay_loads(laying, leads, _all_groups(found, groups), (*ways, root), sharing, lay)
        return laying.done()

    return Edit(f"Feed {counted(len(wanted), 'part')}", apply)


def shares(
    plan: Plan,
    ids: Iterable[str],
    groups: Sequence[Group] = (),
    *,
    in_series: bool = False,
    kinds: Mapping[str, Kind] | None = None,
    far: Far = math.dist,
) -> tuple[Share, ...]:
    """Return which loads a feed of those parts lays behind which fuse and switch; see :func:`feed`."""
    known = known_kinds(kinds)
    leads = Leads(plan, known)
    found = sorted_out(plan, known, dict.fromkeys(ids), leads)
    laying = Laying(plan, known, [p.id for part in found for p in part])
    sides = roots(laying, found, in_series=in_series, far=far)
    there = slots(sides.stems)
    sharing = Sharing(plan, known, poles(plan, known), there, sides.colours, far)
    chosen = _way_of_each(plan, leads, _all_groups(found, groups), sharing)
    own: dict[str, list[str]] = {}  # by the fuse on which they hang already
    for group, number, _ in chosen:
        lead = leads.of(group.parts[0])
        if number == ROOT and lead is not None and lead[0].at is not None:
            own.setdefault(lead[0].at.part, []).extend(group.parts)
    return *shares_of(sharing, chosen), *(Share((fuse,), tuple(loads)) for fuse, loads in own.items())


def _way_of_each(
    plan: Plan, leads: Leads, groups: Iterable[Group], sharing: Sharing
) -> list[tuple[Group, int, bool]]:
    """Return the number of each group's way out, and whether its scene decided; what is joined stays so."""
    by_net: dict[TerminalRef, tuple[int, bool]] = {}
    found = []
    for group in groups:
        lead = leads.of(group.parts[0])
        assert lead is not None
        chosen = sharing.choose(plan.parts[group.parts[0]], lead[0])
        found.append((group, *by_net.setdefault(lead[0].net, chosen)))
    return found


def _lay_loads(
    laying: Laying,
    leads: Leads,
    groups: Iterable[Group],
    ways: Sequence[Branch],
    sharing: Sharing,
    lay: Lay,
) -> None:
    """Lay both conductors of all loads, each behind its way out."""
    plus: dict[Outlet, list[_Ends]] = {}
    minus: dict[Outlet, list[_Ends]] = {}
    for group, number, _ in _way_of_each(laying.plan, leads, groups, sharing):
        way = ways[number]
        ends = _group_ends(laying, leads, group, way.plus.colour)
        plus.setdefault(way.plus, []).append(ends)
        minus.setdefault(way.minus, []).append(ends)
    for outlet, own in plus.items():
        lay(laying, outlet, _once(e.plus for e in _in_order(own, laying.at(outlet.refs[0]))))
    begin = laying.at(ways[0].plus.refs[0])  # back along the way out
    for outlet, own in minus.items():
        lay(laying, outlet, _once(e.minus for e in _in_order(own, begin)))


def _in_order(ends: Sequence[_Ends], begin: Point) -> list[_Ends]:
    return [ends[i] for i in run_order([e.middle for e in ends], begin)]


def _all_groups(found: Sorted, groups: Sequence[Group]) -> Iterator[Group]:
    waiting = {part.id for part in found.loads}
    for group in groups:
        if waiting.issuperset(group.parts) and group.parts:
            waiting -= set(group.parts)
            yield group
    yield from (Group((part.id,)) for part in found.loads if part.id in waiting)


def _group_ends(laying: Laying, leads: Leads, group: Group, colour: str) -> _Ends:
    """Return plus and minus of a group; sets down its resistor and joins what is in series."""
    pairs = []
    for part_id in group.parts:
        pair = leads.of(part_id)
        assert pair is not None
        pairs.append(pair)
    plus, minus = pairs[0][0], pairs[-1][1]
    middle = _middle(laying, [end.at for end in (plus, minus) if end.at is not None])
    if group.ohms > 0 and plus.at is not None:
        resistor = _resistor(laying, laying.plan.parts[plus.at.part], plus.at, group)
        laying.wire(TerminalRef(resistor.id, "2"), plus.at, colour)
        plus = plus._replace(at=TerminalRef(resistor.id, "1"))
    for (_, before), (after, _) in pairwise(pairs):
        if before.at is not None and after.at is not None:
            laying.wire(before.at, after.at, "YE")
    return _Ends(plus, minus, middle)


def _once(leads: Iterable[Lead]) -> list[TerminalRef]:
    """Return where wires land: one place for all that hangs together, none for what is fed."""
    landings = {lead.net: lead.at for lead in reversed(list(leads)) if lead.at is not None}
    return list(landings.values())[::-1]


def _resistor(laying: Laying, led: Part, plus: TerminalRef, group: Group) -> Part:
    """Set a resistor down before an LED's plus, or beside that where something stands."""
    kind = laying.kinds[RESISTOR]
    terminal = laying.kinds[led.kind].terminal(plus.terminal)
    reach = max(abs(t.x_mm) for t in kind.terminals)
    out = math.copysign(1.0, terminal.x_mm or -1.0)
    x_mm = terminal.x_mm + out * (GAP_MM + reach)
    turn = led.turn_deg + (0.0 if out < 0 else 180.0)
    settings = {"resistance": group.ohms, "rated_power": group.watts}
    half = kind.height_mm / 2 + 1.5
    for aside in (0.0, -10.0, 10.0, -18.0, 18.0, -26.0, 26.0):
        at = on_plan(led, x_mm, terminal.y_mm + aside)
        if laying.is_free((at[0] - reach - 1, at[1] - half, at[0] + reach + 1, at[1] + half)):
            return laying.part(kind, at, turn, led, settings)
    return laying.part(kind, on_plan(led, x_mm, terminal.y_mm), turn, led, settings)


def _middle(laying: Laying, refs: Sequence[TerminalRef]) -> Point:
    places = [laying.at(ref) for ref in refs]
    return sum(x for x, _ in places) / len(places), sum(y for _, y in places) / len(places)


def _chain(laying: Laying, outlet: Outlet, ends: Sequence[TerminalRef]) -> None:
    if not ends:
        return
    laying.wire(take(laying, outlet, laying.at(ends[0])), ends[0], outlet.colour)
    for a, b in pairwise(ends):
        laying.wire(a, b, outlet.colour)


def _star(laying: Laying, outlet: Outlet, ends: Sequence[TerminalRef]) -> None:
    left = sum(max(MOST_ON_TERMINAL - laying.count[ref], 0) for ref in outlet.refs)
    if left < len(ends):
        name = laying.plan.parts[outlet.refs[0].part].designation
        raise EditRefused(
            f"-{name} has room for {counted(left, 'more wire')} only, and a star needs {len(ends)}; choose a "
            "chain, or select a larger distribution block as well."
        )
    for end in ends:
        laying.wire(take(laying, outlet, laying.at(end)), end, outlet.colour)
