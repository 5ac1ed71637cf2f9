"""The windows on a plan that are drawn as sheets of their own: so many that words find room on each."""

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.plan_areas import Area, panel_areas, panel_window, round_parts, scene_areas
from wiring.drawings.plan_crowding import Crowding
from wiring.pictures.picture import Point
from wiring.plan.panel_places import plugs_of
from wiring.plan.part import Part
from wiring.plan.plan import Plan

_FIELD_W_MM, _FIELD_H_MM = 1150.0, 640.0  # a landscape sheet at 1:5
_LEAST_SCALE = 1 / 7.5  # of a sheet that shows several fields of the open board
_MOST_MM = 2100.0  # no sheet shows more at that scale
OPEN_BOARD = "Board"


class Window(NamedTuple):
    """What one sheet shows, the scene or panel it belongs to, and whether that is the back of a panel."""

    area: Area
    place: str
    behind: bool = False


def windows(plan: Plan, kinds: Mapping[str, Kind], bodies: Sequence[Point]) -> tuple[Window, ...]:
    """Return windows that together show every part, for sheets whose bodies have these sizes.

    Panels and scenes with parts come first, then the open board. A scene is drawn in to the parts it holds, a
    panel is shown whole; where words would not find room, one is halved until they do.
    """
    crowding = Crowding(plan, kinds, bodies)
    rest = [p for p in plan.parts.values() if p.kind in kinds]
    found: list[Window] = []
    for area, panel in (
        *zip(panel_areas(plan), plan.panels.values(), strict=True),
        *((a, None) for a in scene_areas(plan)),
    ):
        held = [p for p in rest if area.holds(p.x_mm, p.y_mm)]
        if held:
            whole = panel_window(plan, kinds, panel) if panel else round_parts(area.name, held, kinds)
            plugs = plugs_of(plan, kinds, panel.id) if panel else ()
            shown = list({p.id: p for p in (*held, *plugs)}.values())
            found += _numbered(area.name, _halved(crowding, whole, shown, kinds), behind=panel is not None)
            own = {p.id for p in shown}
            rest = [p for p in rest if p.id not in own]
    return (*found, *_numbered(OPEN_BOARD, _board(crowding, rest, kinds)))


def _numbered(name: str, areas: Sequence[Area], *, behind: bool = False) -> list[Window]:
    if len(areas) == 1:
        return [Window(areas[0]._replace(name=name), name, behind)]
    count = len(areas)
    return [
        Window(a._replace(name=f"{name} ({number} of {count})"), name, behind)
        for number, a in enumerate(areas, start=1)
    ]


def _halved(crowding: Crowding, area: Area, parts: Sequence[Part], kinds: Mapping[str, Kind]) -> list[Area]:
    """Return the area, or smaller ones round its parts where its words would find no room."""
    return [smaller for smaller, _ in _shared_out(crowding, area, parts, kinds)]


def _shared_out(
    crowding: Crowding, area: Area, parts: Sequence[Part], kinds: Mapping[str, Kind]
) -> list[tuple[Area, list[Part]]]:
    """Return the area, or smaller ones where its words would find no room, each with the parts it is for."""
    if len(parts) < 2 or not crowding.crowded(area):
        return [(area, list(parts))]
    halves = [(_across(crowding, area, half, kinds), half) for half in crowding.halves(area, parts)]
    if max(crowding.scale(smaller) for smaller, _ in halves) <= crowding.scale(area):
        return [(area, list(parts))]  # no half of it would be drawn larger
    return [found for smaller, half in halves for found in _shared_out(crowding, smaller, half, kinds)]


def _across(crowding: Crowding, area: Area, half: Sequence[Part], kinds: Mapping[str, Kind]) -> Area:
    """Return the window round half the parts, as broad across the cut as its sheet and the area allow.

    What joins the parts mostly runs there: cut off, each of its wires would have to say where it goes.
    """
    near = round_parts(area.name, half, kinds)
    wide, high = crowding.shown_mm(near)
    if area.right - area.left >= area.bottom - area.top:
        top, bottom = _stretched(near.top, near.bottom, area.top, area.bottom, high)
        return near._replace(top=top, bottom=bottom)
    left, right = _stretched(near.left, near.right, area.left, area.right, wide)
    return near._replace(left=left, right=right)


def _stretched(start: float, end: float, first: float, last: float, most: float) -> tuple[float, float]:
    """Return a stretch made longer, up to a length and within bounds, evenly where both sides have room."""
    spare = max(most - (end - start), 0.0)
    before, after = max(start - first, 0.0), max(last - end, 0.0)
    more = min(after, max(spare / 2, spare - before))
    return start - min(before, spare - more), end + more


def _board(crowding: Crowding, parts: Iterable[Part], kinds: Mapping[str, Kind]) -> list[Area]:
    """Return windows round parts that lie in no area: a grid, each field drawn in to the parts it holds."""
    fields: dict[tuple[int, int], list[Part]] = {}
    for part in parts:
        cell = math.floor(part.y_mm / _FIELD_H_MM), math.floor(part.x_mm / _FIELD_W_MM)
        fields.setdefault(cell, []).append(part)
    halved = [
        (smaller, some)
        for _, held in sorted(fields.items(), key=lambda f: f[0])
        for smaller, some in _shared_out(crowding, round_parts(OPEN_BOARD, held, kinds), held, kinds)
    ]
    return _joined(crowding, halved, kinds)


def _joined(
    crowding: Crowding, windows_: Sequence[tuple[Area, list[Part]]], kinds: Mapping[str, Kind]
) -> list[Area]:
    """Return the windows, nearest neighbours joined where one sheet shows both and their words find room."""
    areas = dict(enumerate(area for area, _ in windows_))
    held = dict(enumerate(parts for _, parts in windows_))
    pairs = {(i, j): _size_mm2(areas[i], areas[j]) for i in areas for j in areas if i < j}
    near = {pair: size for pair, size in pairs.items() if size is not None}
    while near:
        i, j = min(near, key=lambda pair: (near[pair], pair))
        del near[i, j]
        both = [*held[i], *held[j]]
        area = round_parts(OPEN_BOARD, both, kinds)
        if crowding.scale(area) < _LEAST_SCALE or crowding.crowded(area):
            continue
        areas[i], held[i] = area, both
        del areas[j], held[j]
        near = {pair: size for pair, size in near.items() if not {i, j} & set(pair)}
        for other in areas:
            size = _size_mm2(area, areas[other])
            if other != i and size is not None:
                near[min(i, other), max(i, other)] = size
    return list(areas.values())


def _size_mm2(one: Area, other: Area) -> float | None:
    """Return the area round two windows, None where it is larger than any sheet would show."""
    wide = max(one.right, other.right) - min(one.left, other.left)
    high = max(one.bottom, other.bottom) - min(one.top, other.top)
    return wide * high if max(wide, high) <= _MOST_MM else None
