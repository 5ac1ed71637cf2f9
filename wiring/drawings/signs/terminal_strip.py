"""A terminal strip: a bar with a slotted screw at every terminal and walls between the ways."""

from itertools import pairwise

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, HAIR, State, box, line, screw
from wiring.pictures.picture import Item
from wiring.plan.part import Part


def pitch_mm(kind: Kind) -> float:
    """Return the least distance between two terminals of a kind along x, else its width."""
    xs = sorted({round(t.x_mm, 3) for t in kind.terminals})
    return min((b - a for a, b in pairwise(xs)), default=kind.width_mm)


def terminal_strip(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the bar, its walls, and a screw behind each terminal, towards the middle of the bar."""
    del part, state
    w, h = kind.width_mm, kind.height_mm
    pitch = pitch_mm(kind)
    xs = sorted({round(t.x_mm, 3) for t in kind.terminals})
    walls = [line(((a + b) / 2, -h / 2), ((a + b) / 2, h / 2), pen=HAIR) for a, b in pairwise(xs)]
    r = min(pitch, h) * 0.27
    screws: list[Item] = []
    for i, x in enumerate(xs):
        screws += screw((x, 0.0), r, 20.0 + 37.0 * (i % 5))
    return box((0, 0), w, h, corner_mm=min(w, h) * 0.06, pen=EDGE), *walls, *screws
