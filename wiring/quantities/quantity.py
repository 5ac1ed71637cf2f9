"""The quantities a person types and reads, with the unit each is kept in."""

from enum import StrEnum


class Quantity(StrEnum):
    """A kind of quantity; the comment beside it is the unit its plain float is in."""

    VOLTAGE = "voltage"  # V
    CURRENT = "current"  # A
    RESISTANCE = "resistance"  # ohm
    POWER = "power"  # W
    LENGTH = "length"  # m
    CHARGE = "charge"  # Ah, as batteries are sold
    TIME = "time"  # s
    DURATION = "duration"  # h, as sessions are counted
    TEMPERATURE = "temperature"  # °C
    CAPACITANCE = "capacitance"  # F
    FRACTION = "fraction"  # 0 to 1, typed as "10 %"
    AREA = "area"  # mm², of a wire
    COUNT = "count"  # a whole number


SIGNED = frozenset((Quantity.VOLTAGE, Quantity.CURRENT, Quantity.POWER, Quantity.TEMPERATURE))

EXAMPLES: dict[Quantity, str] = {
    Quantity.VOLTAGE: "12 V",
    Quantity.CURRENT: "20 mA",
    Quantity.RESISTANCE: "470 Ω or 4k7",
    Quantity.POWER: "0.25 W",
    Quantity.LENGTH: "2.4 m or 8 ft 6 in",
    Quantity.CHARGE: "2500 mAh",
    Quantity.TIME: "100 ms",
    Quantity.DURATION: "3 h",
    Quantity.TEMPERATURE: "20 °C",
    Quantity.CAPACITANCE: "4700 µF",
    Quantity.FRACTION: "10 %",
    Quantity.AREA: "0.5 mm²",
    Quantity.COUNT: "3",
}

NAMES: dict[Quantity, str] = {
    Quantity.DURATION: "a time",
    Quantity.TIME: "a time",
    Quantity.FRACTION: "a share",
    Quantity.AREA: "an area",
    Quantity.COUNT: "a whole number",
}


def name_of(quantity: Quantity) -> str:
    """Return the quantity with its article, for sentences: "a voltage", "an area"."""
    return NAMES.get(quantity, f"a {quantity.value}")
