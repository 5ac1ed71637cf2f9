"""What is chosen on a face as text for the clipboard, the plan's own and more, and back onto any face."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.copies import wires_between, with_copies
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.fragment import LONGEST_TEXT, Fragment, plain_table
from wiring.edits.panel_spacing import spacing_of
from wiring.edits.panels import panel_of
from wiring.edits.tables import known_kinds, refuse_if, rounded_mm
from wiring.plan.panel import FaceLine, FaceText, Panel
from wiring.plan.panel_bodies import Body, bodies_on, body_of, clashes, gap_mm, is_mounted, reaches_over
from wiring.plan.panel_faults import face_faults
from wiring.plan.panel_places import from_face, holds, on_spacing, to_face
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

MOST_TRIED = 4000  # places of a face that are looked at before a paste lies where it was wished
APART_MM = 2.0 - 1e-6


class FaceFragment(Fragment, frozen=True, kw_only=True):
    """A piece of a plan with what is painted on a face round its parts, in millimetres of the plan."""

    lines: tuple[FaceLine, ...] = ()
    texts: tuple[FaceText, ...] = ()


class _Group(NamedTuple):
    """What is to be set down on a face."""

    parts: tuple[Part, ...]
    lines: tuple[FaceLine, ...]
    texts: tuple[FaceText, ...]

    @property
    def places(self) -> Iterator[Point]:
        """Every point of it, parts first."""
        yield from ((p.x_mm, p.y_mm) for p in self.parts)
        yield from (point for line in self.lines for point in line.points)
        yield from ((t.x_mm, t.y_mm) for t in self.texts)


def copied_from_face(
    plan: Plan, panel_id: str, ids: Iterable[str], lines: Collection[int], texts: Collection[int]
) -> str:
    """Return those parts, the wires between them, those lines and legends as text; "" for none."""
    panel, chosen = panel_of(plan, panel_id), frozenset(ids)
    parts = tuple(p for p in plan.parts.values() if p.id in chosen)
    group = _shifted(
        _Group(
            (),
            tuple(line for i, line in enumerate(panel.lines) if i in lines),
            tuple(text for i, text in enumerate(panel.texts) if i in texts),
        ),
        from_face(panel, (0.0, 0.0)),
    )
    if not (parts or group.lines or group.texts):
        return ""
    wires = wires_between(plan, chosen)
    made: Fragment = Fragment(parts=parts, wires=wires)
    if group.lines or group.texts:
        made = FaceFragment(parts=parts, wires=wires, lines=group.lines, texts=group.texts)
    return msgspec.json.encode(made, enc_hook=plain_table).decode()


def read_face_fragment(text: str) -> FaceFragment:
    """Return what a text holds for a face; EditRefused when it holds nothing of the kind."""
    fault = "The clipboard holds nothing for a panel; copy parts, track lines or legends first."
    if len(text) > LONGEST_TEXT:
        raise EditRefused("The clipboard holds too much to paste onto a panel.")
    try:
        found = msgspec.json.decode(text.encode("utf-8", "replace"), type=FaceFragment)
    except (msgspec.MsgspecError, ValueError, RecursionError):
        raise EditRefused(fault) from None
    if not (found.parts or found.lines or found.texts):
        raise EditRefused(fault)
    if len({p.id for p in found.parts}) < len(found.parts):
        raise EditRefused("The clipboard holds the same part twice; copy the parts again.")
    return found


def paste_on_face(
    text: str,
    panel_id: str,
    at: Point | None = None,
    by: Point = (0.0, 0.0),
    *,
    label: str = "Paste on the face",
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Set down what :func:`copied_from_face` gave, with its middle at a place of the face, or shifted `by`.

    It lands on the panel's spacing, at the nearest place where all of it is on the face and no body touches
    another; when there is none, where it was wished.
    """

    def apply(plan: Plan) -> Plan:
        known, panel, found = known_kinds(kinds), panel_of(plan, panel_id), read_face_fragment(text)
        group = _Group(found.parts, found.lines, found.texts)
        shift = _free_shift(plan, known, panel, group, _wished(panel, spacing_of(plan, panel), group, at, by))
        there = _shifted(_Group((), group.lines, group.texts), to_face(panel, shift))
        painted = msgspec.structs.replace(
            panel, lines=(*panel.lines, *there.lines), texts=(*panel.texts, *there.texts)
        )
        refuse_if(face_faults(painted))
        if painted != panel:
            panels = MappingProxyType({**dict(plan.panels), panel.id: painted})
            plan = plan.with_changes(panels=panels)
        return with_copies(plan, found.parts, found.wires, *shift, known)

    return Edit(label, apply)


def _wished(panel: Panel, spacing_mm: float, group: _Group, at: Point | None, by: Point) -> Point:
    """Return the shift that brings the first of the group onto the spacing nearest to where it is wished."""
    places = list(group.places)
    if at is not None:
        xs, ys = [x for x, _ in places], [y for _, y in places]
        there = from_face(panel, at)
        by = there[0] - (min(xs) + max(xs)) / 2, there[1] - (min(ys) + max(ys)) / 2
    first = places[0]
    landed = from_face(panel, on_spacing(to_face(panel, (first[0] + by[0], first[1] + by[1])), spacing_mm))
    return landed[0] - first[0], landed[1] - first[1]


def _free_shift(plan: Plan, kinds: Mapping[str, Kind], panel: Panel, group: _Group, wished: Point) -> Point:
    standing = bodies_on(plan, kinds, panel)
    inner = [body_of(p, kinds[p.kind]) for p in group.parts if p.kind in kinds and is_mounted(kinds[p.kind])]
    if any(clashes(inner)):
        standing = ()  # it never fits; where it was wished is as good as anywhere
    step = spacing_of(plan, panel)
    return next(
        (by for by in _outwards(wished, step, panel) if _fits(panel, standing, group, inner, by)), wished
    )


def _outwards(wished: Point, step: float, panel: Panel) -> Iterator[Point]:
    """Return the shifts a whole number of spacings away, the nearest first, right before left."""
    across, down = (int(side / step) + 1 for side in (panel.width_mm, panel.height_mm))
    reach = max(1, int(MOST_TRIED**0.5 / 2))
    across, down = min(across, reach), min(down, reach)
    cells = [(i, j) for i in range(-across, across + 1) for j in range(-down, down + 1)]
    cells.sort(key=lambda c: (c[0] ** 2 + c[1] ** 2, -c[0], -c[1]))
    return ((wished[0] + i * step, wished[1] + j * step) for i, j in cells)


def _fits(panel: Panel, standing: Sequence[Body], group: _Group, inner: Sequence[Body], by: Point) -> bool:
    if not all(holds(panel, x + by[0], y + by[1]) for x, y in group.places):
        return False
    there = [_body_at(body, by) for body in inner]
    if any(reaches_over(body, panel) for body in there):
        return False
    return all(gap_mm(a, b) >= APART_MM for a in there for b in standing)


def _body_at(body: Body, by: Point) -> Body:
    part = msgspec.structs.replace(body.part, x_mm=body.part.x_mm + by[0], y_mm=body.part.y_mm + by[1])
    return body_of(part, body.kind)


def _shifted(group: _Group, by: Point) -> _Group:
    def there(at: Point) -> Point:
        return rounded_mm(at[0] + by[0]), rounded_mm(at[1] + by[1])

    lines = tuple(
        msgspec.structs.replace(line, points=tuple(there(p) for p in line.points)) for line in group.lines
    )
    texts = []
    for text in group.texts:
        x_mm, y_mm = there((text.x_mm, text.y_mm))
        texts.append(msgspec.structs.replace(text, x_mm=x_mm, y_mm=y_mm))
    return _Group(group.parts, lines, tuple(texts))
