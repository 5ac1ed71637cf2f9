"""Which parts an edit has laid on one another: bodies that cover each other now and did not before."""

from collections.abc import Iterator, Mapping

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.edits.laying import body_box
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan

TOUCH_MM = 0.5  # bodies that share less than this only touch
Pair = tuple[PartId, PartId]


def new_overlaps(old: Plan, new: Plan, kinds: Mapping[str, Kind]) -> Iterator[Pair]:
    """Walk the pairs of parts whose bodies cover each other in the new plan only; each pair once."""
    parts = [p for p in new.parts.values() if p.kind in kinds]
    if not parts:
        return
    boxes = np.array([body_box(p, kinds[p.kind]) for p in parts])
    moved = [n for n, p in enumerate(parts) if old.parts.get(p.id) is not p]
    told: set[int] = set()
    for n in moved:
        low, high = boxes[n, :2] + TOUCH_MM, boxes[n, 2:] - TOUCH_MM
        over = (boxes[:, :2] < high).all(axis=1) & (boxes[:, 2:] > low).all(axis=1)
        told.add(n)
        for m in np.flatnonzero(over).tolist():
            if m not in told and not _covered(old, parts[n], parts[m], kinds):
                first, second = sorted((n, m))
                yield parts[first].id, parts[second].id


def _covered(old: Plan, one: Part, other: Part, kinds: Mapping[str, Kind]) -> bool:
    """Whether two parts lay on one another before."""
    a, b = old.parts.get(one.id), old.parts.get(other.id)
    if a is None or b is None or a.kind not in kinds or b.kind not in kinds:
        return False
    (left, top, right, bottom), box = body_box(a, kinds[a.kind]), body_box(b, kinds[b.kind])
    across = min(right, box[2]) - max(left, box[0])
    down = min(bottom, box[3]) - max(top, box[1])
    return min(across, down) > TOUCH_MM
