"""The points of a part that take a wire: copper dots with their polarity beside."""

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
    # towards the centre along the longer way, so that the mark never leaves the part
    step = 2.4 * radius_mm
    x, y = terminal.x_mm, terminal.y_mm
    across = abs(x) / max(kind.width_mm, 1.0) >= abs(y) / max(kind.height_mm, 1.0)
    if across:
        x -= step if x > 0 else -step
    else:
        y -= step if y > 0 else -step
    s = 0.75 * radius_mm
    if terminal.mark == "+":
        return line((x - s, y), (x + s, y), pen=_MARK), line((x, y - s), (x, y + s), pen=_MARK)
    if terminal.mark == "-":
        return (line((x - s, y), (x + s, y), pen=_MARK),)
    return (wave((x, y), 2.2 * s, _MARK),)
