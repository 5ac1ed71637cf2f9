"""Switches of one pole that break the return and leave the feed on.

Contacts belong into the conductor that is not the common one: IEC 60204-1, control circuits (from memory).
Where all switches of a supply stand in its return, plus is the common one and that is well.
"""

from collections.abc import Iterator, Mapping

from wiring.findings.asked import Asked, asked
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_name, part_names
from wiring.plan.names import PartId, TerminalRef
from wiring.studies.joints import LASTING, Joints, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.roles import SOURCE_ENDS

SWITCHES, DIRECT = ("switch",), ("supply_regulated", "supply_unregulated", "battery")


def find(situation: Situation) -> Iterator[Finding]:
    """Find the switches in the return of each DC supply, where others of it, or none, stand in plus."""
    switches, supplies = asked(situation, SWITCHES), asked(situation, DIRECT)
    if not switches.ids or not supplies.ids:
        return
    net = situation.joints.net(LASTING | Link.MOMENTARY)
    by_supply = kept(_in_return, switches, supplies, net, situation.joints)
    for supply, found in by_supply.items():
        many = len(found)
        yield Finding(
            "switch-in-return",
            Rank.NOTE,
            f"{part_names(situation.plan, found)} {do(many, 'breaks', 'break')} the return to "
            f"{part_name(situation.plan, supply)}, and plus stays on.",
            "What is switched so keeps its volts when off: any other way back, such as a shared return, "
            "lights it.",
            f"Put {do(many, 'the switch', 'each switch')} into plus, or let a second pole break both.",
            found,
        )


def _in_return(
    switches: Asked, supplies: Asked, net: Net, joints: Joints
) -> Mapping[PartId, tuple[PartId, ...]]:
    """Return the switches in the return alone; contacts count as closed, so a reverser joins both poles."""
    rows = zip(supplies.ids, supplies.kinds, strict=True)
    leads = {supply: ends(supply, SOURCE_ENDS[kind.behaviour]) for supply, kind in rows}
    poles = {
        supply: (net.group_of(both[0]), net.group_of(both[1]))
        for supply, both in leads.items()
        if all(_wired(joints, ref) for ref in both)
    }
    sides = {
        switch: {
            net.group_of(TerminalRef(switch, pair[0]))
            for position in kind.positions
            for pair in position.closes
            if all(_wired(joints, TerminalRef(switch, name)) for name in pair)
        }
        for switch, kind in zip(switches.ids, switches.kinds, strict=True)
    }
    found = {}
    for supply, (plus, minus) in poles.items():
        if plus == minus:
            continue
        in_return = tuple(
            switch for switch, groups in sides.items() if minus in groups and plus not in groups
        )
        if len(in_return) == 1 or (in_return and any(plus in groups for groups in sides.values())):
            found[supply] = in_return
    return found


def _wired(joints: Joints, ref: TerminalRef) -> bool:
    return any(edge.link == Link.WIRE for edge in joints.edges.get(ref, ()))
