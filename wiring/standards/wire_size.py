"""Wire sizes as they are written: American gauges and square millimetres."""

import math
import re
from functools import cache
from typing import NamedTuple

from wiring.quantities.not_understood import NotUnderstood, quoted

AWG_RANGE = (4, 40)
AREA_RANGE = (0.005, 25.0)

_AWG = re.compile(r"(?:(?:awg|#|ga\.?) ?([0-9]{1,2})|([0-9]{1,2}) ?(?:awg|ga\.?|gauge))", re.IGNORECASE)
_AREA = re.compile(
    r"([0-9]{1,3}(?:[.,][0-9]{1,4})?|[.,][0-9]{1,4}) ?(?:mm²|mm2|mm\^2|sq ?mm|qmm)", re.IGNORECASE
)


class WireSize(NamedTuple):
    """A size as it is written on sheets, and the copper it stands for."""

    label: str
    area_mm2: float
    is_awg: bool
    gauge: int = 0  # of an AWG size


@cache
def read_size(text: str) -> WireSize:
    """Return the size of a text such as ``22 AWG`` or ``0.5 mm²``; NotUnderstood when it is none."""
    typed = " ".join(text.split()) if len(text) <= 40 else ""
    if match := _AWG.fullmatch(typed):
        gauge = int(match[1] or match[2])
        if AWG_RANGE[0] <= gauge <= AWG_RANGE[1]:
            return WireSize(f"{gauge} AWG", math.pi / 4.0 * awg_diameter_mm(gauge) ** 2, True, gauge)
        raise _no_size(text, f"lies outside {AWG_RANGE[0]} to {AWG_RANGE[1]} AWG")
    if match := _AREA.fullmatch(typed):
        area = float(match[1].replace(",", "."))
        if AREA_RANGE[0] <= area <= AREA_RANGE[1]:
            return WireSize(f"{area:g} mm²", area, False)
        raise _no_size(text, f"lies outside {AREA_RANGE[0]:g} to {AREA_RANGE[1]:g} mm²")
    raise _no_size(text, "is no wire size")


def _no_size(text: str, why: str) -> NotUnderstood:
    return NotUnderstood(f"{quoted(text)} {why}; type for example 22 AWG or 0.5 mm².")


def awg_diameter_mm(gauge: int) -> float:
    """Return the diameter of a solid wire of that gauge: ASTM B258."""
    return float(0.127 * 92.0 ** ((36 - gauge) / 39.0))
