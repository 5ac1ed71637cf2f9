"""How wide and high words come out on paper, measured from the typeface itself; no text is ever guessed."""

import math
from collections.abc import Sequence
from functools import lru_cache

from wiring.pictures.picture import Point, Words
from wiring.pictures.typefaces import BOX_EM, runs, typeface

Box = tuple[float, float, float, float]  # left, top, right, bottom in mm
ELLIPSIS = "…"
LINE_EM = 1.25  # from one baseline to the next in a block of lines
GROUND_PAD_EM = 0.12  # air between text and the edge of the ground laid under it
# what a number before it is not parted from at the end of a line
_UNITS = frozenset(
    ("V", "mV", "A", "mA", "Ah", "mAh", "W", "mW", "Ω", "kΩ", "MΩ", "µF", "m", "cm", "mm", "mm²", "%", "ft")
)


def width_mm(text: str, size_mm: float, weight: str = "regular") -> float:
    """Return the advance of one line of text; signs the typeface lacks count as the box they print as."""
    return _width_em(text, weight) * size_mm


def cap_mm(size_mm: float, weight: str = "regular") -> float:
    """Return the height of a capital letter at a text size."""
    return typeface(weight).cap_em * size_mm


def ascent_mm(size_mm: float, weight: str = "regular") -> float:
    """Return how far letters may reach above the baseline."""
    return typeface(weight).ascent_em * size_mm


def descent_mm(size_mm: float, weight: str = "regular") -> float:
    """Return how far letters reach below the baseline, as a positive length."""
    return typeface(weight).descent_em * size_mm


def baseline_mm(words: Words) -> float:
    """Return how far below `at` the baseline lies, before the words are turned."""
    if words.stand == "base":
        return 0.0
    cap = cap_mm(words.size_mm, words.weight)
    return cap / 2 if words.stand == "middle" else cap


def start_mm(words: Words) -> float:
    """Return where the first letter starts, measured along the line from `at`; never positive."""
    if words.align == "left":
        return 0.0
    width = width_mm(words.text, words.size_mm, words.weight)
    return -width / 2 if words.align == "centre" else -width


def words_corners(words: Words, pad_mm: float = 0.0) -> tuple[Point, Point, Point, Point]:
    """Return the four corners of the line of text, turned as it is: from its ascent to its descent."""
    left = start_mm(words) - pad_mm
    right = start_mm(words) + width_mm(words.text, words.size_mm, words.weight) + pad_mm
    base = baseline_mm(words)
    top = base - ascent_mm(words.size_mm, words.weight) - pad_mm
    bottom = base + descent_mm(words.size_mm, words.weight) + pad_mm
    cos, sin = math.cos(math.radians(words.turn_deg)), math.sin(math.radians(words.turn_deg))
    x, y = words.at
    corners = [
        (x + across * cos - down * sin, y + across * sin + down * cos)
        for across, down in ((left, top), (right, top), (right, bottom), (left, bottom))
    ]
    return corners[0], corners[1], corners[2], corners[3]


def ground_corners(words: Words) -> tuple[Point, Point, Point, Point]:
    """Return the corners of the ground that is laid under words which have one."""
    return words_corners(words, GROUND_PAD_EM * words.size_mm)


def words_box(words: Words) -> Box:
    """Return the upright rectangle that holds the words: left, top, right, bottom in mm."""
    if not words.turn_deg:
        x, y = words.at
        wide = width_mm(words.text, words.size_mm, words.weight)
        left = x - {"left": 0.0, "centre": 0.5, "right": 1.0}[words.align] * wide
        base, face = y + baseline_mm(words), typeface(words.weight)
        return (
            left,
            base - face.ascent_em * words.size_mm,
            left + wide,
            base + face.descent_em * words.size_mm,
        )
    corners = words_corners(words)
    xs, ys = [p[0] for p in corners], [p[1] for p in corners]
    return min(xs), min(ys), max(xs), max(ys)


def fitted(text: str, max_mm: float, size_mm: float, weight: str = "regular") -> str:
    """Return the text, or as much of its start as fits with an ellipsis; empty when not even that fits."""
    if width_mm(text, size_mm, weight) <= max_mm:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if width_mm(text[:middle].rstrip() + ELLIPSIS, size_mm, weight) <= max_mm:
            low = middle
        else:
            high = middle - 1
    if low == 0:
        return ELLIPSIS if width_mm(ELLIPSIS, size_mm, weight) <= max_mm else ""
    return text[:low].rstrip() + ELLIPSIS


def wrapped(text: str, max_mm: float, size_mm: float, weight: str = "regular") -> tuple[str, ...]:
    """Return lines no wider than told, broken between words, inside one only where it is too long itself.

    A number stays with its unit, and a count with what is counted.
    """
    lines: list[str] = []
    for paragraph in text.splitlines() or [""]:
        line = ""
        words = paragraph.split()
        whole = " ".join(words)
        if width_mm(whole, size_mm, weight) <= max_mm:
            lines.append(whole)
            continue
        for word in _together(whole, max_mm, size_mm, weight):
            longer = f"{line} {word}" if line else word
            if width_mm(longer, size_mm, weight) <= max_mm:
                line = longer
                continue
            if line:
                lines.append(line)
            pieces = _pieces(word, max_mm, size_mm, weight)
            lines.extend(pieces[:-1])
            line = pieces[-1]
        lines.append(line)
    return tuple(lines)


def widest_mm(texts: Sequence[str], size_mm: float, weight: str = "regular") -> float:
    """Return the width of the widest text, 0 when there is none."""
    return max((width_mm(t, size_mm, weight) for t in texts), default=0.0)


def overlap(one: Box, other: Box, tolerance_mm: float = 0.01) -> bool:
    """Return whether two rectangles share more than an edge."""
    return (
        one[0] < other[2] - tolerance_mm
        and other[0] < one[2] - tolerance_mm
        and one[1] < other[3] - tolerance_mm
        and other[1] < one[3] - tolerance_mm
    )


def _together(text: str, max_mm: float, size_mm: float, weight: str) -> list[str]:
    """Return the words of a text, those that belong together as one where that is no wider than told."""
    kept: list[str] = []
    before = ""
    for word in text.split():
        longer = f"{kept[-1]} {word}" if kept else word
        if _belongs(before, word) and width_mm(longer, size_mm, weight) <= max_mm:
            kept[-1] = longer
        else:
            kept.append(word)
        before = word
    return kept


def _belongs(before: str, word: str) -> bool:
    if before == "×":
        return word[:1].isdigit()
    return (word == "×" or word.rstrip(",.;:)") in _UNITS) and before[-1:].isdigit()


@lru_cache(maxsize=32768)
def _width_em(text: str, weight: str) -> float:
    advances = typeface(weight).advances_em
    return sum(sum(map(advances.__getitem__, map(ord, run))) if run else BOX_EM for run in runs(text, weight))


def _pieces(word: str, max_mm: float, size_mm: float, weight: str) -> list[str]:
    pieces: list[str] = []
    piece = ""
    for sign in word:
        if piece and width_mm(piece + sign, size_mm, weight) > max_mm:
            pieces.append(piece)
            piece = ""
        piece += sign
    return [*pieces, piece]
