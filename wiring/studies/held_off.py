"""Which switches, relays and other contacts keep a battery from being drawn from, as they stand."""

from collections.abc import Iterator, Mapping

from wiring.catalogue.kind import Kind
from wiring.circuit.solve import solve
from wiring.plan.designations import part_label
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.joints import Joints, Link, ends
from wiring.studies.kept_joints import kept_joints
from wiring.studies.roles import SOURCE_ENDS

NAMED = 3
_NOW = Link.WIRE | Link.CLOSED | Link.FUSE | Link.RESISTOR | Link.DIODE | Link.LOAD
_THROWN = _NOW | Link.OPEN | Link.MOMENTARY


def held_off(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, battery: PartId
) -> tuple[PartId, ...]:
    """Return the parts whose contacts, next to the battery's two ends, would close a way between these.

    None where something is joined to both ends already, or no contact would join them.
    """
    joints = kept_joints(plan, kinds, settled_relays(plan, kinds, positions))
    plus, minus = ends(battery, SOURCE_ENDS[kinds[plan.parts[battery].kind].behaviour])
    if minus in joints.reach((plus,), _NOW).terminals:
        return ()
    found = {*_open_towards(joints, plus, minus), *_open_towards(joints, minus, plus)}
    return tuple(part for part in plan.parts if part in found)


def settled_relays(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Positions:
    """Return the positions with each relay as its coil's volts have it: another supply may hold it."""
    relays = [p.id for p in plan.parts.values() if p.kind in kinds and kinds[p.kind].behaviour == "relay"]
    if not relays:
        return positions
    figures = solve(plan, kinds, positions).parts
    return {**positions, **{relay: figures[relay].state for relay in relays if relay in figures}}


def held_off_words(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, parts: tuple[PartId, ...]
) -> str:
    """Return that so many contacts are open: ``-S1 is off and -K1 has not pulled in``."""
    settled = settled_relays(plan, kinds, positions)
    said = [_stands(plan, kinds, settled, part) for part in parts[:NAMED]]
    more = len(parts) - NAMED
    if more > 0:
        said.append(f"{more} more {'keeps' if more == 1 else 'keep'} it off")
    return f"{', '.join(said[:-1])} and {said[-1]}" if len(said) > 1 else "".join(said)


def _stands(plan: Plan, kinds: Mapping[str, Kind], positions: Positions, part: PartId) -> str:
    position, kind = positions.get(part, ""), kinds[plan.parts[part].kind]
    label = plan.parts[part].label.strip()[:32]
    name = part_label(plan, part) + (f" “{label}”" if label else "")
    if kind.behaviour == "relay":
        return f"{name} has pulled in" if position == "operated" else f"{name} has not pulled in"
    if kind.behaviour == "switch" and position == "released":
        return f"{name} is not pressed"
    if kind.behaviour == "pairs":
        return f"{name} is apart"
    if kind.behaviour == "stall_motor":
        return f"the contacts of {name} stand at “{position or kind.in_use or kind.positions[0].name}”"
    return f"{name} is off" if position in ("", "off") else f"{name} stands at “{position}”"


def _open_towards(joints: Joints, start: TerminalRef, goal: TerminalRef) -> Iterator[PartId]:
    """Yield the parts whose open contacts lead on from what is joined to one end to the other end."""
    here = joints.reach((start,), _NOW).terminals
    beyond = _beyond(joints, here, goal)
    for ref in here:
        for to, link, via in joints.edges.get(ref, ()):
            if link in (Link.OPEN, Link.MOMENTARY) and to in beyond:
                yield via


def _beyond(joints: Joints, here: frozenset[TerminalRef], goal: TerminalRef) -> set[TerminalRef]:
    """Return what is joined to the goal when every contact closes, not by way of what is here already."""
    found, waiting = {goal}, [goal]
    for ref in waiting:  # grows while it is walked
        for to, link, _ in joints.edges.get(ref, ()):
            if link & _THROWN and to not in found and to not in here:
                found.add(to)
                waiting.append(to)
    return found
