"""What keys do with a wireway, joist, track or board that is selected."""

from collections.abc import Mapping

from app.canvas.line_hit import stretch_at
from app.canvas.rerouting import with_wireway_followed
from app.ground_keys import BOARD, joist_index, line_points, track_index
from wiring.catalogue.kind import Kind
from wiring.edits.benchwork import remove_track, set_board, set_track
from wiring.edits.edit import Edit
from wiring.edits.joists import change_joist, remove_joist
from wiring.edits.wireways import remove_wireway, shift_wireway
from wiring.plan.places import Point
from wiring.plan.plan import Line, Plan


def ground_removed(ground: str) -> Edit:
    """Return the edit that takes the wireway, joist, track or board's outline away."""
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
    """Return the edit that shifts the wireway, with the wires along it, the joist, track or board."""
    line = line_points(plan, ground)
    if line:
        return line_changed(ground, tuple((x + dx_mm, y + dy_mm) for x, y in line))
    index = joist_index(ground)
    if index < 0:
        return with_wireway_followed(shift_wireway(ground, dx_mm, dy_mm), kinds, ground)
    (ax, ay), (bx, by) = plan.joists[index].start, plan.joists[index].end
    edit = change_joist(index, start=(ax + dx_mm, ay + dy_mm), end=(bx + dx_mm, by + dy_mm))
    return edit._replace(label="Move joist")


def line_with_corner(plan: Plan, ground: str, at: Point) -> Edit:
    """Return the edit that puts a corner into the board's outline or a track, where it passes a place."""
    line = line_points(plan, ground)
    index, _ = stretch_at((*line, line[0]) if ground == BOARD else line, at)
    return line_changed(ground, (*line[: index + 1], at, *line[index + 1 :]))
