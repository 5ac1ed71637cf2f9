"""Which parts can be thrown in use, and into which positions that make an electrical difference.

Lasting positions go together in any way. Of buttons and contacts that spring back one is held at a time; of
turnouts and servos one moves at a time. What falls back only after a delay goes together with all the rest,
as what lasts does: another button may be pressed while it still runs. Fuses stay whole, plugs stay in, and
relays follow their coils.
"""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.compiled import CompiledPart, compiled_part
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

THROWN = frozenset({"switch", "stall_motor", "servo", "twin_coil"})
IN_MOTION = frozenset({"moving", "stalled"})
LASTING, HELD, MOVING = "lasting", "held", "moving"


class Choice(NamedTuple):
    """One position, and whether it lasts, is held, or is a movement."""

    position: str
    how: str


class Option(NamedTuple):
    """A part that can be thrown; its first choice lasts and is the present one where that lasts."""

    part: PartId
    choices: tuple[Choice, ...]


def options(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> tuple[Option, ...]:
    """Return every part that can be thrown to another electrical state, in plan order."""
    wired = {ref for wire in plan.wires.values() for ref in (wire.start, wire.end)}
    found = []
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None or kind.behaviour not in THROWN or len(kind.positions) < 2:
            continue
        choices = _choices(part, kind, positions.get(part.id, ""), wired)
        if len(choices) > 1:
            found.append(Option(part.id, choices))
    return tuple(found)


def relays(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[Option, ...]:
    """Return every relay with the two ways it can stand before its coil is asked."""
    return tuple(
        Option(part.id, tuple(Choice(p.name, LASTING) for p in kinds[part.kind].positions))
        for part in plan.parts.values()
        if part.kind in kinds and kinds[part.kind].behaviour == "relay"
    )


def _choices(part: Part, kind: Kind, present: str, wired: set[TerminalRef]) -> tuple[Choice, ...]:
    stands = compiled_part(part, kind, present).position
    how = {p.name: _how(kind.behaviour, p.name, p.momentary) for p in kind.positions}
    lasting_first = sorted(how, key=lambda name: (how[name] != LASTING, name != stands))
    told: dict[object, Choice] = {}
    for name in lasting_first:
        told.setdefault(_signature(compiled_part(part, kind, name), wired), Choice(name, how[name]))
    return tuple(told.values())


def _how(behaviour: str, name: str, momentary: bool) -> str:
    if behaviour in ("stall_motor", "servo") and name in IN_MOTION:
        return MOVING
    return HELD if momentary else LASTING


def _signature(compiled: CompiledPart, wired: set[TerminalRef]) -> object:
    """Return what the circuit notices of a part: contacts with a free end on either side are nothing."""
    rows = zip(compiled.laws, compiled.ends, compiled.rows, compiled.roles, strict=True)
    return tuple(
        (law, ends, row)
        for law, ends, row, role in rows
        if role != "contact" or all(compiled.refs[end] in wired for end in ends)
    )
