"""What each setting of each behaviour is called, measured in and allowed to be."""

from typing import NamedTuple

from wiring.catalogue.kind import Value


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
    full: str = ""  # what it is, in more words than a title has room for
    nought: str = ""  # what 0 stands for, where it stands for something else
    expert: bool = False  # only those who know why change it


HIGHEST_V = 60.0  # beyond it a supply is no longer safe low voltage: IEC 61140, 60 V DC without protection

FORWARD_V = SettingSpec(
    "forward_v",
    "Forward voltage",
    "voltage",
    0.1,
    HIGHEST_V,
    full="Volts across one LED at its rated current",
)
FORWARD_A = SettingSpec(
    "forward_a", "Rated current", "current", 1e-5, 10.0, full="Current at full light, of one chain"
)
SLOPE_V = SettingSpec(
    "slope_v", "Slope (n × Vt)", "voltage", 0.01, 2.0, full="How steep the LED's curve is", expert=True
)
SERIES_OHM = SettingSpec(
    "series_ohm", "Built-in resistor", "resistance", 0.0, 1e6, 0.0, "none built in",
    full="The resistor built in, one in each chain", nought="none",
)  # fmt: skip
LEDS_IN_SERIES = SettingSpec("in_series", "LEDs in series", "count", 1.0, 50.0, 1.0, "one LED")
CHAINS = SettingSpec(
    "in_parallel", "Chains", "count", 1.0, 500.0, 1.0, "one chain", full="Chains in parallel"
)
MAX_A = SettingSpec(
    "max_a", "Most it bears", "current", 1e-4, 20.0, full="Largest lasting current of one chain", expert=True
)

RATED_V = SettingSpec("rated_v", "Rated voltage", "voltage", 0.5, HIGHEST_V)
RATED_A = SettingSpec("rated_a", "Rated current", "current", 1e-3, 50.0)
OPEN_V = SettingSpec(
    "open_v", "Voltage unloaded", "voltage", 0.5, 1.5 * HIGHEST_V, full="Voltage with nothing connected"
)
MIN_V = SettingSpec("min_v", "Works from", "voltage", 0.0, HIGHEST_V, full="Least voltage it works at")
COIL_OHM = SettingSpec("coil_ohm", "Coil resistance", "resistance", 0.5, 1e5)
COIL_V = SettingSpec(
    "rated_v", "Coil voltage", "voltage", 0.5, HIGHEST_V, 16.0,
    "common practice, no source: coils are made for accessory supplies of about 16 V",
    full="Rated voltage of a coil",
)  # fmt: skip
# Inductance over resistance: hardly changed by how a bobbin is wound, so it suits coils of any resistance.
COIL_RISE = SettingSpec(
    "rise", "Rise time (L ÷ R)", "time", 0.0, 0.1, 0.0005,
    "common practice, no source: half a millisecond, 5 mH in 10 Ω",
    full="Rise time of a coil's current", expert=True,
)  # fmt: skip
CONTACT_OHM = SettingSpec(
    "contact_ohm", "One contact", "resistance", 0.0, 10.0, 0.02,
    "from memory: switch makers state 10 to 20 milliohm when new",
    full="Resistance of one contact", expert=True,
)  # fmt: skip
JOINT_OHM = SettingSpec(
    "joint_ohm", "One joint", "resistance", 0.0, 1.0, 0.0,
    "common practice, no source: a tight screw has a few milliohm, less than a hand's breadth of wire",
    full="Resistance of one joint", nought="none", expert=True,
)  # fmt: skip
DROP_OUT_V = SettingSpec(
    "drop_out_v", "Lets go at", "voltage", 0.0, HIGHEST_V, 0.0,
    "common practice, no source: makers promise release at a tenth of the rated voltage",
    full="Voltage at which it lets go", nought="a tenth of rated", expert=True,
)  # fmt: skip
SMOOTHING = SettingSpec(
    "capacitance", "Capacitor", "capacitance", 0.0, 1.0, 0.0, "none built in",
    full="Capacitor that smooths its output", nought="none",
)  # fmt: skip
STALLED_A = SettingSpec("stalled_a", "Stalled current", "current", 1e-3, 10.0)

CELL = SettingSpec("cell", "Cell type", "choice", full="Cell or battery type")
CELLS_IN_SERIES = SettingSpec("in_series", "In series", "count", 1.0, 24.0, 1.0, "one")
CELLS_IN_PARALLEL = SettingSpec("in_parallel", "In parallel", "count", 1.0, 20.0, 1.0, "one")
CAPACITY = SettingSpec(
    "capacity", "Capacity", "charge", 0.0, 1000.0, 0.0, "0 means the type's own",
    full="Capacity printed on it", nought="typical",
)  # fmt: skip
WEAKEST = SettingSpec(
    "weakest", "Weakest cell", "fraction", 0.05, 1.0, 1.0, "1: all cells alike",
    full="Charge of its weakest cell, of the others'", expert=True,
)  # fmt: skip
FITTED = SettingSpec(
    "fitted", "Fitted on", "text", usual="", full="Day its cells were fitted: year-month-day"
)
LIMIT_OR_NONE_A = SettingSpec(
    "limit_a", "Cuts off at", "current", 0.0, 100.0, 0.0, "0 means no protection board",
    full="Current at which its protection board cuts off", nought="never", expert=True,
)  # fmt: skip

DIODE = (
    SettingSpec(
        "forward_v", "Forward voltage", "voltage", 0.1, 2.0, full="Volts one diode takes", expert=True
    ),
    SettingSpec(
        "forward_a",
        "Stated at",
        "current",
        1e-4,
        50.0,
        full="Current the forward voltage is stated at",
        expert=True,
    ),
    SettingSpec(
        "slope_v", "Slope (n × Vt)", "voltage", 0.01, 0.5, full="How steep its curve is", expert=True
    ),
    SettingSpec("max_a", "Most it bears", "current", 1e-3, 100.0, full="Largest lasting current"),
)

REGULATED = (
    SettingSpec("volts", "Output voltage", "voltage", 0.5, HIGHEST_V),
    SettingSpec("limit_a", "Largest current", "current", 0.01, 50.0),
    SettingSpec("ohms", "Inner resistance", "resistance", 0.0, 10.0, expert=True),
    SettingSpec(
        "on_overload",
        "If overloaded",
        "choice",
        choices=("holds current", "folds back", "shuts off"),
    ),
)
CONVERTER = (
    SettingSpec("volts", "Output voltage", "voltage", 0.5, HIGHEST_V),
    SettingSpec("limit_a", "Largest current", "current", 0.01, 50.0),
    SettingSpec(
        "ohms",
        "Inner resistance",
        "resistance",
        0.0,
        10.0,
        full="Inner resistance of its output",
        expert=True,
    ),
    SettingSpec(
        "efficiency",
        "Efficiency full",
        "fraction",
        0.1,
        1.0,
        full="Efficiency at its largest current",
        expert=True,
    ),
    SettingSpec(
        "half_efficiency",
        "Efficiency half",
        "fraction",
        0.1,
        1.0,
        full="Efficiency at half its largest current",
        expert=True,
    ),
    SettingSpec(
        "idle_a", "Own current", "current", 1e-5, 1.0, full="Current it takes for itself", expert=True
    ),
    SettingSpec(
        "drop_out_v",
        "Input above",
        "voltage",
        0.0,
        20.0,
        full="Volts its input must be above its output",
        expert=True,
    ),
    SettingSpec("min_v", "Works from", "voltage", 0.5, HIGHEST_V, full="Least input voltage"),
)
