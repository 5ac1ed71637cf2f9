"""What each electrical behaviour needs of a kind: its settings, its terminals and its positions."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from wiring.catalogue import setting_specs as s
from wiring.catalogue.setting_specs import SettingSpec

CHANGEOVERS = ("11", "12", "14", "21", "22", "24")


class Behaviour(NamedTuple):
    """One behaviour, as the circuit model reads it."""

    name: str
    settings: tuple[SettingSpec, ...] = ()
    terminals: tuple[str, ...] = ()  # exactly these, in any order; empty where `counted` says more
    may_have: tuple[str, ...] = ()  # terminals it can have besides
    counted: str = ""  # "numbers": 1, 2, 3 ...; "pairs": 1a, 1b, 2a, 2b ...; "contacts": see `may_have`
    positions: tuple[str, ...] = ()  # names it must have; none named means it may have any
    throws: bool = False  # it must have at least two positions


_LED = (s.FORWARD_V, s.FORWARD_A, s.SLOPE_V, s.SERIES_OHM, s.LEDS_IN_SERIES, s.CHAINS, s.MAX_A)
_DIODE = (
    SettingSpec("forward_v", "Forward voltage of one diode", "voltage", 0.1, 2.0),
    SettingSpec("forward_a", "Current it is stated at", "current", 1e-4, 50.0),
    SettingSpec("slope_v", "Slope of its curve (n × Vt)", "voltage", 0.01, 0.5),
    SettingSpec("max_a", "Largest lasting current", "current", 1e-3, 100.0),
)
_ALL = (
    Behaviour(
        "resistor",
        (
            SettingSpec("resistance", "Resistance", "resistance", 1e-3, 1e8),
            SettingSpec("rated_power", "Rated power", "power", 0.01, 1000.0),
        ),
        ("1", "2"),
    ),
    Behaviour("led", _LED, ("A", "K")),
    Behaviour(
        "strip",
        (
            SettingSpec("length", "Length used", "length", 0.01, 100.0),
            SettingSpec("section", "Length of one section", "length", 0.002, 5.0),
            s.LEDS_IN_SERIES,
            s.FORWARD_V,
            s.FORWARD_A,
            s.SLOPE_V,
            s.SERIES_OHM,
            s.MAX_A,
        ),
        ("+", "-"),
    ),
    Behaviour(
        "filament",
        (
            s.RATED_V,
            s.RATED_A,
            SettingSpec("in_parallel", "Lamps in parallel", "count", 1, 500, 1.0, "one lamp"),
        ),
        ("1", "2"),
    ),
    Behaviour(
        "flasher",
        (
            SettingSpec("on_a", "Current while on", "current", 1e-3, 10.0),
            s.MIN_V,
            SettingSpec("duty", "Share of the time it is on", "fraction", 0.01, 1.0),
            SettingSpec("period", "Time from flash to flash", "time", 0.02, 600.0),
        ),
        ("+", "-"),
    ),
    Behaviour(
        "constant_current",
        (
            SettingSpec("set_a", "Current it keeps", "current", 1e-3, 10.0),
            s.MIN_V,
            SettingSpec("max_v", "Largest voltage it bears", "voltage", 0.5, 1.5 * s.HIGHEST_V),
        ),
        ("+", "-"),
    ),
    Behaviour(
        "constant_power", (SettingSpec("power", "Power it takes", "power", 1e-3, 500.0), s.MIN_V), ("+", "-")
    ),
    Behaviour(
        "stall_motor",
        (s.RATED_V, s.STALLED_A, SettingSpec("running_a", "Current while it runs", "current", 1e-4, 10.0)),
        ("M1", "M2"),
        may_have=CHANGEOVERS,
        positions=("normal", "reverse", "moving"),
    ),
    Behaviour(
        "twin_coil",
        (
            s.COIL_OHM,
            SettingSpec("pulse", "Length of the pulse", "time", 0.005, 10.0),
            s.COIL_V,
            s.COIL_RISE,
        ),
        ("N", "C", "R"),
        may_have=CHANGEOVERS,
        positions=("normal", "reverse"),
    ),
    Behaviour(
        "discharge_unit",
        (
            SettingSpec("capacitance", "Capacitance", "capacitance", 1e-5, 1.0),
            SettingSpec("charge_ohm", "Resistance it charges through", "resistance", 0.1, 1e5),
            SettingSpec(
                "open_v",
                "Voltage it charges to (0: that of its feed)",
                "voltage",
                0.0,
                s.HIGHEST_V,
                0.0,
                "0 means the volts of its feed",
            ),
        ),
        ("+", "O", "-"),
    ),
    Behaviour(
        "servo",
        (
            s.RATED_V,
            SettingSpec("idle_a", "Current at rest", "current", 1e-4, 1.0),
            SettingSpec("moving_a", "Current while it moves", "current", 1e-3, 10.0),
            s.STALLED_A,
            s.MIN_V,
        ),
        ("+", "-", "S"),
        positions=("normal", "reverse", "moving", "stalled"),
    ),
    Behaviour(
        "relay",
        (
            s.COIL_OHM,
            SettingSpec("pull_in_v", "Voltage it pulls in at", "voltage", 0.3, s.HIGHEST_V),
            s.RATED_V,
            s.DROP_OUT_V,
        ),
        ("A1", "A2"),
        may_have=CHANGEOVERS,
        positions=("released", "operated"),
    ),
    Behaviour(
        "switch",
        (s.CONTACT_OHM, s.RATED_A),
        may_have=("13", "23", *CHANGEOVERS),
        counted="contacts",
        throws=True,
    ),
    Behaviour(
        "supply_regulated",
        (
            SettingSpec("volts", "Output voltage", "voltage", 0.5, s.HIGHEST_V),
            SettingSpec("limit_a", "Largest current", "current", 0.01, 50.0),
            SettingSpec("ohms", "Inner resistance", "resistance", 0.0, 10.0),
            SettingSpec(
                "on_overload",
                "When overloaded, it",
                "choice",
                choices=("holds current", "folds back", "shuts off"),
            ),
        ),
        ("+", "-"),
    ),
    Behaviour(
        "converter",
        (
            SettingSpec("volts", "Output voltage", "voltage", 0.5, s.HIGHEST_V),
            SettingSpec("limit_a", "Largest output current", "current", 0.01, 50.0),
            SettingSpec("ohms", "Inner resistance of its output", "resistance", 0.0, 10.0),
            SettingSpec("efficiency", "Efficiency at its largest current", "fraction", 0.1, 1.0),
            SettingSpec("half_efficiency", "Efficiency at half of that", "fraction", 0.1, 1.0),
            SettingSpec("idle_a", "Current it takes for itself", "current", 1e-5, 1.0),
            SettingSpec("drop_out_v", "Volts its input must be above its output", "voltage", 0.0, 20.0),
            SettingSpec("min_v", "Least input voltage", "voltage", 0.5, s.HIGHEST_V),
        ),
        ("+", "O", "-"),
    ),
    Behaviour("supply_unregulated", (s.RATED_V, s.RATED_A, s.OPEN_V), ("+", "-")),
    Behaviour("supply_ac", (s.RATED_V, s.RATED_A, s.OPEN_V), ("~1", "~2")),
    Behaviour(
        "battery",
        (
            s.CELL,
            s.CELLS_IN_SERIES,
            s.CELLS_IN_PARALLEL,
            s.CAPACITY,
            s.FITTED,
            s.LIMIT_OR_NONE_A,
            s.WEAKEST,
        ),
        ("+", "-"),
    ),
    Behaviour(
        "fuse",
        (
            SettingSpec("rating_a", "Rating", "current", 0.02, 50.0),
            SettingSpec("cold_ohm", "Resistance when cold", "resistance", 1e-4, 1000.0),
            SettingSpec("speed", "Speed", "choice", choices=("fast", "slow")),
        ),
        ("1", "2"),
        positions=("whole", "blown"),
    ),
    Behaviour(
        "resettable_fuse",
        (
            SettingSpec("hold_a", "Holds for ever at", "current", 0.01, 30.0),
            SettingSpec("trip_a", "Trips at", "current", 0.02, 60.0),
            SettingSpec("cold_ohm", "Resistance when cold", "resistance", 1e-4, 1000.0),
        ),
        ("1", "2"),
        positions=("whole", "tripped"),
    ),
    Behaviour("diode", _DIODE, ("A", "K")),
    Behaviour("rectifier", (*_DIODE, s.SMOOTHING), ("~1", "~2", "+", "-")),
    Behaviour("separate", (s.JOINT_OHM,), counted="numbers"),
    Behaviour("bus", counted="numbers"),
    Behaviour("pairs", (s.CONTACT_OHM,), counted="pairs", positions=("joined", "apart")),
)

BEHAVIOURS: Mapping[str, Behaviour] = MappingProxyType({b.name: b for b in _ALL})
