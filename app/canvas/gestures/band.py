"""Select with a rubber band: what lies wholly inside, or, drawn from right to left, all it touches."""

import itertools

from app.canvas.geometry import Box
from app.canvas.gestures.pointer import Around, Gesture, Pick, Preview
from app.canvas.gestures.whole import with_wholes
from app.ground_keys import joist_key
from wiring.plan.places import Point

HINT = "To the right: what lies inside. To the left: all it touches, but only whole joists."


def band_select(around: Around, start: Point, *, adds: bool) -> Gesture:
    """Select what the band holds on release; with `adds` on top of what is selected."""
    preview = Preview(band=(start, start), hint=HINT, cursor="cross")
    while True:
        pointer = yield preview
        if pointer.phase == "move":
            preview = Preview(band=(start, pointer.at), hint=HINT, cursor="cross")
        elif pointer.phase == "release":
            found = caught(around, start, pointer.at)
            joists = caught_joists(around, start, pointer.at)
            if adds:
                found, joists = found | around.selected, joists | around.grounds
            return Pick(found, grounds=joists)


def caught(around: Around, start: Point, end: Point) -> frozenset[str]:
    """Return the parts and wires that a band from start to end selects."""
    box = _spanned(start, end)
    touching = end[0] < start[0]
    geometry = around.geometry
    parts = [
        p for p in geometry.parts_in(box) if touching or _within(geometry.parts.get(p)[:4].tolist(), box)
    ]
    wires = [
        w
        for w in geometry.wires_in(box)
        if (touching and _crosses(geometry.paths[w], box)) or _within(geometry.wires.get(w).tolist(), box)
    ]
    return with_wholes(around.plan, frozenset(parts) | frozenset(wires), touching=touching)


def caught_joists(around: Around, start: Point, end: Point) -> frozenset[str]:
    """Return the joists that lie wholly in a band: they run under all else and are rarely meant with it."""
    box = _spanned(start, end)
    lying = [
        joist_key(index)
        for index, joist in enumerate(around.plan.joists)
        if all(_within([x, y, x, y], box) for x, y in (joist.start, joist.end))
    ]
    return frozenset(lying)


def _spanned(a: Point, b: Point) -> Box:
    return Box(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))


def _within(inner: list[float], box: Box) -> bool:
    return inner[0] >= box.left and inner[1] >= box.top and inner[2] <= box.right and inner[3] <= box.bottom


def _crosses(path: tuple[Point, ...], box: Box) -> bool:
    if any(box.left <= x <= box.right and box.top <= y <= box.bottom for x, y in path):
        return True
    corners = [(box.left, box.top), (box.right, box.top), (box.right, box.bottom), (box.left, box.bottom)]
    edges = list(zip(corners, corners[1:] + corners[:1], strict=True))
    return any(_cross(a, b, c, d) for a, b in itertools.pairwise(path) for c, d in edges)


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0
