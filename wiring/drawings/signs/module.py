"""A small electronic board: sound, constant current, whatever works behind two wires."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, dot, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part

_PIN = Pen("quiet", 0.35)


def board(kind: Kind) -> tuple[Item, ...]:
    """Return the bare board with a mounting hole in each of two corners."""
    w, h = kind.width_mm, kind.height_mm
    inset = min(w, h) * 0.14
    holes = [
        dot((sx * (w / 2 - inset), sy * (h / 2 - inset)), inset * 0.5, pen=FINE, fill="paper")
        for sx, sy in ((1, -1), (-1, 1))
    ]
    return (box((0, 0), w, h, corner_mm=inset * 0.6, pen=EDGE), *holes)


def module(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the board with its chip and a round can."""
    del part, state
    w, h = kind.width_mm, kind.height_mm
    s = min(w, h) * 0.42
    pins: list[Item] = []
    for i in range(4):
        x = -s * 0.375 + s * 0.25 * i - w * 0.1
        pins.append(line((x, -s * 0.72), (x, s * 0.72), pen=_PIN))
    return (
        *board(kind),
        *pins,
        box((-w * 0.1, 0), s, s, pen=FINE, fill="quiet"),
        dot((-w * 0.1 - s * 0.32, -s * 0.32), s * 0.07, pen=Pen("paper", 0.2)),
        dot((w * 0.24, 0), s * 0.4, pen=FINE, fill="faint"),
    )
