"""The symbol of every kind by name, drawn once and kept."""

from collections.abc import Sequence
from functools import lru_cache
from importlib import import_module
from typing import Any, NamedTuple

from wiring.drawings.schemdraw_picture import PictureFigure
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Anchor, Disc, Item, Path, Words

MM_PER_UNIT = 8.0
LENGTH_MM = 15.0  # from one terminal to the other, leads and all
NAMES = (
    *("led", "lamp", "led_strip", "building", "flasher", "module", "motor", "coil_pair", "servo", "relay"),
    *("switch", "push", "supply", "ac_supply", "battery", "fuse", "resettable_fuse", "resistor", "diode"),
    *("rectifier", "contact", "push_delayed"),
)
# The sets a drawing may be made with; what a set lacks is drawn as in the first.
SETS = {"iec": "wiring.drawings.symbols", "ieee": "wiring.drawings.symbols_ieee"}
IEEE_NAMES = (
    *("led", "lamp", "flasher", "coil_pair", "relay", "switch", "push", "contact", "ac_supply", "fuse"),
    *("resettable_fuse", "resistor", "diode", "push_delayed"),
)
# Where the idle throw of a changeover leaves the symbol: along it, and to its side.
THROW_ALONG_MM, THROW_ASIDE_MM = (LENGTH_MM - MM_PER_UNIT) / 2 + 0.56, 0.62 * MM_PER_UNIT


class Symbol(NamedTuple):
    """Items from the first terminal at (0, 0) to the second, and how far they reach to each side."""

    items: tuple[Item, ...]
    box: tuple[float, float, float, float]  # left, top, right, bottom of the ink


@lru_cache(maxsize=512)
def symbol(name: str, state: str = "", way: str = "down", symbols: str = "iec") -> Symbol:
    """Return a symbol that runs "down", "up", "right" or "left" from its first terminal.

    The first terminal is at (0, 0), the second lies LENGTH_MM along the way. A name without a symbol of its
    own gives the plain box of a module. `symbols` names one of SETS; ValueError for another.
    """
    if symbols not in SETS:
        raise ValueError(f"There is no set of symbols “{symbols}”; choose from {', '.join(SETS)}.")
    from schemdraw import Drawing

    own = SETS["ieee"] if symbols == "ieee" and name in IEEE_NAMES else SETS["iec"]
    module = import_module(f"{own}.{name if name in NAMES else 'module'}")
    drawing = Drawing(show=False, canvas="svg")
    length = LENGTH_MM / MM_PER_UNIT
    end = {"down": (0, -length), "up": (0, length), "right": (length, 0), "left": (-length, 0)}[way]
    element = module.element(state).endpoints((0, 0), end)
    if way in ("up", "left"):
        element = element.flip()  # so that what lies beside a symbol is on the same side either way
    placed: Any = drawing.add(element)
    figure = PictureFigure(MM_PER_UNIT)
    placed._draw(figure)
    return Symbol(tuple(figure.items), items_box(figure.items))


def items_box(items: Sequence[Item]) -> tuple[float, float, float, float]:
    """Return the rectangle that holds lines, discs and words: left, top, right, bottom."""
    boxes = [b for b in map(_box, items) if b]
    if not boxes:
        return 0.0, 0.0, 0.0, 0.0
    return (
        min(b[0] for b in boxes),
        min(b[1] for b in boxes),
        max(b[2] for b in boxes),
        max(b[3] for b in boxes),
    )


def _box(item: Item) -> tuple[float, float, float, float] | None:
    if isinstance(item, Words):
        return words_box(item)
    if isinstance(item, Disc):
        (x, y), rx, ry = item.centre, item.radius_x_mm, item.radius_y_mm
        return x - rx, y - ry, x + rx, y + ry
    if isinstance(item, Path) and item.points:
        xs, ys = [p[0] for p in item.points], [p[1] for p in item.points]
        return min(xs), min(ys), max(xs), max(ys)
    if isinstance(item, Anchor):
        return *item.at, *item.at
    return None
