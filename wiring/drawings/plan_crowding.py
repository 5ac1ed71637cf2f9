"""How crowded a view of part of a plan would be, and where to halve one whose words would find no room."""

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind
from wiring.drawings.plan_areas import Area
from wiring.drawings.plan_fit import fitting_scale
from wiring.drawings.plan_legend import ROW_MM
from wiring.pictures.picture import Point
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan

# On paper, mm²: the words of a part, of a wire end on it, and those that say where a cut wire goes.
_NAME_MM2, _END_MM2, _CUT_MM2 = 50.0, 60.0, 105.0
_CELL_MM = 40.0  # the fullest square of two by two such cells tells how crowded a view is
_FULL = 0.57  # share of that square words may fill: the rest is signs, wires and leaders
_SMALL, _FULL_SMALL = 1 / 7, 0.4  # signs and bundles take more of a view of a small scale
_AROUND_MM = (12.0, 39.2)  # of a body, beside and over a view: band, legend, fascia and margins


class Crowding:
    """Looks at views of one plan on sheets of some sizes; remembers what leads where."""

    def __init__(self, plan: Plan, kinds: Mapping[str, Kind], bodies: Sequence[Point]) -> None:
        self._bodies = bodies
        self._parts = [p for p in plan.parts.values() if p.kind in kinds]
        self._far: dict[PartId, list[PartId]] = defaultdict(list)
        for wire in plan.wires.values():
            self._far[wire.start.part].append(wire.end.part)
            self._far[wire.end.part].append(wire.start.part)

    def scale(self, area: Area) -> float:
        """Return the scale an area is shown at on the sheet that shows it largest."""
        return self._best(area)[0]

    def shown_mm(self, area: Area) -> Point:
        """Return width and height, in plan mm, of what has room on that sheet at that scale."""
        scale, wide, high = self._best(area)
        return wide / scale, (high - ROW_MM) / scale  # the legend may take a row more

    def _best(self, area: Area) -> tuple[float, float, float]:
        wide, high = area.right - area.left, area.bottom - area.top
        rooms = [(across - _AROUND_MM[0], down - _AROUND_MM[1]) for across, down in self._bodies]
        return max((fitting_scale(wide, high, *room), *room) for room in rooms)

    def crowded(self, area: Area) -> bool:
        """Return whether the words of a view of an area would not find room beside what they name."""
        scale = self.scale(area)
        inside = [p for p in self._parts if area.holds(p.x_mm, p.y_mm)]
        known = {p.id for p in inside}
        cells: dict[tuple[int, int], float] = defaultdict(float)
        for part in inside:
            far = self._far[part.id]
            cut = sum(other not in known for other in far)
            need = _NAME_MM2 + _END_MM2 * len(far) + _CUT_MM2 * cut
            cell = math.floor(part.x_mm * scale / _CELL_MM), math.floor(part.y_mm * scale / _CELL_MM)
            for over in (0, 1):
                for down in (0, 1):
                    cells[cell[0] + over, cell[1] + down] += need
        full = _FULL if scale > _SMALL else _FULL_SMALL
        return max(cells.values(), default=0.0) > full * (2 * _CELL_MM) ** 2

    def halves(self, area: Area, parts: Sequence[Part]) -> tuple[list[Part], list[Part]]:
        """Return the parts of a view to be shown on two: cut across its longer side, best at a gap."""
        wide, high = area.right - area.left, area.bottom - area.top
        across = wide >= high
        listed = sorted(parts, key=lambda p: (p.x_mm, p.y_mm) if across else (p.y_mm, p.x_mm))
        at = [p.x_mm if across else p.y_mm for p in listed]
        loads = [1.0 + len(self._far[p.id]) for p in listed]
        whole, reach = sum(loads), max(at[-1] - at[0], 1e-9)

        def cost(cut: int) -> float:
            uneven = abs(2 * sum(loads[:cut]) / whole - 1.0)
            return uneven - 0.4 * (at[cut] - at[cut - 1]) / reach

        best = min(range(1, len(listed)), key=cost)
        return listed[:best], listed[best:]
