"""A fuse: a glass tube with caps and the wire in it, whole or parted."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, leads, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def fuse(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the tube and its wire; a blown one shows the gap."""
    del part
    w, h = kind.width_mm, kind.height_mm
    body_w, body_h = w * 0.78, h * 0.62
    cap_w = body_w * 0.2
    caps = [
        box((sx * (body_w - cap_w) / 2, 0), cap_w, body_h, corner_mm=h * 0.04, pen=FINE, fill="quiet")
        for sx in (-1, 1)
    ]
    wire, end = Pen("copper", max(0.4, h * 0.05)), body_w / 2 - cap_w
    if state.position == "blown":
        strands: list[Item] = [
            line((-end, 0), (-end * 0.3, -body_h * 0.2), pen=wire),
            line((end, 0), (end * 0.3, body_h * 0.2), pen=wire),
        ]
    else:
        strands = [line((-end, 0), (end, 0), pen=wire)]
    return (
        *leads(kind, body_w / 2, 0.0),
        box((0, 0), body_w, body_h, corner_mm=h * 0.08, pen=EDGE, fill="paper"),
        *strands,
        *caps,
    )
