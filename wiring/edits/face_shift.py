"""Shift or mirror parts, track lines and legends of one face together, as one step."""

from collections.abc import Callable, Collection, Mapping
from types import MappingProxyType
from typing import Literal

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.mirror import mirror
from wiring.edits.panels import panel_of
from wiring.edits.remove import remove
from wiring.edits.shift_each import with_shifts
from wiring.edits.tables import part_of, refuse_if, rounded_mm
from wiring.plan.panel import FaceLine, FaceText
from wiring.plan.panel_faults import face_faults
from wiring.plan.panel_places import to_face
from wiring.plan.places import Point
from wiring.plan.plan import Plan

Over = Callable[[Point], Point]


def shift_each_on_face(
    label: str,
    panel_id: str,
    parts: Mapping[str, Point],
    lines: Mapping[int, Point],
    texts: Mapping[int, Point],
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Shift each of those parts, track lines and legends by a way of its own, in mm."""

    def apply(plan: Plan) -> Plan:
        def by(shift: Point) -> Over:
            return lambda at: (at[0] + shift[0], at[1] + shift[1])

        plan = with_shifts(plan, parts, kinds) if parts else plan
        return _painted_anew(
            plan,
            panel_id,
            {i: by(shift) for i, shift in lines.items()},
            {i: by(shift) for i, shift in texts.items()},
        )

    return Edit(label, apply)


def mirror_on_face(
    panel_id: str,
    ids: Collection[str],
    lines: Collection[int],
    texts: Collection[int],
    way: Literal["across", "down"],
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Swap left and right ("across") or top and bottom ("down") of all these about their common middle."""

    def apply(plan: Plan) -> Plan:
        panel, axis = panel_of(plan, panel_id), 0 if way == "across" else 1
        parts = [part_of(plan, i) for i in ids if i not in plan.wires]
        spots = [to_face(panel, (p.x_mm, p.y_mm))[axis] for p in parts]
        spots += [p[axis] for i, line in enumerate(panel.lines) if i in lines for p in line.points]
        spots += [(t.x_mm, t.y_mm)[axis] for i, t in enumerate(panel.texts) if i in texts]
        if not spots:
            raise EditRefused("Choose what is to swap sides first.")
        both = min(spots) + max(spots)

        def over(at: Point) -> Point:
            return (both - at[0], at[1]) if way == "across" else (at[0], both - at[1])

        if parts:
            corner = panel.x_mm if way == "across" else panel.y_mm
            edit = mirror([p.id for p in parts], way, about_mm=both / 2 + corner, kinds=kinds)
            plan = edit.apply(plan)
        return _painted_anew(plan, panel_id, dict.fromkeys(lines, over), dict.fromkeys(texts, over))

    return Edit("Mirror on the face", apply)


def remove_from_face(
    panel_id: str, ids: Collection[str], lines: Collection[int], texts: Collection[int]
) -> Edit:
    """Take away parts and wires, and track lines and legends of the face, in one step."""

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        painted = msgspec.structs.replace(
            panel,
            lines=tuple(line for i, line in enumerate(panel.lines) if i not in lines),
            texts=tuple(text for i, text in enumerate(panel.texts) if i not in texts),
        )
        plan = remove(ids).apply(plan) if ids else plan
        if painted == panel:
            return plan
        return plan.with_changes(panels=MappingProxyType({**dict(plan.panels), panel_id: painted}))

    many = len(ids) + len(lines) + len(texts) > 1
    one = "Remove track line" if lines else "Remove legend" if texts else "Remove"
    return Edit("Remove from the face" if many else one, apply)


def _painted_anew(plan: Plan, panel_id: str, lines: Mapping[int, Over], texts: Mapping[int, Over]) -> Plan:
    panel = panel_of(plan, panel_id)

    def line_there(index: int, line: FaceLine) -> FaceLine:
        go = lines.get(index)
        if go is None:
            return line
        return msgspec.structs.replace(line, points=tuple(_tidy(go(p)) for p in line.points))

    def text_there(index: int, text: FaceText) -> FaceText:
        go = texts.get(index)
        x_mm, y_mm = _tidy(go((text.x_mm, text.y_mm))) if go is not None else (text.x_mm, text.y_mm)
        return msgspec.structs.replace(text, x_mm=x_mm, y_mm=y_mm)

    new = msgspec.structs.replace(
        panel,
        lines=tuple(line_there(i, line) for i, line in enumerate(panel.lines)),
        texts=tuple(text_there(i, text) for i, text in enumerate(panel.texts)),
    )
    if new == panel:
        return plan
    refuse_if(face_faults(new))
    return plan.with_changes(panels=MappingProxyType({**dict(plan.panels), panel_id: new}))


def _tidy(at: Point) -> Point:
    return rounded_mm(at[0]), rounded_mm(at[1])
