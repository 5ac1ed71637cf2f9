"""What each setting of each behaviour is called, measured in and allowed to be."""

from typing import NamedTuple

from wiring.catalogue.kind import Value

PRACTICE = "common practice, no source"


class SettingSpec(NamedTuple):
    """One setting of a behaviour; `usual` is its value where a kind is silent, None where it must speak."""

    name: str
    title: str
    quantity: str
    lowest: float | None = None
    highest: float | None = None
    usual: Value | None = None
    usual_source: str = ""
    choices: tuple[str, ...] = ()


HIGHEST_V = 60.0  # beyond it a supply is no longer safe low voltage: IEC 61140, 60 V DC without protection

FORWARD_V = SettingSpec("forward_v", "Forward voltage of one LED", "voltage", 0.1, HIGHEST_V)
FORWARD_A = SettingSpec("forward_a", "Current at full light, per chain", "current", 1e-5, 10.0)
SLOPE_V = SettingSpec("slope_v", "Slope of the LED's curve (n × Vt)", "voltage", 0.01, 2.0)
SERIES_OHM = SettingSpec(
    "series_ohm", "Built-in resistor, per chain", "resistance", 0.0, 1e6, 0.0, "none built in"
)
LEDS_IN_SERIES = SettingSpec("in_series", "LEDs in series", "count", 1.0, 50.0, 1.0, "one LED")
CHAINS = SettingSpec("in_parallel", "Chains in parallel", "count", 1.0, 500.0, 1.0, "one chain")
MAX_A = SettingSpec("max_a", "Largest lasting current, per chain", "current", 1e-4, 20.0)

RATED_V = SettingSpec("rated_v", "Rated voltage", "voltage", 0.5, HIGHEST_V)
RATED_A = SettingSpec("rated_a", "Rated current", "current", 1e-3, 50.0)
OPEN_V = SettingSpec("open_v", "Voltage with nothing connected", "voltage", 0.5, 1.5 * HIGHEST_V)
MIN_V = SettingSpec("min_v", "Least voltage it works at", "voltage", 0.0, HIGHEST_V)
COIL_OHM = SettingSpec("coil_ohm", "Resistance of a coil", "resistance", 0.5, 1e5)
COIL_V = SettingSpec(
    "rated_v", "Rated voltage of a coil", "voltage", 0.5, HIGHEST_V, 16.0,
    "common practice, no source: coils are made for accessory supplies of about 16 V",
)  # fmt: skip
# Inductance over resistance: hardly changed by how a bobbin is wound, so it suits coils of any resistance.
COIL_RISE = SettingSpec(
    "rise", "Rise time of a coil's current (L ÷ R)", "time", 0.0, 0.1, 0.0005,
    "common practice, no source: half a millisecond, 5 mH in 10 Ω",
)  # fmt: skip
CONTACT_OHM = SettingSpec(
    "contact_ohm", "Contact resistance", "resistance", 0.0, 10.0, 0.02,
    "from memory: switch makers state 10 to 20 milliohm when new",
)  # fmt: skip
JOINT_OHM = SettingSpec(
    "joint_ohm", "Resistance of one joint", "resistance", 0.0, 1.0, 0.0,
    "common practice, no source: a tight screw has a few milliohm, less than a hand's breadth of wire",
)  # fmt: skip
DROP_OUT_V = SettingSpec(
    "drop_out_v", "Voltage it lets go at (0: a tenth of rated)", "voltage", 0.0, HIGHEST_V, 0.0,
    "common practice, no source: makers promise release at a tenth of the rated voltage",
)  # fmt: skip
SMOOTHING = SettingSpec(
    "capacitance", "Smoothing capacitor (0: none)", "capacitance", 0.0, 1.0, 0.0, "none built in"
)  # fmt: skip
STALLED_A = SettingSpec("stalled_a", "Current when stalled", "current", 1e-3, 10.0)

CELL = SettingSpec("cell", "Cell or battery type", "choice")
CELLS_IN_SERIES = SettingSpec("in_series", "In series", "count", 1.0, 24.0, 1.0, "one")
CELLS_IN_PARALLEL = SettingSpec("in_parallel", "In parallel", "count", 1.0, 20.0, 1.0, "one")
CAPACITY = SettingSpec(
    "capacity", "Capacity printed on it (0: typical)", "charge", 0.0, 1000.0, 0.0, "0 means the type's own"
)
WEAKEST = SettingSpec(
    "weakest", "Charge of its weakest cell, of the others'", "fraction", 0.05, 1.0, 1.0, "1: all cells alike"
)
FITTED = SettingSpec("fitted", "Fitted on (year-month-day)", "text", usual="")
LIMIT_OR_NONE_A = SettingSpec(
    "limit_a",
    "Cut-off of its protection (0: none)",
    "current",
    0.0,
    100.0,
    0.0,
    "0 means no protection board",
)
