"""Colours of the window itself, mixed from the roles that pictures use, so both always agree."""

from typing import NamedTuple

from PySide6.QtGui import QColor, QPalette

from wiring.pictures.theme import DARK, LIGHT, Theme

LOUDER = 0.2  # words of the window stand on darker grounds than those of pictures, under the pointer say
THEMES: dict[str, Theme] = {"light": LIGHT, "dark": DARK}


class Surfaces(NamedTuple):
    """Colours a widget needs beyond ink and paper, as ``#rrggbb``."""

    header: str
    side: str  # tray and inspector
    field: str
    edge: str  # outline of a field, strong enough to be found
    hair: str  # lines that only part one area from the next
    hover: str
    pressed: str
    chosen: str  # ground of what is selected
    ink: str
    quiet: str
    copper: str
    on_copper: str
    danger: str
    weak: str
    note: str
    paper: str


def surfaces(theme: Theme) -> Surfaces:
    """Return the window's colours for a theme."""
    paper, ink, raised, copper = theme["paper"], theme["ink"], theme["raised"], theme["copper"]
    dark = is_dark(theme)
    return Surfaces(
        header=mixed(raised, ink, 0.02 if dark else 0.0),
        side=raised,
        field=mixed(raised, paper, 0.75) if dark else "#ffffff",
        edge=mixed(raised, ink, 0.55),
        hair=mixed(raised, ink, 0.16 if dark else 0.13),
        hover=mixed(raised, ink, 0.08 if dark else 0.055),
        pressed=mixed(raised, ink, 0.14 if dark else 0.11),
        chosen=mixed(raised, copper, 0.22 if dark else 0.16),
        ink=ink,
        quiet=mixed(theme["quiet"], ink, LOUDER),
        copper=copper,
        on_copper="#1b1410" if dark else "#ffffff",
        danger=theme["danger"],
        weak=theme["weak"],
        note=theme["note"],
        paper=paper,
    )


def is_dark(theme: Theme) -> bool:
    """Whether the theme's paper is darker than its ink."""
    return QColor(theme["paper"]).lightness() < QColor(theme["ink"]).lightness()


def mixed(one: str, other: str, share: float) -> str:
    """Return the first colour with a share of the second laid over it."""
    a, b = QColor(one), QColor(other)
    parts = ((a.red(), b.red()), (a.green(), b.green()), (a.blue(), b.blue()))
    return "#" + "".join(f"{round(x + (y - x) * share):02x}" for x, y in parts)


def palette(theme: Theme) -> QPalette:
    """Return the Qt palette of a theme."""
    s = surfaces(theme)
    roles = {
        QPalette.ColorRole.Window: s.side,
        QPalette.ColorRole.WindowText: s.ink,
        QPalette.ColorRole.Base: s.field,
        QPalette.ColorRole.AlternateBase: s.hover,
        QPalette.ColorRole.Text: s.ink,
        QPalette.ColorRole.Button: s.side,
        QPalette.ColorRole.ButtonText: s.ink,
        QPalette.ColorRole.BrightText: s.danger,
        QPalette.ColorRole.Highlight: s.copper,
        QPalette.ColorRole.HighlightedText: s.on_copper,
        QPalette.ColorRole.Link: s.copper,
        QPalette.ColorRole.LinkVisited: s.copper,
        QPalette.ColorRole.PlaceholderText: s.quiet,
        QPalette.ColorRole.ToolTipBase: s.ink,
        QPalette.ColorRole.ToolTipText: s.side,
        QPalette.ColorRole.Light: mixed(s.side, "#ffffff", 0.1),
        QPalette.ColorRole.Midlight: s.hover,
        QPalette.ColorRole.Mid: s.hair,
        QPalette.ColorRole.Dark: s.edge,
        QPalette.ColorRole.Shadow: "#000000",
        QPalette.ColorRole.Accent: s.copper,
    }
    made = QPalette()
    for role, colour in roles.items():
        made.setColor(role, QColor(colour))
    dim = QColor(mixed(s.side, s.ink, 0.38))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, dim)
    return made
