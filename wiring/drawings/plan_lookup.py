"""What of a plan lies in one window after another, looked up in arrays that are made once a plan."""

from collections.abc import Mapping
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.drawings.plan_areas import Area
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

_NEAR_MM = 200.0  # small parts are drawn larger than they are, and wires fan out


class PlanLookup:
    """The parts and wires of one plan by place."""

    def __init__(self, plan: Plan, kinds: Mapping[str, Kind]) -> None:
        self._kinds = kinds
        self._parts = list(plan.parts.values())
        self._wires = list(plan.wires.values())
        self._at = np.array([(p.x_mm, p.y_mm) for p in self._parts], float).reshape(-1, 2)
        self._number = {p.id: number for number, p in enumerate(self._parts)}
        nowhere = len(self._parts)  # a wire whose part is gone ends in no window
        self._ends = np.array(
            [[self._number.get(ref.part, nowhere) for ref in (w.start, w.end)] for w in self._wires], int
        ).reshape(-1, 2)

    def parts_in(self, window: Area) -> list[PartId]:
        """Return the parts whose middles lie in a window."""
        return [self._parts[i].id for i in np.flatnonzero(self._inside(window))]

    def ending_in(self, window: Area | None) -> tuple[Wire, ...]:
        """Return the wires that end on a part in the window; without one, all."""
        if window is None:
            return tuple(self._wires)
        held = np.append(self._inside(window), [False])[self._ends].any(axis=1)
        return tuple(self._wires[i] for i in np.flatnonzero(held))

    def near(self, window: Area) -> tuple[Wire, ...]:
        """Return the wires that may come into a window: a quick look that lets most others out."""
        numbers, boxes = self._wire_boxes
        air = self._reach_mm + _NEAR_MM
        kept = (
            (boxes[:, 2] >= window.left - air)
            & (boxes[:, 0] <= window.right + air)
            & (boxes[:, 3] >= window.top - air)
            & (boxes[:, 1] <= window.bottom + air)
        )
        return tuple(self._wires[i] for i in numbers[kept])

    @cached_property
    def neighbour_mm(self) -> dict[PartId, float]:
        """How far the nearest other part of a known kind is from each; infinite when there is none."""
        known = [i for i, p in enumerate(self._parts) if p.kind in self._kinds]
        if not known:
            return {}
        xy = self._at[known]
        far = np.hypot(xy[:, None, 0] - xy[None, :, 0], xy[:, None, 1] - xy[None, :, 1])
        np.fill_diagonal(far, np.inf)
        return {self._parts[i].id: float(v) for i, v in zip(known, far.min(axis=1), strict=True)}

    @cached_property
    def _reach_mm(self) -> float:
        sizes = [self._kinds[p.kind] for p in self._parts if p.kind in self._kinds]
        return max((max(k.width_mm, k.height_mm) for k in sizes), default=0.0)

    @cached_property
    def _wire_boxes(self) -> tuple[NDArray[np.intp], NDArray[np.float64]]:
        """The rectangle of each wire both of whose ends are drawn, and which wire it is."""
        known = {p.id: (p.x_mm, p.y_mm) for p in self._parts if p.kind in self._kinds}
        numbers, boxes = [], []
        for number, wire in enumerate(self._wires):
            if wire.start.part in known and wire.end.part in known:
                way = (known[wire.start.part], *wire.bends, known[wire.end.part])
                xs, ys = [p[0] for p in way], [p[1] for p in way]
                numbers.append(number)
                boxes.append((min(xs), min(ys), max(xs), max(ys)))
        return np.array(numbers, np.intp), np.array(boxes, float).reshape(-1, 4)

    def _inside(self, window: Area) -> NDArray[np.bool_]:
        x, y = self._at[:, 0], self._at[:, 1]
        inside: NDArray[np.bool_] = (
            (window.left <= x) & (x <= window.right) & (window.top <= y) & (y <= window.bottom)
        )
        return inside
