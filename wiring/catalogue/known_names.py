"""The purposes, signs and symbols a kind can name."""

from collections.abc import Mapping
from types import MappingProxyType

# In the order of the tray, with what its sections are headed.
PURPOSES: Mapping[str, str] = MappingProxyType(
    {
        "light": "Light something",
        "move": "Move something",
        "switch": "Switch something",
        "feed": "Feed it",
        "protect": "Protect it",
        "join": "Join it",
    }
)

SIGNS = frozenset(
    (
        "led", "filament", "strip", "building", "flasher", "module", "stall_motor", "coil_motor", "servo",
        "relay", "toggle", "push", "slide", "indicator", "supply", "ac_supply", "battery", "fuse",
        "resettable_fuse", "resistor", "diode", "rectifier", "terminal_strip", "block", "plug",
    )
)  # fmt: skip

SYMBOLS = frozenset(
    (
        "led", "lamp", "led_strip", "building", "flasher", "module", "motor", "coil_pair", "servo", "relay",
        "switch", "push", "supply", "ac_supply", "battery", "fuse", "resettable_fuse", "resistor", "diode",
        "rectifier", "terminal", "block", "plug", "push_delayed",
    )
)  # fmt: skip
