"""Say which colours a circuit has, and give all its wires the colours the rule asks for."""

from collections.abc import Iterable, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.feed_colours import feed_colours, supplies
from wiring.edits.poles import poles
from wiring.edits.set_plan import set_plan
from wiring.edits.tables import frozen, known_kinds, part_of, tidy_colour, with_records
from wiring.plan.circuit_colours import CircuitColours
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


def set_circuit_colours(supply: PartId, **colours: str) -> Edit:
    """Set plus, minus or switched of a supply, as letters of IEC 60757; "" goes back to the usual one."""
    unknown = colours.keys() - set(CircuitColours.__struct_fields__)
    if unknown:
        raise TypeError(f"a circuit has no colour {', '.join(sorted(unknown))} to set")

    def apply(plan: Plan) -> Plan:
        part_of(plan, supply)
        given = {name: tidy_colour(letters) if letters else "" for name, letters in colours.items()}
        old = plan.circuit_colours.get(supply, CircuitColours())
        table = {**plan.circuit_colours, supply: msgspec.structs.replace(old, **given)}
        kept = {i: c for i, c in table.items() if c != CircuitColours()}
        return set_plan(circuit_colours=frozen(kept)).apply(plan)

    return Edit("Set wire colours", apply)


def recolour(
    ids: Iterable[WireId] | None = None,
    *,
    built_too: bool = False,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Give wires the colour of their supply by what they carry; without ids, all wires of the plan.

    Wires marked as built keep theirs unless asked for, and so do those that are joined to no one pole.
    """
    wanted = None if ids is None else frozenset(ids)

    def apply(plan: Plan) -> Plan:
        chosen = [w for w in plan.wires.values() if wanted is None or w.id in wanted]
        return with_records(plan, wires=by_rule(plan, known_kinds(kinds), chosen, built_too=built_too))

    return Edit("Colour wires by rule", apply)


def by_rule(
    plan: Plan, kinds: Mapping[str, Kind], wires: Iterable[Wire], *, built_too: bool = False
) -> list[Wire]:
    """Return those of the wires whose colour is not what the rule asks for, in the right colour."""
    known = poles(plan, kinds)
    colours = {i: feed_colours(plan, kinds, i) for i in supplies(plan, kinds)}
    changed = []
    for wire in wires:
        pole = known.get(wire.start)
        other = known.get(wire.end)
        if pole is None or other is None or pole[:2] != other[:2] or (wire.built and not built_too):
            continue
        colour = colours[pole.source].of(pole)
        if colour != wire.colour:
            changed.append(msgspec.structs.replace(wire, colour=colour))
    return changed
