"""The points of a part that take a wire: copper dots with their polarity beside."""

import math

from wiring.catalogue.kind import Kind, Terminal
from wiring.drawings.signs.hand import line, wave
from wiring.pictures.picture import Disc, Item, Pen

RADIUS_MM = 1.1
_RIM = Pen("paper", 0.25)
_MARK = Pen("ink", 0.3)


def terminal_dot(x_mm: float, y_mm: float, radius_mm: float = RADIUS_MM) -> Disc:
    """Return one copper dot."""
    return Disc((x_mm, y_mm), radius_mm, radius_mm, _RIM, "copper")


def terminals(kind: Kind, radius_mm: float = RADIUS_MM) -> tuple[Item, ...]:
    """Return the dots of all terminals of a kind, and their marks, about the part's centre, unturned."""
    found: list[Item] = []
    for terminal in kind.terminals:
        found.append(terminal_dot(terminal.x_mm, terminal.y_mm, radius_mm))
        found.extend(polarity_mark(kind, terminal, radius_mm))
    return tuple(found)


def polarity_mark(kind: Kind, terminal: Terminal, radius_mm: float = RADIUS_MM) -> tuple[Item, ...]:
    """Return the plus, minus or wave of a terminal, set a little towards the inside of the part."""
    if not terminal.mark:
        return ()
    x, y = _mark_spot(kind, terminal, radius_mm)
    s = 0.75 * radius_mm
    if terminal.mark == "+":
        return line((x - s, y), (x + s, y), pen=_MARK), line((x, y - s), (x, y + s), pen=_MARK)
    if terminal.mark == "-":
        return (line((x - s, y), (x + s, y), pen=_MARK),)
    return (wave((x, y), 2.2 * s, _MARK),)


def _mark_spot(kind: Kind, terminal: Terminal, radius_mm: float) -> tuple[float, float]:
    """Return where a mark stands: inside the body beside its terminal, else beside the lead to it."""
    x, y, step = terminal.x_mm, terminal.y_mm, 2.4 * radius_mm
    out_x, out_y = abs(x) > kind.width_mm / 2, abs(y) > kind.height_mm / 2
    if out_x:
        return x, y + (step * 0.85 if y > 0 else -step * 0.85)
    if out_y:
        return x + (step * 0.85 if x > 0 else -step * 0.85), y
    # towards the centre along the way it is farther out, so that the mark never leaves the part
    if abs(x) / max(kind.width_mm, 1.0) >= abs(y) / max(kind.height_mm, 1.0):
        return x - math.copysign(step, x), y
    return x, y - math.copysign(step, y)
