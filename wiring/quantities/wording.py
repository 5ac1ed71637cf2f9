"""Write a value as people read it: two to three significant digits and a unit."""

import math

from wiring.quantities.quantity import Quantity

NO_VALUE = "–"
LARGEST = 1e15  # beyond it a figure says nothing but that it is wrong

# (from this size on, what one of the unit is, its sign), largest first; the last from nothing on
_Scale = tuple[tuple[float, float, str], ...]
SCALES: dict[Quantity, _Scale] = {
    Quantity.VOLTAGE: ((1e3, 1e3, "kV"), (0.1, 1.0, "V"), (1e-4, 1e-3, "mV"), (0.0, 1e-6, "µV")),
    Quantity.CURRENT: ((1.0, 1.0, "A"), (1e-3, 1e-3, "mA"), (0.0, 1e-6, "µA")),
    Quantity.RESISTANCE: ((1e6, 1e6, "MΩ"), (1e3, 1e3, "kΩ"), (1.0, 1.0, "Ω"), (0.0, 1e-3, "mΩ")),
    Quantity.POWER: ((1e3, 1e3, "kW"), (0.1, 1.0, "W"), (0.0, 1e-3, "mW")),
    Quantity.LENGTH: ((1e3, 1e3, "km"), (1.0, 1.0, "m"), (0.1, 1e-2, "cm"), (0.0, 1e-3, "mm")),
    Quantity.CHARGE: ((1.0, 1.0, "Ah"), (0.0, 1e-3, "mAh")),
    Quantity.TIME: (
        (7200.0, 3600.0, "h"), (120.0, 60.0, "min"), (1.0, 1.0, "s"), (1e-3, 1e-3, "ms"), (0.0, 1e-6, "µs"),
    ),
    Quantity.DURATION: ((1.0, 1.0, "h"), (1 / 60, 1 / 60, "min"), (0.0, 1 / 3600, "s")),
    Quantity.TEMPERATURE: ((0.0, 1.0, "°C"),),
    Quantity.CAPACITANCE: ((1.0, 1.0, "F"), (1e-6, 1e-6, "µF"), (1e-9, 1e-9, "nF"), (0.0, 1e-12, "pF")),
    Quantity.FRACTION: ((0.0, 1e-2, "%"),),
    Quantity.AREA: ((0.0, 1.0, "mm²"),),
}  # fmt: skip
_UNIT_OF_NOTHING = {
    Quantity.CURRENT: "A", Quantity.VOLTAGE: "V", Quantity.RESISTANCE: "Ω", Quantity.POWER: "W",
    Quantity.LENGTH: "m", Quantity.CHARGE: "Ah", Quantity.TIME: "s", Quantity.DURATION: "h",
    Quantity.CAPACITANCE: "F",
}  # fmt: skip
# A meter of the hobby reads no less; what leaks through a diode the wrong way round is nothing to its owner.
_NOTHING = {Quantity.CURRENT: 1e-7}

FOOT_M = 0.3048
INCH_M = 0.0254


def worded(value: float, quantity: Quantity | str, units: str = "metric") -> str:
    """Return the value with its unit, at most three digits that count: "18.2 mA", "11.8 V", "7 ft 10 in".

    `units` is "metric" or "us"; it changes lengths and temperatures. What is not finite, or
    beyond LARGEST, reads "–".
    """
    quantity = Quantity(quantity)
    if not abs(value) <= LARGEST:
        return NO_VALUE
    if quantity is Quantity.COUNT:
        return _signed(f"{abs(value):.0f}" if value == round(value) else _digits(abs(value)), value)
    if units == "us" and quantity is Quantity.LENGTH:
        return _signed(_feet_and_inches(abs(value)), value)
    if units == "us" and quantity is Quantity.TEMPERATURE:
        fahrenheit = value * 1.8 + 32.0
        return _signed(f"{_digits(abs(fahrenheit))} °F", fahrenheit)
    return _signed(_scaled(abs(value), quantity), value)


def _scaled(size: float, quantity: Quantity) -> str:
    size = 0.0 if size < _NOTHING.get(quantity, 0.0) else size
    # 999.7 mA is shown as 1 A, not as 1000 mA
    one, unit = next((one, unit) for start, one, unit in SCALES[quantity] if size >= start * (1 - 5e-4))
    shown = _digits(size / one)
    return f"0 {_UNIT_OF_NOTHING.get(quantity, unit)}" if shown == "0" else f"{shown} {unit}"


def _digits(size: float) -> str:
    """Three significant digits without trailing zeros, never in powers of ten."""
    if size == 0.0 or size < 5e-4:
        return "0"
    places = max(0, 2 - math.floor(math.log10(size)))
    text = f"{size:.{places}f}" if places else f"{round(size, 2 - math.floor(math.log10(size))):.0f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _feet_and_inches(size_m: float) -> str:
    inches = round(size_m / INCH_M)
    if size_m < FOOT_M * (1 - 5e-4):
        return f"{_digits(size_m / INCH_M)} in"
    if size_m >= 100 * FOOT_M:
        return f"{_digits(size_m / FOOT_M)} ft"
    feet, rest = divmod(inches, 12)
    return f"{feet} ft {rest} in" if rest else f"{feet} ft"


def _signed(text: str, value: float) -> str:
    return f"−{text}" if value < 0.0 and not text.startswith("0 ") and text != "0" else text
