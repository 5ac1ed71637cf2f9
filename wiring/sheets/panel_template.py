"""The face of a fascia panel at 1:1: where its holes go, with what is painted on it in pencil."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.panel_face import pencilled
from wiring.drawings.plan_areas import Area, panel_areas
from wiring.drawings.plan_clip import Box, pieces
from wiring.pictures.metrics import fitted, width_mm
from wiring.pictures.picture import Disc, Item, Path, Pen, Words
from wiring.plan.panel import Panel
from wiring.plan.part import Part
from wiring.plan.plan import Plan

# Holes of kinds that do not say theirs, by what is mounted, mm. Common practice, no source.
_HOLES: Mapping[str, float] = {"toggle": 6.5, "push": 7.0, "indicator": 8.0}
_CROSS_MM = 6.0
_LABEL_MM = 45.0
_CUT = Pen("ink", 0.35)
_CENTRE = Pen("ink", 0.15, (3.0, 0.7, 0.6, 0.7))


class Hole(NamedTuple):
    """One hole of a panel: what goes in, its centre from the upper left corner, its size (0: a cut-out)."""

    part: Part
    kind: Kind
    x_mm: float
    y_mm: float
    across_mm: float


class Face(NamedTuple):
    """A panel and its holes, from its left and upper edge."""

    area: Area
    holes: tuple[Hole, ...]
    panel: Panel


def faces(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[Face, ...]:
    """Return the panels that carry a part to be mounted, or are painted on, in plan order."""
    found = []
    for area, panel in zip(panel_areas(plan), plan.panels.values(), strict=True):
        holes = tuple(
            Hole(p, kinds[p.kind], p.x_mm - area.left, p.y_mm - area.top, hole_mm(kinds[p.kind]))
            for p in plan.parts.values()
            if p.kind in kinds
            and area.holds(p.x_mm, p.y_mm)
            and (hole_mm(kinds[p.kind]) or kinds[p.kind].sign == "slide")
        )
        if holes or panel.lines or panel.texts:
            found.append(Face(area, holes, panel))
    return tuple(found)


def hole_mm(kind: Kind) -> float:
    """Return the hole a kind sits in, its own or the usual one; 0 for a cut-out or what is not mounted."""
    return kind.hole_mm or _HOLES.get(kind.sign, 0.0)


def face_items(face: Face, clip: Box) -> tuple[Item, ...]:
    """Return what of a face lies in a box of it, mm from its upper left corner, as seen from the front."""
    wide, high = face.area.right - face.area.left, face.area.bottom - face.area.top
    outline = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high), (0.0, 0.0))
    items: list[Item] = [*pencilled(face.panel, clip)]
    shown = {item.text for item in items if isinstance(item, Words)}
    items += [Path(piece.points, _CUT) for piece in pieces(outline, clip)]
    for hole in face.holes:
        if clip[0] <= hole.x_mm <= clip[2] and clip[1] <= hole.y_mm <= clip[3]:
            # a legend that would run off the sheet is left out: then the number of the part alone says little
            label = hole.part.label
            missing = any(text.text == label for text in face.panel.texts) and label not in shown
            items += _hole(hole, clip, label if missing else "")
    return tuple(items)


def _hole(hole: Hole, clip: Box, says: str = "") -> tuple[Item, ...]:
    x, y = hole.x_mm, hole.y_mm
    items: list[Item] = [
        *(Path(p.points, _CENTRE) for p in pieces(((x - _CROSS_MM, y), (x + _CROSS_MM, y)), clip)),
        *(Path(p.points, _CENTRE) for p in pieces(((x, y - _CROSS_MM), (x, y + _CROSS_MM)), clip)),
    ]
    if hole.across_mm:
        items.append(Disc((x, y), hole.across_mm / 2, hole.across_mm / 2, _CUT))
    else:
        w, h = hole.kind.width_mm / 2, hole.kind.height_mm / 2
        box = ((x - w, y - h), (x + w, y - h), (x + w, y + h), (x - w, y + h), (x - w, y - h))
        items += [Path(p.points, _CUT) for p in pieces(box, clip)]
    name = fitted(f"-{hole.part.designation}", 30.0, 3.0, "semibold")
    if y + _CROSS_MM + 3.0 < clip[3]:
        under = y + _CROSS_MM + 2.6
        items.append(Words(name, (x, under), 3.0, weight="semibold", align="centre"))
        beside = x + width_mm(name, 3.0, "semibold") / 2 + 1.0
        if label := fitted(says, min(_LABEL_MM, max(clip[2] - beside, 0.0)), 3.0):
            items.append(Words(label, (beside, under), 3.0, "quiet"))
    return tuple(items)
