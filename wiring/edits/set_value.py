"""Change one setting, or other fields, of one or many parts."""

from collections.abc import Iterable, Mapping
from typing import Any

import msgspec

from wiring.catalogue.kind import Kind, Setting, Value
from wiring.edits.areas import areas_after
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import frozen, known_kinds, part_of, rounded_mm, with_records
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.record_faults import value_fault

FIELDS = {
    "designation": "designation",
    "label": "label",
    "note": "note",
    "scene": "scene",
    "panel": "panel",
    "position": "position in use",
    "x_mm": "place",
    "y_mm": "place",
    "turn_deg": "turn",
}
_NUMBERS = ("x_mm", "y_mm", "turn_deg")


def set_setting(
    ids: Iterable[str],
    name: str,
    value: Value | None,
    *,
    title: str = "",
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Give one setting of those parts a value in its SI unit; None puts the typical one back.

    Refused when a part's kind has no such setting or the value lies outside its bounds; `title` is the
    setting's name for the Undo menu.
    """
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        return with_records(plan, [_with_setting(part_of(plan, i), name, value, known) for i in wanted])

    return Edit(f"Set {title.lower() or name.replace('_', ' ')}", apply)


def _with_setting(part: Part, name: str, value: Value | None, kinds: Mapping[str, Kind]) -> Part:
    kind = kinds.get(part.kind)
    setting = _setting(part, kind, name) if kind else None
    if setting and value is not None and not isinstance(value, str):
        value = float(value)
    fault = value_fault(value, setting) if setting and value is not None else ""
    if fault:
        raise EditRefused(f"-{part.designation}: {fault}")
    if value is None:
        kept = {k: v for k, v in part.settings.items() if k != name}
    else:
        kept = {**part.settings, name: value}
    return msgspec.structs.replace(part, settings=frozen(kept) if kept else {})


def _setting(part: Part, kind: Kind, name: str) -> Setting:
    try:
        return kind.setting(name)
    except KeyError:
        raise EditRefused(f"-{part.designation} ({kind.title}) has no setting called {name}.") from None


def set_field(ids: Iterable[str], **fields: Any) -> Edit:  # noqa: ANN401 - each field has its own type
    """Set fields of those parts: designation, label, note, scene, panel, position, x_mm, y_mm, turn_deg."""
    wanted = tuple(dict.fromkeys(ids))
    unknown = fields.keys() - FIELDS.keys()
    if unknown:
        raise TypeError(f"a part has no field {', '.join(sorted(unknown))} to set")
    if "designation" in fields:
        fields["designation"] = str(fields["designation"]).strip().removeprefix("-")

    def apply(plan: Plan) -> Plan:
        if "designation" in fields and len(wanted) > 1:
            raise EditRefused("Each part needs a designation of its own; name one part at a time.")
        return with_records(plan, [_with_fields(plan, part_of(plan, i), fields) for i in wanted])

    words = dict.fromkeys(FIELDS[name] for name in FIELDS if name in fields)
    return Edit(f"Set {' and '.join(words)}", apply)


def _with_fields(plan: Plan, part: Part, fields: Mapping[str, Any]) -> Part:
    given = {k: rounded_mm(float(v)) if k in _NUMBERS else v for k, v in fields.items()}
    new = msgspec.structs.replace(part, **given)
    if fields.keys() & {"x_mm", "y_mm"}:
        scene, panel = areas_after(plan, plan, part, new)
        new = msgspec.structs.replace(new, scene=fields.get("scene", scene), panel=fields.get("panel", panel))
    return new


def rename(part_id: str, designation: str) -> Edit:
    """Give a part another designation; a leading minus sign may be typed."""
    return Edit("Rename part", set_field([part_id], designation=designation).apply)
