"""Pull one leg of a selected wire aside: a level or upright one stays so, a slanted one gets a bend."""

import itertools

from app.canvas.gestures.pointer import Around, Do, Gesture, Pick, Pointer, Preview, travelled
from app.canvas.hits.hit import segment_distance
from wiring.edits.bends import lay_bends
from wiring.plan.names import WireId
from wiring.plan.places import Point
from wiring.plan.plan import Plan

HINT = "Release to leave the wire here. Ctrl: off the grid. Esc: as it was."
SAME_MM = 1e-6
Path = tuple[Point, ...]


def wire_to_pull(plan: Plan, ids: frozenset[str]) -> str:
    """Return the wire that is selected alone and lies as it was drawn, not along a wireway; "" for none."""
    wire = plan.wires.get(WireId(next(iter(ids)))) if len(ids) == 1 else None
    return wire.id if wire is not None and not wire.along else ""


def pull_leg(around: Around, wire_id: WireId, pressed: Pointer) -> Gesture:
    """Move the leg that was pressed with the pointer; a mere click leaves the wire selected."""
    path = around.geometry.raw_path(wire_id)
    legs = list(itertools.pairwise(path))
    leg = min(range(len(legs)), key=lambda i: segment_distance(*legs[i], pressed.at))
    bends = path[1:-1]
    preview = Preview()
    while True:
        pointer = yield preview
        if pointer.phase == "move" and (preview.begun or travelled(around, pressed.at, pointer.at)):
            place = pointer.at if pointer.free else around.on_grid(pointer.at)
            bends = pulled(path, leg, place)
            plan = lay_bends(wire_id, bends).apply(around.plan)
            preview = Preview(plan, frozenset((wire_id,)), cursor="grab", hint=HINT)
        elif pointer.phase == "release":
            return Do(lay_bends(wire_id, bends)) if bends != path[1:-1] else Pick(frozenset((wire_id,)))


def pulled(path: Path, leg: int, place: Point) -> Path:
    """Return the bends of a way once one of its legs is pulled to a place."""
    a, b = path[leg], path[leg + 1]
    level, upright = abs(a[1] - b[1]) < SAME_MM, abs(a[0] - b[0]) < SAME_MM
    if level == upright:  # slanted, or of no length
        return (*path[1 : leg + 1], place, *path[leg + 1 : -1])
    to_a, to_b = ((a[0], place[1]), (b[0], place[1])) if level else ((place[0], a[1]), (place[0], b[1]))
    before = path[1:leg] if _goes_across(path, leg - 1, level) else path[1 : leg + 1]
    after = path[leg + 2 : -1] if _goes_across(path, leg + 1, level) else path[leg + 1 : -1]
    return (*before, to_a, to_b, *after)


def _goes_across(path: Path, leg: int, level: bool) -> bool:
    """Whether a neighbouring leg stands square to a level or upright one: it only grows or shrinks."""
    if not 0 <= leg < len(path) - 1:
        return False
    axis = 0 if level else 1
    return abs(path[leg][axis] - path[leg + 1][axis]) < SAME_MM
