"""How a wire looks: insulation colour, an edge that shows on any ground, a stripe, thickness by its size."""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPen

from app.theme.surfaces import mixed
from wiring.standards.colours import colour
from wiring.standards.conductors import insulated_diameter_mm

# A wire never fades out: no thinner than the first from afar, than the second near by.
THINNEST_PX, FAR_TO_NEAR = (1.1, 1.9), (0.35, 0.9)
DARK_INSULATION = 0.32  # lightness below which insulation is lost on a dark ground
PALE_INSULATION = 0.75  # and above which it is lost on light paper
# Relative luminance (WCAG 2.2) from which insulation stands 3 to 1 off the dark ground, for those who see
# no red too; below it the edge is made light instead of dark.
CLEAR_LUMINANCE = 0.2
# Above this it does not stand 3 to 1 off light paper, and a wire one pixel wide is shown so much darker.
PALE_LUMINANCE, PALE_DARKENED = 0.24, 0.42
EDGE_PX = 0.9  # on each side
UNKNOWN_MM, UNKNOWN_RGB = 1.6, "#7a7a7a"


class WirePens(NamedTuple):
    """Pens in plan millimetres: painted edge first, then core, then the stripe where there is one."""

    edge: QPen
    core: QPen
    stripe: QPen | None
    plain: tuple[QPen, QPen]  # edge and core in whole pixels, which paint several times as fast
    width_px: float


@lru_cache(maxsize=512)
def wire_pens(size: str, letters: str, scale: float, dark: bool) -> WirePens:
    """Return the pens of a wire; a size or colour nobody knows is painted as a grey wire of middling size."""
    core, stripe = insulation(letters)
    width_px = max(thickness_mm(size) * scale, thinnest_px(scale))
    edge_px = min(EDGE_PX, width_px * 0.35)
    is_lost = dark and QColor(core).lightnessF() < DARK_INSULATION
    edge = _edge(core, is_lost or (dark and _luminance(core) < CLEAR_LUMINANCE))
    # Black on slate would be two thin lines with nothing between them.
    shown = mixed(core, "#ffffff", 0.26) if is_lost else core
    return WirePens(
        _pen(edge, (width_px + 2 * edge_px) / scale),
        _pen(shown, width_px / scale),
        _dashed(stripe, width_px * 0.5 / scale) if stripe else None,
        (_cosmetic(edge, round(width_px) + 1), _cosmetic(shown, round(width_px))),
        width_px,
    )


@lru_cache(maxsize=256)
def hair_rgba(letters: str, dark: bool) -> int:
    """Return the colour of a wire one pixel wide, which shows on the paper without an edge."""
    core, _ = insulation(letters)
    light = _luminance(core)
    if dark:
        return QColor(_edge(core, True) if light < CLEAR_LUMINANCE else core).rgba()
    is_white = QColor(core).lightnessF() > PALE_INSULATION
    shown = _edge(core, False) if is_white else mixed(core, "#000000", PALE_DARKENED)
    return QColor(shown if light > PALE_LUMINANCE else core).rgba()


def thinnest_px(scale: float) -> float:
    """Return the least width of a wire on the screen."""
    far, near = FAR_TO_NEAR
    share = min(max((scale - far) / (near - far), 0.0), 1.0)
    return THINNEST_PX[0] + (THINNEST_PX[1] - THINNEST_PX[0]) * share


@lru_cache(maxsize=256)
def insulation(letters: str) -> tuple[str, str]:
    """Return the colours of the insulation and of its stripe as ``#rrggbb``; "" for no stripe."""
    try:
        found = colour(letters)
    except (KeyError, ValueError):
        return UNKNOWN_RGB, ""
    return found.rgb, found.stripe_rgb


@lru_cache(maxsize=256)
def thickness_mm(size: str) -> float:
    """Return the diameter over the insulation."""
    try:
        return insulated_diameter_mm(size)
    except (KeyError, ValueError):
        return UNKNOWN_MM


def _luminance(rgb: str) -> float:
    shade = QColor(rgb)
    parts = (shade.redF(), shade.greenF(), shade.blueF())
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _edge(core: str, is_lost: bool) -> str:
    """Return a colour that parts the insulation from the paper and from other wires."""
    if is_lost:
        return mixed(core, "#ffffff", 0.46)
    return mixed(core, "#000000", 0.62 if QColor(core).lightnessF() < PALE_INSULATION else 0.5)


def _cosmetic(rgb: str, width_px: int) -> QPen:
    pen = QPen(QColor(rgb), width_px)
    pen.setCosmetic(True)
    return pen


def _pen(rgb: str, width_mm: float) -> QPen:
    pen = QPen(QColor(rgb), width_mm)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


def _dashed(rgb: str, width_mm: float) -> QPen:
    pen = _pen(rgb, width_mm)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setDashPattern([5.0, 5.0])
    return pen
