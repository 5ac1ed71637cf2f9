"""The words beside a symbol: what the part is, in one or two short lines."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind, Value
from wiring.circuit.figures import Figures
from wiring.plan.part import Part
from wiring.quantities.wording import worded

# What tells one part from another on a drawing; a row is (setting, quantity), shown in this order.
SHOWN: Mapping[str, tuple[tuple[str, str], ...]] = {
    "resistor": (("resistance", "resistance"), ("rated_power", "power")),
    "led": (("forward_a", "current"),),
    "strip": (("length", "length"),),
    "filament": (("rated_v", "voltage"), ("rated_a", "current")),
    "flasher": (("on_a", "current"),),
    "constant_current": (("set_a", "current"),),
    "constant_power": (("power", "power"),),
    "stall_motor": (("rated_v", "voltage"),),
    "twin_coil": (("coil_ohm", "resistance"),),
    "discharge_unit": (("capacitance", "capacitance"),),
    "servo": (("rated_v", "voltage"),),
    "relay": (("rated_v", "voltage"),),
    "supply_regulated": (("volts", "voltage"), ("limit_a", "current")),
    "converter": (("volts", "voltage"), ("limit_a", "current")),
    "supply_unregulated": (("rated_v", "voltage"), ("rated_a", "current")),
    "supply_ac": (("rated_v", "voltage"), ("rated_a", "current")),
    "fuse": (("rating_a", "current"),),
    "resettable_fuse": (("hold_a", "current"),),
}


def value_words(part: Part, kind: Kind, units: str = "metric") -> str:
    """Return the value that tells this part from others of its kind, empty where none does."""
    values = kind.values(part.settings)
    if kind.behaviour == "battery":
        return _cells(values)
    words = [worded(float(values[name]), q, units) for name, q in SHOWN.get(kind.behaviour, ())]
    if kind.behaviour == "supply_ac":
        words[0] += " ~"
    return ", ".join(words)


def _cells(values: Mapping[str, Value]) -> str:
    count = int(float(values["in_series"]))
    rows = int(float(values["in_parallel"]))
    cell = str(values["cell"])
    side_by_side = f" × {rows}" if rows > 1 else ""
    return f"{count}{side_by_side} × {cell}" if count > 1 or rows > 1 else cell


def reading_words(part_id: str, kind: Kind, figures: Figures) -> str:
    """Return the solved current of a part that takes or gives some, empty for anything else."""
    if part_id in figures.supplies:
        return worded(figures.supplies[part_id].current_a, "current")
    figure = figures.parts.get(part_id)
    if figure is None or kind.purpose not in ("light", "move"):
        return ""
    return worded(abs(figure.current_a), "current")
