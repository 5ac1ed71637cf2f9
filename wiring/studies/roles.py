"""What each behaviour is in a circuit: a source, a load, a protection, or a mere joint."""

SOURCES = frozenset({"supply_regulated", "supply_unregulated", "supply_ac", "battery", "converter"})
FUSES = frozenset({"fuse", "resettable_fuse"})
LIGHTS = frozenset({"led", "strip", "filament", "flasher", "constant_current"})
# Current goes one way only, so plus and minus must not be swapped.
ONE_WAY = frozenset(
    {"led", "strip", "flasher", "constant_current", "constant_power", "servo", "discharge_unit", "converter"}
)

# Terminals between which current goes through the part itself.
THROUGH: dict[str, tuple[tuple[str, str], ...]] = {
    "resistor": (("1", "2"),),
    "led": (("A", "K"),),
    "strip": (("+", "-"),),
    "filament": (("1", "2"),),
    "flasher": (("+", "-"),),
    "constant_current": (("+", "-"),),
    "constant_power": (("+", "-"),),
    "stall_motor": (("M1", "M2"),),
    "twin_coil": (("N", "C"), ("R", "C")),
    "servo": (("+", "-"),),
    "converter": (("+", "-"),),
    "discharge_unit": (("+", "-"), ("+", "O")),
    "relay": (("A1", "A2"),),
    "fuse": (("1", "2"),),
    "resettable_fuse": (("1", "2"),),
    "diode": (("A", "K"),),
    "rectifier": (("~1", "+"), ("~1", "-"), ("~2", "+"), ("~2", "-")),
}
LOADS = frozenset(THROUGH) - FUSES - {"resistor", "diode", "rectifier"}

# The two ends of each source, plus (or one leg) first.
SOURCE_ENDS: dict[str, tuple[str, str]] = {
    "supply_regulated": ("+", "-"),
    "supply_unregulated": ("+", "-"),
    "supply_ac": ("~1", "~2"),
    "battery": ("+", "-"),
    "converter": ("O", "-"),
}

# Terminals that must all carry a wire before the part can work; others may stay free.
NEEDED: dict[str, tuple[str, ...]] = {
    **{name: tuple(dict.fromkeys(t for pair in pairs for t in pair)) for name, pairs in THROUGH.items()},
    **SOURCE_ENDS,
    "twin_coil": ("C",),
}
