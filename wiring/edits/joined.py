"""Several edits as one step of the history, and one edit looked at several times."""

from collections.abc import Callable, Iterable

from wiring.edits.edit import Edit
from wiring.plan.plan import Plan

Following = Callable[[Plan, Plan], Edit | None]  # given the plan before and after the first edit


def followed(edit: Edit, following: Following) -> Edit:
    """Return the edit with another one after it that is made from what the first one changed."""

    def apply(plan: Plan) -> Plan:
        new = edit.apply(plan)
        then = following(plan, new) if new is not plan else None
        return then.apply(new) if then is not None else new

    return Edit(edit.label, apply)


def remembered(edit: Edit) -> Edit:
    """Return the edit with its last answer kept: what is shown, agreed to and done is worked out once."""
    last: list[tuple[Plan, Plan]] = []

    def apply(plan: Plan) -> Plan:
        if not (last and last[0][0] is plan):
            last[:] = [(plan, edit.apply(plan))]
        return last[0][1]

    return Edit(edit.label, apply)


def in_turn(label: str, edits: Iterable[Edit]) -> Edit:
    """Return several edits, each made on what the one before left, as one step of that name."""
    steps = tuple(edits)

    def apply(plan: Plan) -> Plan:
        for step in steps:
            plan = step.apply(plan)
        return plan

    return Edit(label, apply)
