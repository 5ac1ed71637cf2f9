"""A lit building: its roof seen from above, with ridge, chimney and the light of its windows."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, line, tint
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def building(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the roof with its shaded slope; windows show along the eaves and shine when lit."""
    del part
    w, h = kind.width_mm, kind.height_mm
    pane = min(w, h)
    roof_h = h * 0.86
    lit = state.lightness is not None and state.lightness >= 1.0
    windows: list[Item] = []
    count = max(2, round(w / (pane * 0.34)))
    for i in range(count):
        x = -w / 2 + w * (i + 0.5) / count
        for y in (-h / 2 + h * 0.035, h / 2 - h * 0.035):
            windows.append(
                box((x, y), w / count * 0.5, h * 0.07, pen=Pen("ink", 0.2), fill="lit" if lit else "quiet")
            )
    rafters = [
        line((x, -roof_h / 2), (x, roof_h / 2), pen=Pen("faint", 0.25))
        for x in (-w * 0.3, -w * 0.1, w * 0.1, w * 0.3)
    ]
    return (
        *windows,
        box((0, 0), w, roof_h, pen=EDGE),
        tint((0, roof_h / 4), w, roof_h / 2, "quiet", 0.22),
        *rafters,
        line((-w / 2, 0), (w / 2, 0), pen=EDGE._replace(width_mm=0.6)),
        box((w * 0.3, -roof_h * 0.17), pane * 0.13, pane * 0.13, pen=FINE, fill="copper"),
    )
