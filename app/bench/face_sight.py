"""Everything the painters of the bench look at, as one value, and where things on the face lie."""

from collections.abc import Mapping
from typing import NamedTuple

from app.bench.bench import FaceItem
from app.bench.face_camera import FaceCamera
from app.canvas.geometry import Box as CanvasBox
from app.canvas.geometry import own_box, turned_box
from app.canvas.sight import Sight
from wiring.catalogue.kind import Kind
from wiring.drawings.panel_face import legend
from wiring.pictures.metrics import words_corners
from wiring.plan.panel import Panel
from wiring.plan.panel_bodies import bodies_on, body_of, is_mounted, misfits
from wiring.plan.panel_places import holds, of_panel, plugs_of, to_face
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

Box = tuple[float, float, float, float]
AROUND_MM = 140.0  # what stands or runs this far beyond the face is shown from behind


class FaceSight(NamedTuple):
    """A panel, how it is looked at, and what is known about its plan."""

    plan: Plan
    panel: Panel
    camera: FaceCamera
    whole: Sight  # of the plan: kinds, positions, figures, colours
    selected: frozenset[str] = frozenset()
    items: frozenset[FaceItem] = frozenset()
    laid: Mapping[str, tuple[Point, ...]] | None = None  # ways of wires, where they are not those of `whole`

    @property
    def kinds(self) -> Mapping[str, Kind]:
        """The catalogue."""
        return self.whole.kinds

    @property
    def parts(self) -> tuple[Part, ...]:
        """The parts that lie on the face, of known kinds, in plan order."""
        return tuple(
            p
            for p in of_panel(self.plan, self.panel)
            if p.kind in self.kinds and holds(self.panel, p.x_mm, p.y_mm)
        )

    @property
    def beside(self) -> tuple[Part, ...]:
        """The plugs by which the panel's wires come out, and its other parts not far beside the face."""
        plugs = plugs_of(self.plan, self.kinds, self.panel.id)
        near = (
            p
            for p in self.plan.parts.values()
            if p.panel == self.panel.id and p.kind in self.kinds and p not in plugs and self._is_near(p)
        )
        return *plugs, *near

    @property
    def at_back(self) -> tuple[Part, ...]:
        """The parts that are seen from behind."""
        return *self.parts, *self.beside

    def _is_near(self, part: Part) -> bool:
        x, y = to_face(self.panel, (part.x_mm, part.y_mm))
        wide, high = self.panel.width_mm, self.panel.height_mm
        inside = 0 <= x <= wide and 0 <= y <= high
        return not inside and -AROUND_MM <= x <= wide + AROUND_MM and -AROUND_MM <= y <= high + AROUND_MM

    def misfits(self) -> frozenset[str]:
        """Return the parts that cannot be mounted as they stand."""
        return misfits(bodies_on(self.plan, self.kinds, self.panel), self.panel)


def item_box(panel: Panel, item: FaceItem) -> Box:
    """Return the box round a line or a legend, in mm of the face."""
    if item.sort == "line":
        line = panel.lines[item.number]
        points, rim = line.points, line.width_mm / 2
    else:
        points, rim = words_corners(legend(panel.texts[item.number])), 0.0
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs) - rim, min(ys) - rim, max(xs) + rim, max(ys) + rim


def part_box(sight: FaceSight, part: Part) -> Box:
    """Return the box round what is seen of a part, in mm of the face; from the front no terminals."""
    kind = sight.kinds.get(part.kind)
    if kind is not None and is_mounted(kind) and not sight.camera.behind:
        box = CanvasBox(*body_of(part, kind).box)
    else:
        box = turned_box(part, own_box(part, kind))
    (left, top), (right, bottom) = (
        to_face(sight.panel, (box.left, box.top)),
        to_face(sight.panel, (box.right, box.bottom)),
    )
    return left, top, right, bottom


def surrounding(sight: FaceSight) -> Box:
    """Return the box round the face, from behind with what stands beside it, in mm of the face."""
    boxes = [(0.0, 0.0, sight.panel.width_mm, sight.panel.height_mm)]
    boxes += [part_box(sight, part) for part in sight.beside] if sight.camera.behind else []
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)


def beside_face(plan: Plan, panel: Panel) -> frozenset[str]:
    """Return the parts of a panel that do not stand on its face."""
    return frozenset(
        p.id for p in plan.parts.values() if p.panel == panel.id and not holds(panel, p.x_mm, p.y_mm)
    )
