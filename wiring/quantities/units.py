"""Units as people type them, and what pint makes of them.

Spelled by hand because people write ``12v``, ``20ma``, ``470R`` and mean volts, milliamperes and ohms; a
general unit reader takes ``R`` for degrees Rankine or röntgen and ``4**9**9`` for a sum to work out. Pint
does the conversions, with these few units only: its own thousand take most of a second to load.
"""

from functools import cache
from typing import TYPE_CHECKING, Any

from wiring.quantities.quantity import Quantity

if TYPE_CHECKING:
    import pint

KEPT_IN: dict[Quantity, str] = {
    Quantity.VOLTAGE: "V",
    Quantity.CURRENT: "A",
    Quantity.RESISTANCE: "ohm",
    Quantity.POWER: "W",
    Quantity.LENGTH: "m",
    Quantity.CHARGE: "A*hour",
    Quantity.TIME: "s",
    Quantity.DURATION: "hour",
    Quantity.TEMPERATURE: "degC",
    Quantity.CAPACITANCE: "F",
    Quantity.FRACTION: "dimensionless",
    Quantity.AREA: "mm**2",
    Quantity.COUNT: "dimensionless",
}

_TIMES = {
    "s": "s", "sec": "s", "secs": "s", "second": "s", "seconds": "s", "ms": "ms", "µs": "us", "us": "us",
    "min": "minute", "mins": "minute", "minute": "minute", "minutes": "minute",
    "h": "hour", "hr": "hour", "hrs": "hour", "hour": "hour", "hours": "hour",
    "d": "day", "day": "day", "days": "day", "week": "week", "weeks": "week",
}  # fmt: skip

SPELLINGS: dict[Quantity, dict[str, str]] = {
    Quantity.VOLTAGE: {
        "V": "V", "mV": "mV", "kV": "kV", "µV": "uV", "uV": "uV", "volt": "V", "volts": "V", "VDC": "V",
        "VAC": "V",
    },
    Quantity.CURRENT: {
        "A": "A", "mA": "mA", "µA": "uA", "uA": "uA", "amp": "A", "amps": "A", "ampere": "A", "amperes": "A",
        "milliamp": "mA", "milliamps": "mA",
    },
    Quantity.RESISTANCE: {
        "Ω": "ohm", "R": "ohm", "ohm": "ohm", "ohms": "ohm", "mΩ": "milliohm", "mohm": "milliohm",
        "milliohm": "milliohm", "kΩ": "kiloohm", "KΩ": "kiloohm", "k": "kiloohm", "K": "kiloohm",
        "kohm": "kiloohm", "kilohm": "kiloohm", "MΩ": "megaohm", "M": "megaohm", "Mohm": "megaohm",
        "megohm": "megaohm",
    },
    Quantity.POWER: {"W": "W", "mW": "mW", "kW": "kW", "watt": "W", "watts": "W"},
    Quantity.LENGTH: {
        "m": "m", "mm": "mm", "cm": "cm", "km": "km", "µm": "um", "um": "um", "metre": "m", "metres": "m",
        "meter": "m", "meters": "m", "ft": "foot", "'": "foot", "foot": "foot", "feet": "foot",
        "in": "inch", '"': "inch", "''": "inch", "inch": "inch", "inches": "inch", "yd": "yard",
        "yard": "yard", "yards": "yard",
    },
    Quantity.CHARGE: {"Ah": "A*hour", "mAh": "mA*hour", "A h": "A*hour", "mA h": "mA*hour", "As": "A*s"},
    Quantity.TIME: _TIMES,
    Quantity.DURATION: _TIMES,
    Quantity.TEMPERATURE: {
        "°C": "degC", "C": "degC", "degC": "degC", "°": "degC", "°F": "degF", "F": "degF", "degF": "degF",
        "K": "kelvin",
    },
    Quantity.CAPACITANCE: {
        "F": "F", "mF": "mF", "µF": "uF", "uF": "uF", "nF": "nF", "pF": "pF", "µ": "uF", "u": "uF", "n": "nF",
        "p": "pF",
    },
    Quantity.FRACTION: {"%": "percent", "percent": "percent"},
    Quantity.AREA: {
        "mm2": "mm**2", "mm^2": "mm**2", "sq mm": "mm**2", "sqmm": "mm**2", "cm2": "cm**2", "in2": "inch**2",
        "sq in": "inch**2", "kcmil": "kcmil", "cmil": "cmil",
    },
    Quantity.COUNT: {},
}  # fmt: skip


# The SI brochure for prefixes and units; the inch of 1959; the circular mil is the area of a 1 mil circle.
_DEFINITIONS = (
    "pico- = 1e-12 = p-", "nano- = 1e-9 = n-", "micro- = 1e-6 = u-", "milli- = 1e-3 = m-",
    "centi- = 1e-2 = c-", "kilo- = 1e3 = k-", "mega- = 1e6 = M-",
    "metre = [length] = m", "second = [time] = s", "ampere = [current] = A", "kilogram = [mass] = kg",
    "kelvin = [temperature]; offset: 0 = K",
    "minute = 60 second", "hour = 60 minute", "day = 24 hour", "week = 7 day",
    "inch = 0.0254 metre", "foot = 12 inch", "yard = 3 foot",
    "cmil = 0.785398163397448309616 * (0.001 * inch) ** 2", "kcmil = 1000 cmil",
    "volt = kilogram * metre ** 2 / second ** 3 / ampere = V", "ohm = volt / ampere",
    "watt = volt * ampere = W", "farad = ampere * second / volt = F", "degC = kelvin; offset: 273.15",
    "degF = 5 / 9 * kelvin; offset: 233.15 + 200 / 9", "percent = 0.01",
)  # fmt: skip


@cache
def unit_of(spelled: str, quantity: Quantity) -> str | None:
    """Return pint's name of a unit of the quantity, None when it is none; case counts only where it must."""
    table = SPELLINGS[quantity]
    if spelled in table:
        return table[spelled]
    found = {unit for name, unit in table.items() if name.lower() == spelled.lower()}
    return found.pop() if len(found) == 1 else None


def quantity_of(spelled: str) -> Quantity | None:
    """Return the first quantity that has such a unit, None when no quantity has."""
    return next((q for q in Quantity if unit_of(spelled, q)), None)


def converted(value: float, unit: str, quantity: Quantity) -> float:
    """Return a value in a unit of pint's, in the unit the quantity is kept in."""
    kept = KEPT_IN[quantity]
    if unit == kept:
        return value
    if quantity is Quantity.TEMPERATURE:
        return float(_registry().Quantity(value, unit).to(kept).magnitude)
    return value * _factor(unit, kept)


@cache
def _factor(unit: str, kept: str) -> float:
    return float(_registry().Quantity(1.0, unit).to(kept).magnitude)


@cache
def _registry() -> "pint.UnitRegistry[Any]":
    import pint

    registry: pint.UnitRegistry[Any] = pint.UnitRegistry(None)
    for definition in _DEFINITIONS:
        registry.define(definition)
    return registry
