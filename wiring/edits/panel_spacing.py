"""Bring the parts of a panel onto its spacing: each to the nearest place, or in equal whole steps."""

from collections.abc import Iterable, Mapping
from typing import Literal

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.panels import panel_of
from wiring.edits.shift_each import with_shifts
from wiring.edits.tables import counted, part_of
from wiring.plan.panel import Panel
from wiring.plan.panel_places import on_spacing, to_face
from wiring.plan.plan import Plan

GRID_MM = {"metric": 5.0, "us": 25.4 / 4}  # the plan's own grid, for a panel that says no spacing


def spacing_of(plan: Plan, panel: Panel) -> float:
    """Return what parts on a panel snap to."""
    return panel.spacing_mm or GRID_MM.get(plan.habits.units, 5.0)


def onto_spacing(panel_id: str, ids: Iterable[str], *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Set each of those parts on the place of the panel's spacing that is nearest to it."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        shifts = {}
        for part_id in wanted:
            part = part_of(plan, part_id)
            here = to_face(panel, (part.x_mm, part.y_mm))
            there = on_spacing(here, spacing_of(plan, panel))
            shifts[part_id] = there[0] - here[0], there[1] - here[1]
        return with_shifts(plan, shifts, kinds)

    return Edit(f"Set {counted(len(wanted), 'part')} on the spacing", apply)


def in_steps(
    panel_id: str,
    ids: Iterable[str],
    way: Literal["across", "down"],
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Set those parts at equal steps, each a whole number of spacings, from the first of them on."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        if len(wanted) < 2:
            raise EditRefused("Select at least two parts to set them at equal steps.")
        spacing, across = spacing_of(plan, panel), way == "across"
        faces = {}
        for part_id in wanted:
            part = part_of(plan, part_id)
            faces[part_id] = to_face(panel, (part.x_mm, part.y_mm))[0 if across else 1]
        order = sorted(faces, key=lambda i: (faces[i], i))
        first = round(faces[order[0]] / spacing) * spacing
        mean = (faces[order[-1]] - faces[order[0]]) / (len(order) - 1)
        step = max(round(mean / spacing), 1) * spacing
        shifts = {}
        for index, part_id in enumerate(order):
            by = first + index * step - faces[part_id]
            shifts[part_id] = (by, 0.0) if across else (0.0, by)
        return with_shifts(plan, shifts, kinds)

    return Edit(f"Set {counted(len(wanted), 'part')} at equal steps", apply)
