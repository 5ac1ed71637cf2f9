"""Lead a feed through fuses and switches: plus through all, minus where there is a second pole."""

import math
from collections.abc import Mapping, Sequence
from typing import Literal, NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.edit import EditRefused
from wiring.edits.feed_colours import Colours, striped
from wiring.edits.laying import MOST_ON_TERMINAL, Laying
from wiring.edits.load_ends import gate_ends, second_ends
from wiring.edits.poles import Pole
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point

Poles = Literal[0, 1, 2]  # 0: two where a switch makes both together, else one


class Outlet(NamedTuple):
    """One pole to feed from: one terminal, or the many of a distribution block."""

    refs: tuple[TerminalRef, ...]
    colour: str


def through_gates(
    laying: Laying,
    gates: Sequence[Part],
    known: Mapping[TerminalRef, Pole],
    ways: tuple[Outlet, Outlet],
    colours: Colours,
    wanted: Poles,
) -> tuple[Outlet, Outlet]:
    """Return both ways out behind the selected gates: those that are fed already first, then the others."""
    plus, minus = ways
    passed = [g for g in gates if is_passed(g, laying.kinds, known)]
    if passed:
        plus = _behind_passed(laying, passed, known, plus, colours)
        returned = [r for g in passed for r in _ends_of_second(laying, g) if r in known]
        returned = [r for r in returned if not known[r].is_plus]
        if returned:
            last = max(returned, key=lambda r: known[r].steps)
            minus = Outlet((last,), colours.of(known[last]))
    fresh = [g for g in gates if g not in passed]
    # A fuse belongs right behind the supply; after it, whatever is nearest.
    fresh.sort(key=lambda g: laying.kinds[g.kind].behaviour == "switch")
    for gate in fresh:
        kind = laying.kinds[gate.kind]
        plus = _through(laying, gate_ends(gate, kind), plus, behind(kind, plus.colour, colours))
        if uses_both(gate, kind, wanted):
            minus = _through(laying, second_ends(gate, kind), minus, striped(minus.colour))
    return plus, minus


def uses_both(gate: Part, kind: Kind, wanted: Poles) -> bool:
    """Whether a switch is to break both conductors; by its kind when it only makes and breaks."""
    second = second_ends(gate, kind)
    if second is None or wanted == 1:
        return False
    return wanted == 2 or second[0].terminal == "23"


def take(laying: Laying, outlet: Outlet, near: Point) -> TerminalRef:
    """Return the terminal of an outlet for one more wire: an empty one near the place if there is one."""
    ref = min(outlet.refs, key=lambda r: (laying.count[r], round(math.dist(laying.at(r), near), 3)))
    if laying.count[ref] >= MOST_ON_TERMINAL and len(outlet.refs) > 1:
        name = laying.plan.parts[ref.part].designation
        raise EditRefused(
            f"-{name} has no terminal left for another wire; lay a chain instead or add a second block."
        )
    return ref


def is_passed(gate: Part, kinds: Mapping[str, Kind], known: Mapping[TerminalRef, Pole]) -> bool:
    """Whether a supply reaches a switch or fuse already."""
    return any(TerminalRef(gate.id, t.name) in known for t in kinds[gate.kind].terminals)


def behind(kind: Kind, colour: str, colours: Colours) -> str:
    """Return the colour behind a switch or fuse."""
    if kind.behaviour != "switch":
        return colour
    return colours.switched if colour in (colours.plus, colours.switched) else striped(colour)


def _through(
    laying: Laying, ends: tuple[TerminalRef, TerminalRef] | None, outlet: Outlet, behind: str
) -> Outlet:
    assert ends is not None
    laying.wire(take(laying, outlet, laying.at(ends[0])), ends[0], outlet.colour)
    return Outlet((ends[1],), behind)


def _behind_passed(
    laying: Laying,
    passed: Sequence[Part],
    known: Mapping[TerminalRef, Pole],
    plus: Outlet,
    colours: Colours,
) -> Outlet:
    last = max(
        (r for g in passed for r in _refs(laying, g) if r in known and known[r].is_plus),
        key=lambda r: known[r].steps,
        default=None,
    )
    if last is None:
        name = passed[0].designation
        raise EditRefused(f"-{name} lies in the return; select a switch or fuse on the plus side.")
    return Outlet((last,), behind(laying.kinds[laying.plan.parts[last.part].kind], plus.colour, colours))


def _ends_of_second(laying: Laying, gate: Part) -> tuple[TerminalRef, ...]:
    return second_ends(gate, laying.kinds[gate.kind]) or ()


def _refs(laying: Laying, part: Part) -> list[TerminalRef]:
    return [TerminalRef(part.id, t.name) for t in laying.kinds[part.kind].terminals]
