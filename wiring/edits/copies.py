"""Copies of parts and of the wires between them, with fresh ids, designations and labels."""

import re
from collections.abc import Iterable, Mapping
from itertools import count

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.areas import panel_at, scene_at
from wiring.edits.edit import EditRefused
from wiring.edits.tables import frozen, rounded_mm, with_records
from wiring.plan.groups import shared_groups
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


def wires_between(plan: Plan, part_ids: Iterable[str]) -> tuple[Wire, ...]:
    """Return the wires whose two ends both lie on those parts."""
    chosen = frozenset(part_ids)
    return tuple(w for w in plan.wires.values() if w.start.part in chosen and w.end.part in chosen)


def with_copies(
    plan: Plan,
    parts: Iterable[Part],
    wires: Iterable[Wire],
    dx_mm: float,
    dy_mm: float,
    kinds: Mapping[str, Kind] | None = None,
    *,
    as_one: bool = False,
) -> Plan:
    """Return the plan with copies of those records set down at a distance, checked against their kinds.

    Copies of parts that are one thing are one thing of their own; `as_one` makes one of all the copies.
    """
    number = count(plan.next_number)
    new_ids: dict[str, str] = {}
    designations = FreeNames(p.designation for p in plan.parts.values())
    labels = FreeNames(w.label for w in plan.wires.values())
    new_parts, new_wires = [], []
    for part in parts:
        new_ids[part.id] = f"p{next(number)}"
        designation = designations.take(_letters(part.designation))
        new_parts.append(_part_copy(plan, part, new_ids[part.id], designation, dx_mm, dy_mm))
    for wire in wires:
        if not {wire.start.part, wire.end.part} <= new_ids.keys():
            raise EditRefused("A wire to be copied ends on a part that is not copied with it.")
        new_wires.append(
            msgspec.structs.replace(
                wire,
                id=f"w{next(number)}",
                label=labels.take("W"),
                start=TerminalRef(new_ids[wire.start.part], wire.start.terminal),
                end=TerminalRef(new_ids[wire.end.part], wire.end.terminal),
                bends=tuple((rounded_mm(x + dx_mm), rounded_mm(y + dy_mm)) for x, y in wire.bends),
                along=(),  # the copy lies elsewhere, and may lie in a plan without those wireways
                built=False,
            )
        )
    joined = [msgspec.structs.replace(p, group="one") for p in new_parts] if as_one else new_parts
    fresh = {old: f"g{next(number)}" for old in shared_groups(joined)}
    grouped = [msgspec.structs.replace(p, group=fresh.get(p.group, "")) for p in joined]
    return with_records(plan, grouped, new_wires, kinds, next(number))


class FreeNames:
    """Hands out letters with their lowest free number, without counting from one each time."""

    def __init__(self, taken: Iterable[str]) -> None:
        self._taken = set(taken)
        self._reached: dict[str, int] = {}

    def take(self, letters: str) -> str:
        """Return the next free name with those letters."""
        number = self._reached.get(letters, 0) + 1
        while f"{letters}{number}" in self._taken:
            number += 1
        self._reached[letters] = number
        return f"{letters}{number}"


def _letters(designation: str) -> str:
    found = re.match(r"[A-Za-z]+", designation)
    return found[0] if found else "X"


def _part_copy(plan: Plan, part: Part, new_id: str, designation: str, dx_mm: float, dy_mm: float) -> Part:
    x_mm, y_mm = rounded_mm(part.x_mm + dx_mm), rounded_mm(part.y_mm + dy_mm)
    return msgspec.structs.replace(
        part,
        id=new_id,
        designation=designation,
        x_mm=x_mm,
        y_mm=y_mm,
        settings=frozen(part.settings) if part.settings else {},
        scene=scene_at(plan, x_mm, y_mm),
        panel=panel_at(plan, x_mm, y_mm),
    )
