"""A bridge rectifier: a square body with one corner cut off at plus."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import FINE, State, dot, line, shape
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def rectifier(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the body, its fixing hole and four diode bars in a ring."""
    del part, state
    a, b = kind.width_mm / 2, kind.height_mm / 2
    plus = next((t for t in kind.terminals if t.mark == "+"), None)
    sx = 1.0 if plus is None or plus.x_mm >= 0 else -1.0
    sy = 1.0 if plus is not None and plus.y_mm > 0 else -1.0
    cut = min(a, b) * 0.4
    body = shape(
        (sx * (a - cut), sy * b),
        (sx * a, sy * (b - cut)),
        (sx * a, -sy * b),
        (-sx * a, -sy * b),
        (-sx * a, sy * b),
    )
    r = min(a, b) * 0.46
    ring = Pen("ink", max(0.35, r * 0.08))
    corners = ((0.0, -r), (r, 0.0), (0.0, r), (-r, 0.0))
    sides = [line(corners[i], corners[(i + 1) % 4], pen=ring) for i in range(4)]
    bars: list[Item] = []
    # on each side of the ring, a short bar across it: the way through lies from minus to plus
    for (x1, y1), (x2, y2) in zip(corners, (*corners[1:], corners[0]), strict=True):
        x, y, dx, dy = (x1 + x2) / 2, (y1 + y2) / 2, (y2 - y1) * 0.16, (x1 - x2) * 0.16
        bars.append(line((x - dx, y - dy), (x + dx, y + dy), pen=ring))
    return (body, *sides, *bars, dot((0, 0), r * 0.22, pen=FINE, fill="paper"))
