"""Where the words of a finding lie in its row, and the buttons that mend it: beside them, or below."""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QRect
from PySide6.QtGui import QFontMetrics, QTextLayout, QTextOption

from app.theme.fonts import screen_font
from app.theme.words import factor, lined, scaled
from wiring.findings.finding import Finding

INDENT, MARGIN, TOP, LINE = 40, 16, 7, 19
BESIDE_PX = 620  # a row that is narrower has its button below the words
BUTTON_HEIGHT, BUTTON_AIR, GAP, BETWEEN = 26, 26, 18, 6


class RowLayout(NamedTuple):
    """The lines of a row, its height, and the places of its buttons; None for one that it has not."""

    what: tuple[str, ...]
    rest: tuple[str, ...]
    height: int
    button: QRect | None
    of_all: QRect | None = None  # the button that mends all findings of the sort


def row_layout(finding: Finding, width: int, all_words: str = "") -> RowLayout:
    """Return how a finding lies in a row of that width; `all_words` stand on its second button, if any."""
    return _laid_out(finding, width, all_words, factor())


@lru_cache(maxsize=512)
def _laid_out(finding: Finding, width: int, all_words: str, _factor: float) -> RowLayout:
    room = width - INDENT - MARGIN
    if finding.act is None:
        return _with_words(finding, room)
    wides = [_wide(words) for words in (finding.act.words, all_words) if words]
    high = lined(BUTTON_HEIGHT)
    tall = len(wides) * (high + BETWEEN) - BETWEEN
    if width >= scaled(BESIDE_PX):
        words = _with_words(finding, room - max(wides) - GAP)
        height = max(words.height, tall + 13)
        top = (2 * lined(LINE) + 15 - high) // 2 if len(wides) == 1 else 7
        tops = [top + n * (high + BETWEEN) for n in range(len(wides))]
        places = [QRect(width - MARGIN - w, y, w, high) for w, y in zip(wides, tops, strict=True)]
        return words._replace(height=height, button=places[0], of_all=places[1] if places[1:] else None)
    words = _with_words(finding, room)
    first = QRect(INDENT, words.height - 2, min(wides[0], max(room, 1)), high)
    if len(wides) == 1:
        return words._replace(height=words.height + high + 6, button=first)
    second = QRect(first.right() + 1 + BETWEEN, first.top(), wides[1], high)
    if sum(wides) + BETWEEN > room:  # no room side by side
        second = QRect(INDENT, first.bottom() + 1 + BETWEEN, min(wides[1], max(room, 1)), high)
    height = words.height + second.bottom() + 1 - first.top() + 6
    return words._replace(height=height, button=first, of_all=second)


def _wide(words: str) -> int:
    return QFontMetrics(screen_font(13)).horizontalAdvance(words) + scaled(BUTTON_AIR)


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
