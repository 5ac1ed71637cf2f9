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
            SettingSpec("section", "Section length", "length", 0.002, 5.0),
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
            SettingSpec("in_parallel", "Lamps", "count", 1, 500, 1.0, "one lamp", full="Lamps in parallel"),
        ),
        ("1", "2"),
    ),
    Behaviour(
        "flasher",
        (
            SettingSpec("on_a", "Current while on", "current", 1e-3, 10.0),
            s.MIN_V,
            SettingSpec("duty", "Share on", "fraction", 0.01, 1.0, full="Share of the time it is on"),
            SettingSpec("period", "Period", "time", 0.02, 600.0, full="Time from flash to flash"),
        ),
        ("+", "-"),
    ),
    Behaviour(
        "constant_current",
        (
            SettingSpec("set_a", "Current it keeps", "current", 1e-3, 10.0),
            s.MIN_V,
            SettingSpec(
                "max_v", "Works up to", "voltage", 0.5, 1.5 * s.HIGHEST_V, full="Largest voltage it bears"
            ),
        ),
        ("+", "-"),
    ),
    Behaviour(
        "constant_power", (SettingSpec("power", "Power it takes", "power", 1e-3, 500.0), s.MIN_V), ("+", "-")
    ),
    Behaviour(
        "stall_motor",
        (s.RATED_V, s.STALLED_A, SettingSpec("running_a", "Running current", "current", 1e-4, 10.0)),
        ("M1", "M2"),
        may_have=CHANGEOVERS,
        positions=("normal", "reverse", "moving"),
    ),
    Behaviour(
        "twin_coil",
        (
            s.COIL_OHM,
            SettingSpec("pulse", "Pulse length", "time", 0.005, 10.0),
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
            SettingSpec(
                "charge_ohm", "Charged through", "resistance", 0.1, 1e5, full="Resistance it charges through"
            ),
            SettingSpec(
                "open_v",
                "Charges to",
                "voltage",
                0.0,
                s.HIGHEST_V,
                0.0,
                "0 means the volts of its feed",
                full="Voltage it charges to",
                nought="that of its feed",
            ),
        ),
        ("+", "O", "-"),
    ),
    Behaviour(
        "servo",
        (
            s.RATED_V,
            SettingSpec("idle_a", "Resting current", "current", 1e-4, 1.0),
            SettingSpec("moving_a", "Moving current", "current", 1e-3, 10.0),
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
            SettingSpec(
                "pull_in_v", "Pulls in at", "voltage", 0.3, s.HIGHEST_V, full="Voltage it pulls in at"
            ),
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
        s.REGULATED,
        ("+", "-"),
    ),
    Behaviour(
        "converter",
        s.CONVERTER,
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
            SettingSpec("cold_ohm", "Cold resistance", "resistance", 1e-4, 1000.0, expert=True),
            SettingSpec("speed", "Speed", "choice", choices=("fast", "slow")),
        ),
        ("1", "2"),
        positions=("whole", "blown"),
    ),
    Behaviour(
        "resettable_fuse",
        (
            SettingSpec("hold_a", "Holds at", "current", 0.01, 30.0, full="Current it carries for ever"),
            SettingSpec("trip_a", "Trips at", "current", 0.02, 60.0),
            SettingSpec("cold_ohm", "Cold resistance", "resistance", 1e-4, 1000.0, expert=True),
        ),
        ("1", "2"),
        positions=("whole", "tripped"),
    ),
    Behaviour("diode", s.DIODE, ("A", "K")),
    Behaviour("rectifier", (*s.DIODE, s.SMOOTHING), ("~1", "~2", "+", "-")),
    Behaviour("separate", (s.JOINT_OHM,), counted="numbers"),
    Behaviour("bus", counted="numbers"),
    Behaviour("pairs", (s.CONTACT_OHM,), counted="pairs", positions=("joined", "apart")),
)

BEHAVIOURS: Mapping[str, Behaviour] = MappingProxyType({b.name: b for b in _ALL})
