"""The wires at the back of a panel: which they are, where they run, what they look like, their labels."""

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping

from app.bench.face_sight import AROUND_MM, FaceSight
from app.canvas.geometry import Geometry
from app.canvas.sub_plan import sub_plan
from wiring.drawings.plan_clip import pieces
from wiring.drawings.plan_wires import wire_width_mm
from wiring.drawings.wire_colour import wire_colour
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Item, Path, Pen, Words
from wiring.plan.panel_places import to_face
from wiring.plan.places import Point

THICKER = 1.6  # wires at the back are drawn nearer to life than on a small-scale plan
LABEL_PX = 9.5
ALONG = (0.5, 0.35, 0.65, 0.22, 0.78)  # where on the longest leg a label may stand
LEG_PX = 22.0  # a shorter leg bears no label
DOT_MM, AIR_MM = 1.3, 0.2  # half a terminal, and what words keep from other words

Course = tuple[Point, ...]
Box = tuple[float, float, float, float]


def courses(sight: FaceSight) -> dict[str, Course]:
    """Return the way of every wire on a part of the panel, in mm of the face."""
    paths = sight.whole.geometry.paths if sight.laid is None else sight.laid
    return {
        wire_id: tuple(to_face(sight.panel, point) for point in paths[wire_id])
        for wire_id in wires_at_back(sight)
        if wire_id in paths
    }


def wires_at_back(sight: FaceSight) -> list[str]:
    """Return the wires on parts of the panel, in the order in which they were made."""
    own, wires = {p.id for p in sight.at_back}, sight.plan.wires
    ids = sight.whole.geometry.wires_of(own)
    if sight.plan is not sight.whole.plan:  # something is in hand, and may bring wires of its own
        ids |= wires.keys() - sight.whole.plan.wires.keys()
    known = (i for i in ids if i in wires and {wires[i].start.part, wires[i].end.part} & own)
    return sorted(known, key=lambda i: (len(i), i))


def laid_anew(sight: FaceSight) -> Mapping[str, Course]:
    """Return the ways of the panel's wires on a plan that is only shown yet, fanned out as they will be."""
    return Geometry(sub_plan(sight.plan, frozenset(wires_at_back(sight))), sight.kinds).paths


def wire_items(sight: FaceSight, found: dict[str, Course]) -> Iterator[Item]:
    """Return the wires as far as the bench shows them: edge, insulation, stripe."""
    for wire_id, course in found.items():
        wire = sight.plan.wires[wire_id]
        yield from insulated(clipped(sight, course), wire.size, wire.colour)


def clipped(sight: FaceSight, course: Course) -> list[Course]:
    """Return the pieces of a way that lie on the face or not far beside it."""
    panel = sight.panel
    box = (-AROUND_MM, -AROUND_MM, panel.width_mm + AROUND_MM, panel.height_mm + AROUND_MM)
    return [tuple(piece.points) for piece in pieces(course, box)]


def insulated(ways: Iterable[Course], size: str, letters: str) -> Iterator[Item]:
    """Return one wire along pieces of its way."""
    width, colour = wire_width_mm(size) * THICKER, wire_colour(letters)
    for points in ways:
        yield Path(points, Pen("ink", width + 0.35))
        yield Path(points, Pen(colour.rgb, width))
        if colour.stripe_rgb:
            yield Path(points, Pen(colour.stripe_rgb, width * 0.5, (2.2, 2.2)))


def label_items(
    sight: FaceSight, found: dict[str, Course], words: Iterable[Words], dots: Iterable[Point]
) -> Iterator[Words]:
    """Return label and colour letters of each wire, on or beside one of its long legs, clear of all else."""
    taken = [words_box(one) for one in words]
    taken += [(x - DOT_MM, y - DOT_MM, x + DOT_MM, y + DOT_MM) for x, y in dots]
    size, least = LABEL_PX / sight.camera.scale, LEG_PX / sight.camera.scale
    for wire_id, course in found.items():
        wire = sight.plan.wires[wire_id]
        legs = [leg for piece in clipped(sight, course) for leg in itertools.pairwise(piece)]
        longest = sorted(legs, key=lambda leg: -math.dist(*leg))[:2]
        made = (
            _free(f"-{wire.label} {wire.colour}", a, b, size, taken)
            for a, b in longest
            if math.dist(a, b) >= least
        )
        label = next((one for one in made if one is not None), None)
        if label is not None:
            taken.append(words_box(label))
            yield label


def _free(text: str, a: Point, b: Point, size: float, taken: list[Box]) -> Words | None:
    """Return the words on a leg, or else beside it, where nothing else stands."""
    words = Words(text, a, size, "ink", "semibold", "centre", "middle", ground="raised")
    box = words_box(words)
    wide, high = box[2] - box[0], box[3] - box[1]
    level = abs(b[0] - a[0]) >= abs(b[1] - a[1])
    # along a level leg that is shorter than the words they would hide all of it
    covers = level and math.dist(a, b) < 1.6 * wide
    away = (0.0, -high * 0.9) if level else (wide * 0.6, 0.0)
    for side in (-1.0, 1.0) if covers else (0.0, 1.0, -1.0):
        for share in ALONG:
            at = (
                a[0] + (b[0] - a[0]) * share + side * away[0],
                a[1] + (b[1] - a[1]) * share + side * away[1],
            )
            here = words_box(words._replace(at=at))
            if not any(_touch(here, other) for other in taken):
                return words._replace(at=at)
    return None


def _touch(a: Box, b: Box) -> bool:
    return a[0] < b[2] + AIR_MM and b[0] < a[2] + AIR_MM and a[1] < b[3] and b[1] < a[3]
