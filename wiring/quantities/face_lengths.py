"""Lengths on a face in words: millimetres, or inches where the plan counts in them, never cm or feet."""

import math

INCH_MM = 25.4
LARGEST_MM = 10_000.0  # from here on no tenth of a millimetre is worth saying


def length_words(mm: float, *, us: bool) -> str:
    """Return a length on a face as rules and drills count it: ``120 mm``, ``4 3/4"``."""
    if not us:
        return f"{mm:.4g} mm" if mm < LARGEST_MM else f"{mm:.0f} mm"
    eighths = round(mm / INCH_MM * 8)
    whole, rest = divmod(eighths, 8)
    if abs(mm / INCH_MM * 8 - eighths) > 0.02:
        return f'{mm / INCH_MM:.4g}"'
    common = math.gcd(rest, 8)
    part = f"{rest // common}/{8 // common}" if rest else ""
    return " ".join(words for words in (str(whole) if whole or not part else "", part) if words) + '"'
