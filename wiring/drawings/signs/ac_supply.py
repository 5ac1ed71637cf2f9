"""An alternating-current supply: a case with the iron of its transformer."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import FINE, State, box, line, wave
from wiring.drawings.signs.supply import case
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def ac_supply(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the case, the stacked iron with its winding, and a wave: alternating current."""
    del part, state
    w, h = kind.width_mm, kind.height_mm
    x, iron_w, iron_h = -w * 0.28, w * 0.26, h * 0.62
    sheets = [
        line(
            (x - iron_w / 2, iron_h * (i / 6 - 0.5)),
            (x + iron_w / 2, iron_h * (i / 6 - 0.5)),
            pen=Pen("quiet", 0.3),
        )
        for i in range(1, 6)
    ]
    winding = box((x, 0), iron_w * 0.46, iron_h * 0.78, corner_mm=iron_w * 0.08, pen=FINE, fill="copper")
    s = min(w * 0.24, h * 0.34)
    return (
        *case(kind),
        box((x, 0), iron_w, iron_h, pen=FINE, fill="faint"),
        *sheets,
        winding,
        wave((w * 0.1, 0), s, Pen("ink", max(0.5, s * 0.08))),
    )
