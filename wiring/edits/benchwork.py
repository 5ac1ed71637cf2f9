"""Draw the outline of the board and the tracks on it: the ground a plan is drawn on."""

from collections.abc import Iterable

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.set_plan import set_plan
from wiring.edits.tables import rounded_mm
from wiring.plan.places import Point
from wiring.plan.plan import Line, Plan


def set_board(corners: Iterable[Point]) -> Edit:
    """Give the board its outline, in mm; no corners take it away, else at least three are needed."""
    line = _line(corners)

    def apply(plan: Plan) -> Plan:
        if line and len(line) < 3:
            raise EditRefused("The outline of a board needs at least three corners.")
        return set_plan(board=line).apply(plan)

    return Edit("Draw board", apply)


def add_track(points: Iterable[Point]) -> Edit:
    """Draw a track along those points, in mm."""
    line = _line(points)

    def apply(plan: Plan) -> Plan:
        if len(line) < 2:
            raise EditRefused("A track needs at least two points.")
        return set_plan(tracks=(*plan.tracks, line)).apply(plan)

    return Edit("Draw track", apply)


def set_track(index: int, points: Iterable[Point]) -> Edit:
    """Lead the track of that index along other points, in mm."""
    line = _line(points)

    def apply(plan: Plan) -> Plan:
        if not 0 <= index < len(plan.tracks):
            raise EditRefused("The plan has no such track any more.")
        if len(line) < 2:
            raise EditRefused("A track needs at least two points.")
        return set_plan(tracks=(*plan.tracks[:index], line, *plan.tracks[index + 1 :])).apply(plan)

    return Edit("Change track", apply)


def remove_track(index: int) -> Edit:
    """Take away the track of that index."""

    def apply(plan: Plan) -> Plan:
        if not 0 <= index < len(plan.tracks):
            raise EditRefused("The plan has no such track any more.")
        return set_plan(tracks=(*plan.tracks[:index], *plan.tracks[index + 1 :])).apply(plan)

    return Edit("Remove track", apply)


def _line(points: Iterable[Point]) -> Line:
    return tuple((rounded_mm(x), rounded_mm(y)) for x, y in points)
