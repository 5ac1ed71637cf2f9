"""Set what the plan holds beside its parts: title, author, use pattern, habits, prices."""

from typing import Any

import msgspec

from wiring.edits.edit import Edit
from wiring.edits.tables import refuse_if, tidy_size
from wiring.plan.plan import Habits, Plan
from wiring.plan.soundness import plan_faults

FIELDS = {
    "title": "title",
    "author": "author",
    "habits": "habits",
    "use": "use pattern",
    "board": "board outline",
    "tracks": "tracks",
    "joists": "joists",
    "prices": "prices",
    "circuit_colours": "wire colours",
}


def set_plan(**fields: Any) -> Edit:  # noqa: ANN401 - each field has its own type
    """Set fields of the plan: title, author, habits, use, board, tracks, joists, prices, circuit_colours."""
    unknown = fields.keys() - FIELDS.keys()
    if unknown:
        raise TypeError(f"a plan has no field {', '.join(sorted(unknown))} to set")

    def apply(plan: Plan) -> Plan:
        differing = {k: v for k, v in fields.items() if getattr(plan, k) != v}
        if not differing:
            return plan
        new = plan.with_changes(**differing)
        refuse_if(plan_faults(new))
        return new

    return Edit(f"Set {' and '.join(FIELDS[name] for name in FIELDS if name in fields)}", apply)


def set_habits(**habits: Any) -> Edit:  # noqa: ANN401 - each habit has its own type
    """Set some of the builder's habits and keep the others."""
    unknown = habits.keys() - set(Habits.__struct_fields__)
    if unknown:
        raise TypeError(f"there is no habit {', '.join(sorted(unknown))}")

    def apply(plan: Plan) -> Plan:
        if "wire_size" in habits:
            habits["wire_size"] = tidy_size(habits["wire_size"])
        return set_plan(habits=msgspec.structs.replace(plan.habits, **habits)).apply(plan)

    return Edit("Set habits", apply)
