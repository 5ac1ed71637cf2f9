"""What a preview touches, as a small plan with its own arrays, followed from one preview to the next."""

from collections.abc import Mapping
from typing import TypeVar

from app.canvas.geometry import Geometry
from wiring.catalogue.kind import Kind
from wiring.plan.changes import changes_between
from wiring.plan.plan import Plan

T = TypeVar("T")


class Touched:
    """Keeps the arrays of the last preview; while a drag lasts only what moves is laid anew."""

    def __init__(self) -> None:
        self._plan: Plan | None = None
        self._geometry: Geometry | None = None

    def follow(self, plan: Plan, touched: frozenset[str], kinds: Mapping[str, Kind]) -> tuple[Plan, Geometry]:
        """Return the part of a plan that is touched, and where it lies."""
        some = sub_plan(plan, touched)
        if self._plan is None or self._geometry is None or self._geometry.kinds is not kinds:
            self._geometry = Geometry(some, kinds)
        else:
            self._geometry.follow(some, changes_between(self._plan, some))
        self._plan = some
        return some, self._geometry

    def forget(self) -> None:
        """Let go of the last preview."""
        self._plan = self._geometry = None


def sub_plan(plan: Plan, touched: frozenset[str]) -> Plan:
    """Return the plan with only those parts and wires, and the parts the wires end on."""
    wires = {i: plan.wires[i] for i in plan.wires.keys() & touched}
    ends = {ref.part for w in wires.values() for ref in (w.start, w.end)}
    parts = {i: plan.parts[i] for i in plan.parts.keys() & (touched | ends)}
    return plan.with_changes(parts=_sorted(parts), wires=_sorted(wires))


def _sorted(table: dict[str, T]) -> dict[str, T]:
    return {i: table[i] for i in sorted(table, key=lambda i: (len(i), i))}
