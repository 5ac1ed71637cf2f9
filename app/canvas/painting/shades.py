"""The colours of the drawing surface, mixed from the roles of the theme."""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtGui import QColor

from app.theme.surfaces import is_dark, mixed
from wiring.pictures.theme import Theme

# Quiet hues that tell scenes apart beside their names; none of them is a status or a wire.
SCENE_HUES = ("#8a6d3b", "#4f7a74", "#7a5f86", "#5d7394", "#7d7a3f")


class Shades(NamedTuple):
    """Colours as Qt takes them; `theme` is what they were made from."""

    theme: Theme
    dark: bool
    around: QColor  # beyond the board
    paper: QColor
    raised: QColor
    grid: QColor
    grid_strong: QColor
    board_edge: QColor
    track_bed: QColor
    rail: QColor
    ink: QColor
    quiet: QColor
    faint: QColor
    copper: QColor
    label_ground: QColor
    shadow: QColor


def shades(theme: Theme) -> Shades:
    """Return the colours for a theme."""
    return _shades(tuple(sorted(theme.items())))


@lru_cache(maxsize=8)
def _shades(roles: tuple[tuple[str, str], ...]) -> Shades:
    theme = dict(roles)
    paper, ink = theme["paper"], theme["ink"]
    dark = is_dark(theme)
    ground = QColor(paper)
    ground.setAlphaF(0.82)
    return Shades(
        theme=theme,
        dark=dark,
        around=QColor(mixed(paper, "#000000", 0.16) if dark else mixed(paper, ink, 0.055)),
        paper=QColor(paper),
        raised=QColor(theme["raised"]),
        grid=QColor(mixed(paper, ink, 0.045 if dark else 0.05)),
        grid_strong=QColor(mixed(paper, ink, 0.10 if dark else 0.105)),
        board_edge=QColor(mixed(paper, ink, 0.42)),
        track_bed=QColor(mixed(paper, ink, 0.10 if dark else 0.085)),
        rail=QColor(mixed(paper, ink, 0.30 if dark else 0.26)),
        ink=QColor(ink),
        quiet=QColor(theme["quiet"]),
        faint=QColor(theme["faint"]),
        copper=QColor(theme["copper"]),
        label_ground=ground,
        shadow=QColor(0, 0, 0, 70 if dark else 28),
    )


def with_alpha(colour: QColor, share: float) -> QColor:
    """Return the colour let through by a share."""
    made = QColor(colour)
    made.setAlphaF(share)
    return made
