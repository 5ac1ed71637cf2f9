"""Change size, colour, length, label and the like of wires, or swap their ends."""

from collections.abc import Iterable
from typing import Any

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import rounded_mm, tidy_colour, tidy_size, wire_of, with_records
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

FIELDS = {
    "size": "wire size",
    "colour": "wire colour",
    "solid": "strand",
    "length_m": "wire length",
    "label": "wire label",
    "note": "note",
    "bends": "bends",
}


def set_wire(ids: Iterable[str], **fields: Any) -> Edit:  # noqa: ANN401 - each field has its own type
    """Set fields of those wires: size, colour, solid, length_m (None: as drawn), label, note, bends."""
    wanted = tuple(dict.fromkeys(ids))
    unknown = fields.keys() - FIELDS.keys()
    if unknown:
        raise TypeError(f"a wire has no field {', '.join(sorted(unknown))} to set")

    def apply(plan: Plan) -> Plan:
        given = _tidy(fields)
        if "label" in given and len(wanted) > 1:
            raise EditRefused("Each wire needs a label of its own; name one wire at a time.")
        return with_records(plan, wires=[msgspec.structs.replace(wire_of(plan, i), **given) for i in wanted])

    return Edit(f"Set {' and '.join(FIELDS[name] for name in FIELDS if name in fields)}", apply)


def _tidy(fields: dict[str, Any]) -> dict[str, Any]:
    given = dict(fields)
    if "label" in given:
        given["label"] = str(given["label"]).strip().removeprefix("-")
    if given.get("length_m") is not None:
        given["length_m"] = float(given["length_m"])
    if "size" in given:
        given["size"] = tidy_size(given["size"])
    if "colour" in given:
        given["colour"] = tidy_colour(given["colour"])
    if "bends" in given:
        given["bends"] = tuple((rounded_mm(x), rounded_mm(y)) for x, y in given["bends"])
    return given


def swap_ends(ids: Iterable[str]) -> Edit:
    """Let those wires start where they ended; nothing else about them changes."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        return with_records(plan, wires=[_swapped(wire_of(plan, i)) for i in wanted])

    return Edit("Swap wire ends", apply)


def _swapped(wire: Wire) -> Wire:
    return msgspec.structs.replace(
        wire, start=wire.end, end=wire.start, bends=wire.bends[::-1], along=wire.along[::-1]
    )
