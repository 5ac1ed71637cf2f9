"""A plug and its socket: two shells with their contacts, together or apart."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, State, box, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def plug(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return both shells; the contacts reach across where they are joined."""
    del part
    w, h = kind.width_mm, kind.height_mm
    # the halves face each other across the way the a and b terminals lie
    spread_x = max((abs(t.x_mm) for t in kind.terminals), default=0.0)
    spread_y = max((abs(t.y_mm) for t in kind.terminals), default=0.0)
    sideways = _faces_along_x(kind, spread_x >= spread_y)
    gap = 0.16 if state.position == "apart" else 0.0
    items: list[Item] = []
    for side in (-1.0, 1.0):
        fill = "raised" if side < 0 else "faint"
        if sideways:
            items.append(
                box(
                    (side * w * (0.25 + gap / 2), 0),
                    w * (0.5 - gap),
                    h,
                    corner_mm=h * 0.05,
                    pen=EDGE,
                    fill=fill,
                )
            )
        else:
            items.append(
                box(
                    (0, side * h * (0.25 + gap / 2)),
                    w,
                    h * (0.5 - gap),
                    corner_mm=h * 0.05,
                    pen=EDGE,
                    fill=fill,
                )
            )
    pin = Pen("copper", max(0.6, min(w, h) * 0.04))
    for terminal in kind.terminals:
        if not terminal.name.endswith("a"):
            continue
        reach = 0.16
        if sideways:
            items.append(
                line((-w * reach, terminal.y_mm), (w * (reach if not gap else -0.02), terminal.y_mm), pen=pin)
            )
        else:
            items.append(
                line((terminal.x_mm, -h * reach), (terminal.x_mm, h * (reach if not gap else -0.02)), pen=pin)
            )
    return tuple(items)


def _faces_along_x(kind: Kind, fallback: bool) -> bool:
    by_name = {t.name: t for t in kind.terminals}
    a, b = by_name.get("1a"), by_name.get("1b")
    if a is None or b is None:
        return fallback
    return abs(a.x_mm - b.x_mm) >= abs(a.y_mm - b.y_mm)
