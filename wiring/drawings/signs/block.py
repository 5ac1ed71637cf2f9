"""A distribution block: one copper bar under all its screws."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, line, screw
from wiring.drawings.signs.terminal_strip import pitch_mm
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def block(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the body, the bar, a tongue of the bar to every terminal, and the screws."""
    del part, state
    w, h = kind.width_mm, kind.height_mm
    bar_h = h * 0.34
    r = min(pitch_mm(kind) * 0.3, bar_h * 0.42)
    xs = sorted({round(t.x_mm, 3) for t in kind.terminals})
    tongue = Pen("copper", max(0.6, r * 0.9))
    items: list[Item] = [box((0, 0), w, h, corner_mm=min(w, h) * 0.08, pen=EDGE)]
    items += [line((t.x_mm, t.y_mm), (t.x_mm, 0.0), pen=tongue) for t in kind.terminals if t.y_mm]
    items.append(box((0, 0), w * 0.94, bar_h, corner_mm=bar_h * 0.15, pen=FINE, fill="copper"))
    for i, x in enumerate(xs):
        items += screw((x, 0.0), r, 10.0 + 41.0 * (i % 4))
    return tuple(items)
