"""How far numbers and texts of a plan may go: wide enough for any home, narrow enough to catch a slip."""

import math
import re

FARTHEST_MM = 1_000_000.0  # a kilometre either way
LONGEST_WIRE_M = 1_000.0
LONGEST_TEXT = 2_000
LONGEST_NAME = 120
LONGEST_DESIGNATION = 16
LARGEST_NUMBER = 2**53  # the largest whole number every JSON reader keeps exactly

ID_PATTERN = re.compile(r"[A-Za-z][A-Za-z0-9_]{0,39}")
DESIGNATION_PATTERN = re.compile(r"[A-Za-z0-9][A-Za-z0-9._/+]*")


def place_is_fair(*values_mm: float) -> bool:
    """Whether all coordinates are finite and within the plan's reach."""
    return all(math.isfinite(v) and abs(v) <= FARTHEST_MM for v in values_mm)


def size_is_fair(*values_mm: float) -> bool:
    """Whether all widths and heights are finite, not negative and within the plan's reach."""
    return place_is_fair(*values_mm) and all(v >= 0 for v in values_mm)


def text_is_fair(text: str, longest: int = LONGEST_TEXT) -> bool:
    """Whether a text is short enough and holds nothing but characters, line breaks and tabs."""
    return len(text) <= longest and not any(_is_control(c) for c in text)


def _is_control(character: str) -> bool:
    code = ord(character)
    return (code < 0x20 and character not in "\n\t") or code == 0x7F or 0xD800 <= code <= 0xDFFF


def designation_is_fair(text: str) -> bool:
    """Whether a text can stand after the minus sign of a designation: letters and digits, no spaces."""
    return len(text) <= LONGEST_DESIGNATION and DESIGNATION_PATTERN.fullmatch(text) is not None


def id_is_fair(text: str) -> bool:
    """Whether a text can be an id: a letter, then letters, digits and underscores."""
    return ID_PATTERN.fullmatch(text) is not None
