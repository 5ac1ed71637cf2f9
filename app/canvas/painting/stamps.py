"""Signs of parts painted once and kept as pixmaps, one for each kind, state, turn and size shown."""

import math
from collections import OrderedDict

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPixmap

from app.canvas.geometry import UNKNOWN_MM, Box, own_box
from app.canvas.hits.hit import SMALLEST_PX
from app.canvas.painting.lamp_look import shade_of
from app.canvas.painting.shades import Shades
from app.theme.paint_picture import paint_items
from wiring.catalogue.kind import Kind
from wiring.drawings.signs.all_signs import sign
from wiring.drawings.signs.hand import State
from wiring.drawings.signs.terminals import terminals
from wiring.pictures.picture import Item, Path, Pen
from wiring.plan.part import Part

RIM_PX = 3  # room round a sign for its lines and dots
TERMINALS_FROM = 0.8  # pixels per millimetre from which terminals are painted
BUDGET_PX = 24_000_000  # pixels of all kept stamps together: about 100 MB
LARGEST_PX = 2600  # a stamp with a longer edge is not kept as one


class Stamp:
    """A pixmap and where its left top corner lies from the part's centre, in pixels."""

    __slots__ = ("dx", "dy", "pixmap")

    def __init__(self, pixmap: QPixmap, dx: float, dy: float) -> None:
        self.pixmap, self.dx, self.dy = pixmap, dx, dy


class Stamps:
    """Makes stamps as they are asked for and forgets those not used for longest."""

    def __init__(self) -> None:
        self._kept: OrderedDict[tuple[object, ...], Stamp] = OrderedDict()
        self._pixels = 0
        self.made = 0  # so far

    def stamp(
        self, kind: Kind | None, part: Part, state: State, scale: float, shades: Shades, ratio: float
    ) -> Stamp | None:
        """Return the stamp of a part; None when it would be too large to keep, see `paint_sign`."""
        lit = None if state.lightness is None else shade_of(state.lightness)
        state = state._replace(lightness=lit)
        settings = tuple(sorted(part.settings.items())) if part.settings else ()
        key = (part.kind, settings, part.turn_deg, state, scale, shades.dark, ratio)
        found = self._kept.get(key)
        if found is not None:
            self._kept.move_to_end(key)
            return found
        self.made += 1
        made = _made(kind, part, state, scale, shades, ratio)
        if made is not None:
            self._keep(key, made)
        return made

    def clear(self) -> None:
        """Forget everything."""
        self._kept.clear()
        self._pixels = 0

    def _keep(self, key: tuple[object, ...], stamp: Stamp) -> None:
        self._kept[key] = stamp
        self._pixels += stamp.pixmap.width() * stamp.pixmap.height()
        while self._pixels > BUDGET_PX and len(self._kept) > 1:
            _, old = self._kept.popitem(last=False)
            self._pixels -= old.pixmap.width() * old.pixmap.height()


def shown_scale(own: Box, scale: float) -> float:
    """Return the scale a part is painted at: the camera's, or larger so that it stays to be seen."""
    longest = max(own.right - own.left, own.bottom - own.top, 0.1)
    return max(scale, SMALLEST_PX / longest)


def paint_sign(
    painter: QPainter, kind: Kind | None, part: Part, state: State, scale: float, shades: Shades
) -> None:
    """Paint a part about the painter's origin, turned as it stands."""
    painter.save()
    painter.rotate(part.turn_deg)
    painter.scale(scale, scale)
    paint_items(painter, _items(kind, part, state, scale), shades.theme)
    painter.restore()


def _items(kind: Kind | None, part: Part, state: State, scale: float) -> tuple[Item, ...]:
    if kind is None:
        edge = UNKNOWN_MM
        corners = ((-edge, -edge), (edge, -edge), (edge, edge), (-edge, edge))
        return (Path(corners, Pen("quiet", 0.5, (2.0, 1.5)), closed=True),)
    items = sign(kind, part, state)
    return (*items, *terminals(kind)) if scale >= TERMINALS_FROM else items


def _made(
    kind: Kind | None, part: Part, state: State, scale: float, shades: Shades, ratio: float
) -> Stamp | None:
    own = own_box(part, kind)
    size = shown_scale(own, scale)
    angle = math.radians(part.turn_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    corners = [(x, y) for x in (own.left, own.right) for y in (own.top, own.bottom)]
    xs = [(x * cos - y * sin) * size for x, y in corners]
    ys = [(x * sin + y * cos) * size for x, y in corners]
    left, top = math.floor(min(xs)) - RIM_PX, math.floor(min(ys)) - RIM_PX
    width, height = math.ceil(max(xs)) + RIM_PX - left, math.ceil(max(ys)) + RIM_PX - top
    if max(width, height) * ratio > LARGEST_PX:
        return None
    pixmap = QPixmap(math.ceil(width * ratio), math.ceil(height * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.translate(-left, -top)
    paint_sign(painter, kind, part, state, size, shades)
    painter.end()
    return Stamp(pixmap, left, top)
