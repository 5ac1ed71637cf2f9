"""A plan cut down to what is touched of it."""

from collections.abc import Collection
from typing import TypeVar

from wiring.plan.names import WirewayId
from wiring.plan.plan import Plan

T = TypeVar("T")


def sub_plan(plan: Plan, touched: frozenset[str]) -> Plan:
    """Return the plan with only those parts and wires, and the parts the wires end on."""
    wires = {i: plan.wires[i] for i in plan.wires.keys() & touched}
    ends = {ref.part for w in wires.values() for ref in (w.start, w.end)}
    parts = {i: plan.parts[i] for i in plan.parts.keys() & (touched | ends)}
    return plan.with_changes(parts=_sorted(parts), wires=_sorted(wires))


def with_ways(plan: Plan, wanted: Collection[WirewayId]) -> Plan:
    """Return the plan with only those of its wireways that are wanted."""
    return plan.with_changes(wireways={i: way for i, way in plan.wireways.items() if i in wanted})


def _sorted(table: dict[str, T]) -> dict[str, T]:
    return {i: table[i] for i in sorted(table, key=lambda i: (len(i), i))}
