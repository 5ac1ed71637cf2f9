"""What keys and hands do with wireways, joists, tracks, the board, scenes and panels that are selected."""

from collections.abc import Iterable, Mapping

import msgspec

from app.canvas.hits.area_hit import areas_of
from app.canvas.hits.line_hit import stretch_at
from app.canvas.rerouting import with_wireway_followed
from app.ground_keys import BOARD, joist_index, line_points, track_index
from wiring.catalogue.kind import Kind
from wiring.edits.benchwork import remove_track, set_board, set_track
from wiring.edits.edit import Edit
from wiring.edits.joists import change_joist, remove_joist
from wiring.edits.move import move
from wiring.edits.panels import change_panel, remove_panel
from wiring.edits.remove import remove
from wiring.edits.scenes import change_scene, remove_scene
from wiring.edits.tables import counted
from wiring.edits.wireways import remove_wireway, shift_wireway
from wiring.plan.joist import Joist
from wiring.plan.places import Point
from wiring.plan.plan import Line, Plan


def with_grounds_removed(plan: Plan, ids: frozenset[str], grounds: frozenset[str]) -> Edit:
    """Return the edit that takes away those parts and wires and all that of the ground, in one step."""
    # What is named by its place goes from the last on, so that the places before it still hold.
    ordered = sorted(grounds, key=lambda g: (joist_index(g), track_index(g)), reverse=True)
    edits = [*([remove(ids)] if ids else []), *(ground_removed(plan, g) for g in ordered)]
    return _all_of(edits, f"Remove {counted(len(ids) + len(grounds), 'item')}")


def with_grounds_shifted(
    plan: Plan,
    ids: Iterable[str],
    grounds: Iterable[str],
    dx_mm: float,
    dy_mm: float,
    kinds: Mapping[str, Kind],
) -> Edit:
    """Return the edit that shifts those parts and wires and all that of the ground, in one step."""
    moved, ground = sorted(ids), sorted(grounds)
    edits = [move(moved, dx_mm, dy_mm, kinds=kinds)] if moved else []
    edits += [ground_shifted(plan, g, dx_mm, dy_mm, kinds) for g in ground]
    return _all_of(edits, f"Move {counted(len(moved) + len(ground), 'item')}")


def _all_of(edits: list[Edit], label: str) -> Edit:
    if len(edits) == 1:
        return edits[0]

    def apply(plan: Plan) -> Plan:
        for edit in edits:
            plan = edit.apply(plan)
        return plan

    return Edit(label, apply)


def ground_removed(plan: Plan, ground: str) -> Edit:
    """Return the edit that takes the wireway, area, joist, track or board's outline away."""
    if ground in plan.scenes:
        return remove_scene(ground)
    if ground in plan.panels:
        return remove_panel(ground)
    if ground == BOARD:
        return set_board(())._replace(label="Remove board")
    if track_index(ground) >= 0:
        return remove_track(track_index(ground))
    index = joist_index(ground)
    return remove_joist(index) if index >= 0 else remove_wireway(ground)


def line_changed(ground: str, points: Line) -> Edit:
    """Return the edit that gives the board's outline or a track other points."""
    if ground == BOARD:
        return set_board(points)._replace(label="Change board")
    return set_track(track_index(ground), points)


def ground_shifted(plan: Plan, ground: str, dx_mm: float, dy_mm: float, kinds: Mapping[str, Kind]) -> Edit:
    """Return the edit that shifts the wireway, with the wires along it, the area, joist, track or board."""
    area = areas_of(plan).get(ground)
    if area is not None:
        there = {"x_mm": area.x_mm + dx_mm, "y_mm": area.y_mm + dy_mm}
        if ground in plan.scenes:
            return change_scene(ground, **there)
        return change_panel(ground, kinds=kinds, **there)
    line = line_points(plan, ground)
    if line:
        return line_changed(ground, tuple((x + dx_mm, y + dy_mm) for x, y in line))
    index = joist_index(ground)
    if index < 0:
        return with_wireway_followed(shift_wireway(ground, dx_mm, dy_mm), kinds, ground)
    (bar,) = shifted_joists(plan, (ground,), dx_mm, dy_mm)
    return change_joist(index, start=bar.start, end=bar.end)._replace(label="Move joist")


def shifted_joists(plan: Plan, grounds: Iterable[str], dx_mm: float, dy_mm: float) -> tuple[Joist, ...]:
    """Return the joists among what is selected as they would lie."""
    found = []
    for joist in (plan.joists[i] for i in sorted(map(joist_index, grounds)) if i >= 0):
        (ax, ay), (bx, by) = joist.start, joist.end
        ends = {"start": (ax + dx_mm, ay + dy_mm), "end": (bx + dx_mm, by + dy_mm)}
        found.append(msgspec.structs.replace(joist, **ends))
    return tuple(found)


def line_with_corner(plan: Plan, ground: str, at: Point) -> Edit:
    """Return the edit that puts a corner into the board's outline or a track, where it passes a place."""
    line = line_points(plan, ground)
    index, _ = stretch_at((*line, line[0]) if ground == BOARD else line, at)
    return line_changed(ground, (*line[: index + 1], at, *line[index + 1 :]))
