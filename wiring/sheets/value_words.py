"""The values of a part that matter when it is bought, in words."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind, Setting, Value
from wiring.plan.part import Part
from wiring.quantities.wording import worded

# The settings a buyer must know, by behaviour; others show only where the user has set them.
_KEY_SETTINGS: Mapping[str, tuple[str, ...]] = {
    "resistor": ("resistance", "rated_power"),
    "led": ("forward_a", "series_ohm"),
    "strip": ("length",),
    "filament": ("rated_v", "rated_a"),
    "constant_current": ("set_a",),
    "stall_motor": ("rated_v",),
    "twin_coil": ("coil_ohm",),
    "discharge_unit": ("capacitance",),
    "servo": ("rated_v",),
    "relay": ("rated_v",),
    "switch": ("rated_a",),
    "supply_regulated": ("volts", "limit_a"),
    "converter": ("volts", "limit_a"),
    "supply_unregulated": ("rated_v", "rated_a"),
    "supply_ac": ("rated_v", "rated_a"),
    "battery": ("cell", "in_series", "in_parallel"),
    "fuse": ("rating_a", "speed"),
    "resettable_fuse": ("hold_a",),
    "diode": ("max_a",),
    "rectifier": ("max_a",),
}


def value_words(kind: Kind, part: Part, units: str = "metric") -> str:
    """Return the values that matter when buying a part: ``470 Ω, 250 mW``."""
    wanted = _KEY_SETTINGS.get(kind.behaviour, ())
    values = kind.values(part.settings)
    said = []
    for setting in kind.settings:
        if setting.name not in wanted and setting.name not in part.settings:
            continue
        text = setting_words(setting, values[setting.name], units)
        if not text or setting.name in ("fitted", "position"):
            continue
        said.append(
            text if setting.name in wanted and _speaks(setting) else f"{setting.title.lower()} {text}"
        )
    return ", ".join(said)


def setting_words(setting: Setting, value: Value, units: str) -> str:
    """Return one value in words; "" for an optional one that is not set."""
    if isinstance(value, str):
        return value
    if setting.quantity == "count":
        return f"{value:g}"
    if value == 0.0 and setting.name in ("series_ohm", "capacity", "limit_a"):
        return ""
    return worded(value, setting.quantity, units)


def _speaks(setting: Setting) -> bool:
    """Return whether a value needs no title beside it: its unit or its own words say what it is."""
    return setting.quantity not in ("count",)
