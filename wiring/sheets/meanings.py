"""What a wrong reading points at, in the order of how often it is so. Common practice, no source."""

MEANINGS: tuple[tuple[str, str], ...] = (
    (
        "No volts here, good volts at the row before",
        "the wire or joint between the two, or a switch that is off",
    ),
    ("No volts anywhere in one place", "its fuse, its switch, or the first wire to it"),
    (
        "Good volts at a light that stays dark",
        "an LED the wrong way round, a dead lamp, or a loose pin in it",
    ),
    ("A minus sign where none is expected", "the two wires to this part are swapped, or your leads are"),
    (
        "Volts too low, less so without load",
        "too thin or too long a wire, or a joint that is not soldered through",
    ),
    ("Volts too low everywhere", "a supply at its limit, or a battery near its end"),
    ("Volts too high", "a part is missing or open further on, or the supply is another one"),
    ("More amperes than expected", "a bridge between two terminals, or a part of a lower value"),
    ("Fewer amperes than expected", "one or more parts are not connected; count the lights"),
    (
        "A beep with the power off where silence is due",
        "stray strands between two screws, or two wires swapped",
    ),
)
