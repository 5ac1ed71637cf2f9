"""The named rectangles of a plan, scenes and panels, and windows that are drawn as sheets of their own."""

import math
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.panel import Panel
from wiring.plan.panel_places import plugs_of
from wiring.plan.part import Part
from wiring.plan.plan import Plan

_AIR_MM = 40.0  # left round a window, for what sticks out of it
_TILE_W_MM, _TILE_H_MM = 1150.0, 640.0  # a landscape sheet at 1:5
_FEW_PARTS = 9  # so many parts of the open board are told apart on one sheet
_MOST_TILES = 16  # a plan that would take more is shown in larger tiles


class Area(NamedTuple):
    """A named upright rectangle in plan millimetres."""

    name: str
    left: float
    top: float
    right: float
    bottom: float

    def holds(self, x_mm: float, y_mm: float) -> bool:
        """Return whether a point lies in it."""
        return self.left <= x_mm <= self.right and self.top <= y_mm <= self.bottom

    def widened(self, by_mm: float = _AIR_MM) -> "Area":
        """Return it with air all round."""
        return Area(self.name, self.left - by_mm, self.top - by_mm, self.right + by_mm, self.bottom + by_mm)


def scene_areas(plan: Plan) -> tuple[Area, ...]:
    """Return the scenes' rectangles, in plan order."""
    return tuple(
        Area(s.name, s.x_mm, s.y_mm, s.x_mm + s.width_mm, s.y_mm + s.height_mm) for s in plan.scenes.values()
    )


def panel_areas(plan: Plan) -> tuple[Area, ...]:
    """Return the panels' rectangles, in plan order."""
    return tuple(
        Area(p.name, p.x_mm, p.y_mm, p.x_mm + p.width_mm, p.y_mm + p.height_mm) for p in plan.panels.values()
    )


def areas(plan: Plan) -> tuple[Area, ...]:
    """Return scenes, then panels."""
    return (*scene_areas(plan), *panel_areas(plan))


def windows(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[Area, ...]:
    """Return windows that together show every part: scenes and panels with parts, then the rest in tiles.

    A scene is drawn in to the parts it holds; a panel is shown whole.
    """
    rest = [p for p in plan.parts.values() if p.kind in kinds]
    found: list[Area] = []
    for area, panel in (
        *zip(panel_areas(plan), plan.panels.values(), strict=True),
        *((a, None) for a in scene_areas(plan)),
    ):
        held = [p for p in rest if area.holds(p.x_mm, p.y_mm)]
        if held:
            found.append(panel_window(plan, kinds, panel) if panel else _round(area.name, held, kinds))
            own = {p.id for p in (*held, *(plugs_of(plan, kinds, panel.id) if panel else ()))}
            rest = [p for p in rest if p.id not in own]
    return (*found, *_tiles(rest, kinds))


def panel_window(plan: Plan, kinds: Mapping[str, Kind], panel: Panel) -> Area:
    """Return the window that shows a panel whole, with the plugs of its harness."""
    right, bottom = panel.x_mm + panel.width_mm, panel.y_mm + panel.height_mm
    face = Area(panel.name, panel.x_mm, panel.y_mm, right, bottom).widened()
    plugs = plugs_of(plan, kinds, panel.id)
    if not plugs:
        return face
    round_plugs = _round(panel.name, list(plugs), kinds)
    return Area(
        panel.name,
        min(face.left, round_plugs.left),
        min(face.top, round_plugs.top),
        max(face.right, round_plugs.right),
        max(face.bottom, round_plugs.bottom),
    )


def _tiles(parts: Iterable[Part], kinds: Mapping[str, Kind]) -> list[Area]:
    """Return windows round parts that lie in no area: a grid, each field drawn in to the parts it holds."""
    listed, larger = list(parts), 1.0
    while len(fields := _fields(listed, larger)) > _MOST_TILES:
        larger *= 1.5
    groups = _joined([held for _, held in sorted(fields.items(), key=lambda f: f[0])], larger)
    return [
        _round("Board" if len(groups) == 1 else f"Board, part {number}", held, kinds)
        for number, held in enumerate(groups, start=1)
    ]


def _joined(groups: list[list[Part]], larger: float) -> list[list[Part]]:
    """Return the fields with those of few parts joined where they lie so near that one sheet shows them."""
    groups = list(groups)
    while True:
        near = [
            (size, i, j)
            for j in range(len(groups))
            for i in range(j)
            if len(groups[i]) + len(groups[j]) <= _FEW_PARTS
            and (size := _size_mm2([*groups[i], *groups[j]], larger)) is not None
        ]
        if not near:
            return groups
        _, i, j = min(near)
        groups[i] = [*groups[i], *groups.pop(j)]


def _size_mm2(parts: list[Part], larger: float) -> float | None:
    """Return the area round parts, None where it is larger than a sheet, lying or upright, shows."""
    xs, ys = [p.x_mm for p in parts], [p.y_mm for p in parts]
    wide, high = max(xs) - min(xs) + 2 * _AIR_MM, max(ys) - min(ys) + 2 * _AIR_MM
    long, short = max(wide, high), min(wide, high)
    return wide * high if long <= _TILE_W_MM * larger and short <= _TILE_H_MM * larger else None


def _fields(parts: list[Part], larger: float) -> dict[tuple[int, int], list[Part]]:
    fields: dict[tuple[int, int], list[Part]] = {}
    for part in parts:
        cell = (
            math.floor(part.y_mm / (_TILE_H_MM * larger)),
            math.floor(part.x_mm / (_TILE_W_MM * larger)),
        )
        fields.setdefault(cell, []).append(part)
    return fields


def _round(name: str, parts: list[Part], kinds: Mapping[str, Kind]) -> Area:
    """Return the window round parts, with air for what sticks out of it and for labels."""
    reach = max(math.hypot(kinds[p.kind].width_mm, kinds[p.kind].height_mm) / 2 for p in parts)
    xs, ys = [p.x_mm for p in parts], [p.y_mm for p in parts]
    return Area(name, min(xs), min(ys), max(xs), max(ys)).widened(_AIR_MM + reach)
