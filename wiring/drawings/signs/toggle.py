"""A toggle switch seen on its panel: nut, bush and the lever the way it lies."""

import math

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, dot, shape
from wiring.pictures.picture import Item
from wiring.plan.part import Part


def lever_way(kind: Kind, position: str) -> float:
    """Return -1 for a lever that lies up on the panel, 1 for down, 0 for upright in the middle."""
    names = [p.name for p in kind.positions]
    if position not in names:
        return 0.0
    if len(names) == 2:  # off and on, or up and down: the live or upper one lies up
        return -1.0 if position in ("on", "up") else 1.0
    return 2.0 * names.index(position) / (len(names) - 1) - 1.0


def toggle(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the body behind the panel, the hexagon nut and the lever."""
    del part
    w, h = kind.width_mm, kind.height_mm
    r = min(w, h) * 0.36
    way = lever_way(kind, state.position)
    nut = [(r * math.cos(math.radians(60 * i)), r * math.sin(math.radians(60 * i))) for i in range(6)]
    items: list[Item] = [
        box((0, 0), w, h, corner_mm=min(w, h) * 0.08, pen=EDGE),
        shape(*nut, pen=FINE, fill="faint"),
        dot((0, 0), r * 0.58, pen=FINE, fill="paper"),
    ]
    tip = (0.0, way * r * 1.15)
    if way:
        thin, thick = r * 0.16, r * 0.3
        bat = ((-thin, 0.0), (-thick, tip[1]), (thick, tip[1]), (thin, 0.0))
        items.append(shape(*bat, pen=FINE, fill="ink"))
    items.append(dot(tip, r * 0.32, pen=FINE, fill="ink"))
    items.append(
        dot((tip[0] - r * 0.08, tip[1] - r * 0.08), r * 0.1, pen=FINE._replace(width_mm=0), fill="paper")
    )
    return tuple(items)
