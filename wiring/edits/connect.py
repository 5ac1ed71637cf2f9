"""Draw a wire between two terminals, or lay one end of a wire on another terminal."""

from collections.abc import Iterable, Mapping
from typing import Literal

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import (
    known_kinds,
    ref_words,
    rounded_mm,
    tidy_colour,
    tidy_size,
    wire_of,
    with_records,
)
from wiring.plan.designations import next_numbered
from wiring.plan.names import TerminalRef
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


def connect(
    start: TerminalRef,
    end: TerminalRef,
    bends: Iterable[Point] = (),
    size: str | None = None,
    colour: str | None = None,
    *,
    solid: bool = False,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Draw a wire; without a size it takes the plan's usual one, without a colour black."""
    corners = tuple(bends)

    def apply(plan: Plan) -> Plan:
        wire = Wire(
            id=f"w{plan.next_number}",
            label=next_wire_label(plan),
            start=TerminalRef(*start),
            end=TerminalRef(*end),
            size=tidy_size(size or plan.habits.wire_size),
            colour=tidy_colour(colour or "BK"),
            solid=solid,
            bends=tuple((rounded_mm(x), rounded_mm(y)) for x, y in corners),
        )
        refuse_poor_ends(plan, wire)
        return with_records(plan, wires=[wire], kinds=known_kinds(kinds), next_number=plan.next_number + 1)

    return Edit("Draw wire", apply)


def reconnect(
    wire_id: str,
    which: Literal["start", "end"],
    to: TerminalRef,
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Lay the start or the end of a wire on another terminal."""

    def apply(plan: Plan) -> Plan:
        old = wire_of(plan, wire_id)
        new = msgspec.structs.replace(old, **{which: TerminalRef(*to)})
        if new == old:
            return plan
        new = msgspec.structs.replace(new, built=False)  # the old end has to come off first
        refuse_poor_ends(plan, new)
        return with_records(plan, wires=[new], kinds=known_kinds(kinds))

    return Edit("Reconnect wire", apply)


def next_wire_label(plan: Plan) -> str:
    """Return W with the lowest number that no wire of the plan has."""
    return next_numbered("W", {w.label for w in plan.wires.values()})


def refuse_poor_ends(plan: Plan, wire: Wire) -> None:
    """Refuse a wire that goes nowhere, or lies beside one just like it."""
    for ref in (wire.start, wire.end):
        if ref.part not in plan.parts:
            raise EditRefused(f"The part {ref.part} is no longer in the plan; start the wire again.")
    if wire.start == wire.end:
        raise EditRefused(
            f"A wire must lead to another terminal; this one only touches {ref_words(plan, wire.start)}."
        )
    for other in plan.wires.values():
        if other.id != wire.id and _looks(other) == _looks(wire):
            raise EditRefused(
                f"Wire -{other.label} already joins {ref_words(plan, wire.start)} and "
                f"{ref_words(plan, wire.end)}; for a second one in parallel choose another size or colour."
            )


def _looks(wire: Wire) -> tuple[frozenset[TerminalRef], str, str, bool]:
    return frozenset((wire.start, wire.end)), wire.size, wire.colour, wire.solid
