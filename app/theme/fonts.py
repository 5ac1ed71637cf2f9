"""The one family of type, shipped with the program so that screen and paper measure alike."""

from functools import cache, lru_cache
from pathlib import Path

from PySide6.QtGui import QFont, QFontDatabase, QFontMetricsF

import wiring.pictures
from app.theme.words import scaled

FAMILY = "Lato"
WEIGHTS = {
    "regular": QFont.Weight.Normal,
    "italic": QFont.Weight.Normal,
    "semibold": QFont.Weight.DemiBold,
    "bold": QFont.Weight.Bold,
}
PAINT_PIXELS = 100  # pictures are painted at this size and scaled, so that hinting never moves a letter


@cache
def load_fonts() -> tuple[str, ...]:
    """Make the shipped fonts known to Qt, once; return the families they brought."""
    folder = Path(wiring.pictures.__file__).parent / "fonts"
    families: list[str] = []
    for path in sorted(folder.glob("*.ttf")):
        families += QFontDatabase.applicationFontFamilies(QFontDatabase.addApplicationFont(str(path)))
    return tuple(families)


def screen_font(pixels: float = 13, weight: str = "regular") -> QFont:
    """Return the font of the window at a size in logical pixels, which larger words enlarge."""
    return fixed_font(scaled(pixels), weight)


def fixed_font(pixels: float, weight: str = "regular") -> QFont:
    """Return the font at a size in logical pixels that stays as it is, to fit a sign for example."""
    font = QFont(FAMILY)
    font.setPixelSize(round(pixels))
    font.setWeight(WEIGHTS[weight])
    font.setItalic(weight == "italic")
    return font


@cache
def picture_font(weight: str) -> QFont:
    """Return the font pictures are painted with: 100 pixels to the em and no hinting.

    Pairs are not kerned and letters not joined: the PDF and `wiring.pictures.metrics` do neither.
    """
    font = fixed_font(PAINT_PIXELS, weight)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    font.setKerning(False)
    for joined in ("liga", "calt", "clig"):
        font.setFeature(QFont.Tag(joined), 0)
    return font


@lru_cache(maxsize=4096)
def picture_width(text: str, weight: str) -> float:
    """Return the width of a line in em, the same as `wiring.pictures.metrics` measures for the PDF."""
    return QFontMetricsF(picture_font(weight)).horizontalAdvance(text) / PAINT_PIXELS
