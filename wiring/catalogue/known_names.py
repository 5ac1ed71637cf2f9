"""The purposes, signs and symbols a kind can name."""

PURPOSES = ("light", "move", "switch", "feed", "protect", "join")

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
