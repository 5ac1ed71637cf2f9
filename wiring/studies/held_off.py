"""Which switches keep a battery from being drawn from, as they stand."""

from collections.abc import Iterator, Mapping

from wiring.catalogue.kind import Kind
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
    """Return the switches next to the battery's two ends that would close a way from one to the other.

    None where something is joined to both ends already, or no switch would join them.
    """
    joints = kept_joints(plan, kinds, positions)
    plus, minus = ends(battery, SOURCE_ENDS[kinds[plan.parts[battery].kind].behaviour])
    if minus in joints.reach((plus,), _NOW).terminals:
        return ()
    found = {*_open_towards(joints, plus, minus), *_open_towards(joints, minus, plus)}
    return tuple(part for part in plan.parts if part in found)


def held_off_words(plan: Plan, positions: Positions, switches: tuple[PartId, ...]) -> str:
    """Return that so many switches are off: ``-S1 is off and -S2 stands at “down”``."""
    said = [_stands(plan, positions, part) for part in switches[:NAMED]]
    more = len(switches) - NAMED
    if more > 0:
        said.append(f"{more} more {'keeps' if more == 1 else 'keep'} it off")
    return f"{', '.join(said[:-1])} and {said[-1]}" if len(said) > 1 else "".join(said)


def _stands(plan: Plan, positions: Positions, part: PartId) -> str:
    position = positions.get(part, "")
    label = plan.parts[part].label.strip()[:32]
    name = part_label(plan, part) + (f" “{label}”" if label else "")
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
