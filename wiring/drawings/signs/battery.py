"""A battery: its cells in their holder, every other one turned round; block types as a block with posts."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, dot, line, number, setting
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def battery(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the holder with as many cells as are set (at most 16 are drawn), or a block."""
    del state
    cell = str(setting(kind, part, "cell", ""))
    if cell.endswith("9 V"):
        return _snap_block(kind)
    if cell.startswith("lead-acid"):
        return _post_block(kind)
    series = max(1, int(number(kind, part, "in_series", 1)))
    rows = max(1, int(number(kind, part, "in_parallel", 1)))
    count = min(series * rows, 16)
    return _holder(kind, count)


def _holder(kind: Kind, count: int) -> tuple[Item, ...]:
    w, h = kind.width_mm, kind.height_mm
    inner_w, inner_h = w * 0.8, h * 0.84
    rows = 1 if count <= 4 else 2 if count <= 10 else 3
    columns = -(-count // rows)
    items: list[Item] = [box((0, 0), w, h, corner_mm=min(w, h) * 0.06, pen=EDGE, fill="faint")]
    # cells lie along x in a column of lanes, as they do in a flat holder
    lane = inner_h / columns
    long = inner_w / rows
    for i in range(count):
        row, column = i % rows, i // rows
        x = -inner_w / 2 + long * (row + 0.5)
        y = -inner_h / 2 + lane * (column + 0.5)
        way = 1.0 if column % 2 == 0 else -1.0
        body, thick = long * 0.84, lane * 0.8
        cap = body * 0.07
        items.append(box((x + way * (body / 2), y), cap, thick * 0.4, pen=FINE, fill="copper"))
        items.append(box((x - way * cap / 2, y), body - cap, thick, corner_mm=thick * 0.12, pen=FINE))
        u = x + way * (body / 2 - cap * 2.6)
        items.append(line((u, y - thick / 2), (u, y + thick / 2), pen=Pen("copper", max(0.3, thick * 0.08))))
    return tuple(items)


def _snap_block(kind: Kind) -> tuple[Item, ...]:
    w, h = kind.width_mm, kind.height_mm
    s = min(w, h)
    x = w / 2 - s * 0.2
    return (
        box((0, 0), w, h, corner_mm=s * 0.1, pen=EDGE),
        box((x, 0), s * 0.4, h, corner_mm=s * 0.1, pen=FINE, fill="quiet"),
        dot((x, -h * 0.22), s * 0.11, pen=FINE, fill="faint"),
        dot((x, h * 0.22), s * 0.15, pen=FINE, fill="faint"),
        dot((x, h * 0.22), s * 0.08, pen=FINE, fill="copper"),
    )


def _post_block(kind: Kind) -> tuple[Item, ...]:
    w, h = kind.width_mm, kind.height_mm
    s = min(w, h)
    vents = [dot((-w * 0.3 + w * 0.12 * i, 0), s * 0.05, pen=FINE, fill="faint") for i in range(6)]
    posts = [box((sx * w * 0.36, -h * 0.28), s * 0.16, s * 0.2, pen=FINE, fill="copper") for sx in (-1, 1)]
    return (
        box((0, 0), w, h, corner_mm=s * 0.04, pen=EDGE),
        line((-w / 2, h * 0.16), (w / 2, h * 0.16)),
        *vents,
        *posts,
    )
