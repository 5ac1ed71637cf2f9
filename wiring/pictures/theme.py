"""What the colour roles of a picture mean on paper, on a light screen and on a dark one."""

from collections.abc import Mapping

Theme = Mapping[str, str]

PAPER: Theme = {
    "ink": "#1d1f21",
    "quiet": "#5b5f63",
    "faint": "#c9cbcc",
    "paper": "#ffffff",
    "raised": "#f1f0ec",
    "copper": "#a4572a",
    "lit": "#f2c14e",
    "danger": "#b3261e",
    "weak": "#8a5a00",
    "note": "#3f5f7f",
}
LIGHT: Theme = {
    **PAPER,
    "ink": "#2b2f33",
    "quiet": "#6a6f74",
    "faint": "#d8d2c6",
    "paper": "#f6f1e7",
    "raised": "#fffaf0",
}
DARK: Theme = {
    "ink": "#e4e2dc",
    "quiet": "#9aa3aa",
    "faint": "#3a444c",
    "paper": "#1e262c",
    "raised": "#29333a",
    "copper": "#d98a55",
    "lit": "#ffd56b",
    "danger": "#ff7a6b",
    "weak": "#f0b64a",
    "note": "#8db4da",
}


def resolve(colour: str, theme: Theme) -> str:
    """Return ``#rrggbb`` for a role of the theme, or the colour itself when it is one already."""
    return theme.get(colour, colour)
