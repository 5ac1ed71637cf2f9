"""Put several parts of one kind down in a row: so many of them, or one every so often."""

import math
from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind, Value
from wiring.edits.copies import FreeNames
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.place_part import part_at
from wiring.edits.smooth_line import along_line, length_mm, smooth_line
from wiring.edits.tables import with_records
from wiring.plan.places import Point
from wiring.plan.plan import Plan

MOST = 200
_SAME = 1e-6  # a row of exactly five spacings has six places, whatever the rounding


def row_places(
    start: Point,
    end: Point,
    *,
    via: Sequence[Point] = (),
    count: int | None = None,
    spacing_mm: float | None = None,
) -> list[Point]:
    """Return the places of a row from start to end, in mm, on a smooth curve through `via` if there are any.

    With a count they are spread evenly over the whole row; with a spacing there is one every so often from
    the start, as many as the row holds. EditRefused when there would be none or more than 200.
    """
    line = smooth_line((start, *via, end))
    length = length_mm(line)
    if count is not None:
        wanted, apart = count, length / max(count - 1, 1)
    else:
        if spacing_mm is None or not (math.isfinite(spacing_mm) and spacing_mm > 0):
            raise EditRefused("The distance from part to part must be more than nothing.")
        wanted = int(length / spacing_mm + _SAME) + 1 if length / spacing_mm < MOST else MOST + 1
        apart = spacing_mm
    if not 1 <= wanted <= MOST:
        raise EditRefused(f"A row holds from one to {MOST} parts; give another number or distance.")
    return [along_line(line, min(apart * i, length)) for i in range(wanted)]


def place_row(
    kind: Kind,
    start: Point,
    end: Point,
    *,
    via: Sequence[Point] = (),
    count: int | None = None,
    spacing_mm: float | None = None,
    turn_deg: float = 0.0,
    settings: Mapping[str, Value] | None = None,
) -> Edit:
    """Put parts of that kind down in a row, in one step; see :func:`row_places` for what they mean."""

    def apply(plan: Plan) -> Plan:
        places = row_places(start, end, via=via, count=count, spacing_mm=spacing_mm)
        names, first = FreeNames(p.designation for p in plan.parts.values()), plan.next_number
        # All at once: part by part, each move of the pointer on a large plan would take a tenth of a second.
        parts = [
            part_at(plan, kind, at, turn_deg, settings, first + i, names.take(kind.designation))
            for i, at in enumerate(places)
        ]
        return with_records(plan, parts, kinds={kind.key: kind}, next_number=first + len(parts))

    return Edit(f"Place a row of {kind.title}", apply)
