"""Read a value as it is typed: ``22 mA``, ``4k7``, ``8 ft 6 in``, ``2,4 m``, ``10 %``."""

import math
import re

from wiring.quantities.not_understood import NotUnderstood as NotUnderstood
from wiring.quantities.not_understood import refusal
from wiring.quantities.numbers import NUMBER, number, tidied, two_ways
from wiring.quantities.quantity import SIGNED, Quantity, name_of
from wiring.quantities.units import converted, quantity_of, unit_of

LONGEST_TEXT = 60
LARGEST = 1e12  # nothing on a layout is a million million of anything

_VALUE = re.compile(rf"([+-]?) ?({NUMBER}) ?([^0-9.,/+-]*[23]?)")
_FEET_INCHES = re.compile(
    rf"""([+-]?) ?({NUMBER}) ?(?:'|ft\.?|foot|feet) ?-? ?({NUMBER}) ?(?:"|''|in\.?|inch|inches)?""",
    re.IGNORECASE,
)
_LETTER_FOR_POINT = re.compile(r"([+-]?)([0-9]*)([A-Za-zµΩ])([0-9]+) ?(?:ohms?|Ω|F)?")
_STANDS_FOR_POINT: dict[Quantity, dict[str, str]] = {
    Quantity.RESISTANCE: {"R": "ohm", "r": "ohm", "Ω": "ohm", "k": "kiloohm", "K": "kiloohm", "M": "megaohm"},
    Quantity.CAPACITANCE: {"p": "pF", "n": "nF", "µ": "uF", "u": "uF", "m": "mF"},
    Quantity.VOLTAGE: {"V": "V", "v": "V"},
}


def read(text: str, quantity: Quantity | str, bare: str = "") -> float:
    """Return the value in the unit the quantity is kept in, see :class:`Quantity`.

    `bare` is the unit a number without one is in; without it that is the unit the quantity is kept in. A
    letter can stand for the point as in IEC 60062 (``4k7``, ``4R7``). Raises NotUnderstood, and nothing else,
    for what is no finite value of that quantity.
    """
    quantity = Quantity(quantity)
    if len(text) > LONGEST_TEXT:
        raise refusal(text, quantity, f"is too long for {name_of(quantity)}")
    typed = re.sub(r"(?<=[a-z])\.$", "", tidied(text))  # "8 in."
    value = _feet_and_inches(typed) if quantity is Quantity.LENGTH else None
    if value is None:
        value = _letter_for_point(typed, quantity)
    if value is None:
        value = _number_and_unit(text, typed, quantity, bare)
    return _sensible(value, text, quantity)


def _feet_and_inches(typed: str) -> float | None:
    match = _FEET_INCHES.fullmatch(typed)
    if match is None or two_ways(match[2]) or two_ways(match[3]):
        return None
    try:
        feet, inches = number(match[2]), number(match[3])
    except ValueError:
        return None
    metres = converted(feet, "foot", Quantity.LENGTH) + converted(inches, "inch", Quantity.LENGTH)
    return -metres if match[1] == "-" else metres


def _letter_for_point(typed: str, quantity: Quantity) -> float | None:
    match = _LETTER_FOR_POINT.fullmatch(typed)
    unit = _STANDS_FOR_POINT.get(quantity, {}).get(match[3]) if match else None
    if match is None or unit is None:
        return None
    value = converted(float(f"{match[2] or 0}.{match[4]}"), unit, quantity)
    return -value if match[1] == "-" else value


def _number_and_unit(text: str, typed: str, quantity: Quantity, bare: str) -> float:
    match = _VALUE.fullmatch(typed)
    if match is None:
        raise refusal(text, quantity)
    sign, digits, spelled = match[1], match[2], match[3].strip()
    if two_ways(digits):
        raise refusal(text, quantity, "can be read in two ways, write it without the separator")
    try:
        value = number(digits)
    except ValueError:
        raise refusal(text, quantity) from None
    value = -value if sign == "-" else value
    spelled = spelled or bare
    if not spelled:
        if quantity is Quantity.FRACTION and value > 1.0:
            raise refusal(text, quantity, "is more than the whole unless it is per cent")
        return value
    unit = unit_of(spelled, quantity)
    if unit is None:
        other = quantity_of(spelled)
        why = f"is {name_of(other)}, not {name_of(quantity)}" if other else ""
        raise refusal(text, quantity, why)
    return converted(value, unit, quantity)


def _sensible(value: float, text: str, quantity: Quantity) -> float:
    if not math.isfinite(value) or abs(value) > LARGEST:
        raise refusal(text, quantity, "is too large to be real")
    if value < 0.0 and quantity not in SIGNED:
        raise refusal(text, quantity, "is less than nothing")
    if quantity is Quantity.TEMPERATURE and value < -273.15:
        raise refusal(text, quantity, "is colder than anything can be")
    if quantity is Quantity.FRACTION and value > 1.0:
        raise refusal(text, quantity, "is more than the whole")
    if quantity is Quantity.COUNT and value != int(value):
        raise refusal(text, quantity, "is not a whole number")
    return value + 0.0  # never minus zero
