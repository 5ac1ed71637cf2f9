"""How large the desktop writes its own words, so that the window follows."""

import sys

from PySide6.QtGui import QFontDatabase, QFontInfo

from app.theme.words import LEAST, MOST

# Points a desktop's font has when nobody chose another; common practice, from memory of common desktops.
USUAL_PT = {"win32": 9.0, "darwin": 13.0}
ELSEWHERE_PT = 11.0


def factor_of_desktop(platform: str = sys.platform) -> float:
    """Return how much larger the desktop's own words are than usual; never below 1."""
    points = QFontInfo(QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont)).pointSizeF()
    return min(max(points / USUAL_PT.get(platform, ELSEWHERE_PT), LEAST), MOST)
