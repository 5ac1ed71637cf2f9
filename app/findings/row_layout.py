"""Where the words of a finding lie in its row, and the button that mends it: beside them, or below."""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QRect
from PySide6.QtGui import QFontMetrics, QTextLayout, QTextOption

from app.theme.fonts import screen_font
from app.theme.words import factor, lined, scaled
from wiring.findings.finding import Finding

INDENT, MARGIN, TOP, LINE = 40, 16, 7, 19
BESIDE_PX = 620  # a row that is narrower has its button below the words
BUTTON_HEIGHT, BUTTON_AIR, GAP = 26, 26, 18


class RowLayout(NamedTuple):
    """The lines of a row, its height, and the button's place in it; None for a finding without an act."""

    what: tuple[str, ...]
    rest: tuple[str, ...]
    height: int
    button: QRect | None


def row_layout(finding: Finding, width: int) -> RowLayout:
    """Return how a finding lies in a row of that width."""
    return _laid_out(finding, width, factor())


@lru_cache(maxsize=512)
def _laid_out(finding: Finding, width: int, _factor: float) -> RowLayout:
    room = width - INDENT - MARGIN
    if finding.act is None:
        return _with_words(finding, room)
    wide = QFontMetrics(screen_font(13)).horizontalAdvance(finding.act.words) + scaled(BUTTON_AIR)
    high = lined(BUTTON_HEIGHT)
    if width >= scaled(BESIDE_PX):
        words = _with_words(finding, room - wide - GAP)
        top = (2 * lined(LINE) + 15 - high) // 2
        return words._replace(button=QRect(width - MARGIN - wide, top, wide, high))
    words = _with_words(finding, room)
    button = QRect(INDENT, words.height - 2, min(wide, max(room, 1)), high)
    return words._replace(height=words.height + high + 6, button=button)


def _with_words(finding: Finding, room: int) -> RowLayout:
    what = _lines(finding.what, room, "semibold")
    rest = _lines(" ".join(s for s in (finding.why, finding.mend) if s), room)
    return RowLayout(what, rest, (len(what) + len(rest)) * lined(LINE) + 15, None)


def _lines(text: str, width: float, weight: str = "regular") -> tuple[str, ...]:
    layout = QTextLayout(text, screen_font(13, weight))
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WordWrap)
    layout.setTextOption(option)
    found: list[str] = []
    layout.beginLayout()
    while (line := layout.createLine()).isValid():
        line.setLineWidth(max(width, 80))
        start = line.textStart()
        found.append(text[start : start + line.textLength()].rstrip())
    layout.endLayout()
    return tuple(found)
