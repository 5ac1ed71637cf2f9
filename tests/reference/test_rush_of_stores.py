"""The rush into empty smoothing capacitors against ngspice's transient run and against closed forms."""

import math
from pathlib import Path

import pytest
from support.networks import draw, kinds, resistor
from support.ngspice import needs_ngspice, run

from wiring.circuit.altered import with_cold_lamps
from wiring.circuit.branches.junction import SPICE_VT
from wiring.circuit.compiled import mould_of
from wiring.circuit.smoothing_rush import rush_of_stores
from wiring.circuit.solve import solve
from wiring.plan.plan import Plan
from wiring.studies.throws.inrush import BLOWS, HOLDS, MAY_BLOW
from wiring.studies.throws.store_rush import fills_of, short_verdict

OPEN_V, RATED_V, RATED_A = 18.0, 16.0, 1.0
OHMS = (OPEN_V - RATED_V) / RATED_A


def house(farads: float, ohms: float = 100.0, fuse: float = 1.0) -> Plan:
    parts = {
        "G": ("supply-ac", {"open_v": OPEN_V, "rated_v": RATED_V, "rated_a": RATED_A}),
        "F": ("fuse", {"rating_a": fuse, "cold_ohm": 0.1}),
        "T": ("smoothed-rectifier", {"capacitance": farads}),
        "R": resistor(ohms),
    }
    wires = [("G:~1", "F:1"), ("F:2", "T:~1"), ("G:~2", "T:~2"), ("T:+", "R:1"), ("T:-", "R:2")]
    return draw(parts, wires)


def transient(plan: Plan, farads: float, ohms: float, phase_deg: float, folder: Path) -> dict[str, float]:
    """Peak and heat (integral of current squared) of the first cycles, switched on at that phase."""
    rectifier = mould_of(plan.parts["T"], kinds()["smoothed-rectifier"], "")
    log_is, slope_v, own_ohm = rectifier.rows[0][:3]
    esr = rectifier.rows[4][1]
    lines = [
        "* an empty capacitor behind a bridge",
        f"Vmains s 0 SIN(0 {OPEN_V * math.sqrt(2.0)} 50 0 0 {phase_deg})",
        f"Rall s a {OHMS + 0.1}",
        f".model bridge D(is={math.exp(log_is)} n={slope_v / SPICE_VT} rs={own_ohm} cjo=1n)",
        "D1 a p bridge", "D2 0 p bridge", "D3 m a bridge", "D4 m 0 bridge",
        f"Resr p c {esr}", f"Cstore c m {farads} ic=0", f"Rload p m {ohms}",
        "Rleak a m 1meg", "Bheat 0 h i=i(Vmains)*i(Vmains)", "Cheat h 0 1 ic=0", "Rheat h 0 1e12",
        ".options reltol=1e-4 abstol=1e-9 gmin=1e-10", ".control", "set numdgt=12", "tran 20u 0.2 0 20u uic",
        "meas tran high MAX i(Vmains)", "meas tran low MIN i(Vmains)", "meas tran heat FIND v(h) AT=0.199",
        ".endc", ".end", "",
    ]  # fmt: skip
    return run("\n".join(lines), folder)


@pytest.mark.ngspice
@needs_ngspice
@pytest.mark.parametrize("farads", [4.7e-4, 2.2e-3, 1e-2])
def test_the_peak_is_that_of_a_transient_run_and_the_heat_no_less(farads: float, tmp_path: Path) -> None:
    plan = house(farads, ohms=1e4)
    rush = rush_of_stores(plan, kinds(), {})
    theirs = transient(plan, farads, 1e4, 90.0, tmp_path)
    peak = max(theirs["high"], -theirs["low"])
    assert rush.peak_a("F") == pytest.approx(peak, rel=0.01)
    assert rush.peak_a("G") == pytest.approx(peak, rel=0.01)
    assert theirs["heat"] <= rush.heat_a2s("F") * 1.01
    assert theirs["heat"] > 0.4 * rush.heat_a2s("F")
    at_nought = transient(plan, farads, 1e4, 0.0, tmp_path)
    assert max(at_nought["high"], -at_nought["low"]) <= peak * 1.001
    assert at_nought["heat"] <= rush.heat_a2s("F") * 1.01


def test_on_direct_current_it_is_the_textbook_charge_through_a_resistance() -> None:
    """I = (E - 2 Vd) / R and Q = C (E - 2 Vd), textbook RC; R with wires, fuse and capacitor in it."""
    parts = {"G": ("supply-regulated", {"volts": 24.0, "ohms": 1.0, "limit_a": 3.0}), "R": resistor(1e6),
             "T": ("smoothed-rectifier", {"capacitance": 1e-3})}  # fmt: skip
    plan = draw(parts, [("G:+", "T:~1"), ("G:-", "T:~2"), ("T:+", "R:1"), ("T:-", "R:2")])
    rush = rush_of_stores(plan, kinds(), {})
    peak = rush.peak_a("G")
    drop_v = 24.0 - peak * (1.0 + 0.1)
    assert 1.9 < drop_v < 2.6  # two silicon rectifier diodes at some twenty amperes
    assert rush.charge_as("G") == pytest.approx(1e-3 * 24.0, rel=0.05)
    (supply,) = fills_of(plan, kinds(), {}).supplies
    assert supply.limited and supply.lasts_s == pytest.approx(1e-3 * 24.0 / peak, rel=0.05)


def test_each_fuse_carries_what_lies_behind_it() -> None:
    parts = {"G": "supply-ac"}
    wires = []
    for n, farads in enumerate((1e-3, 1e-2)):
        parts |= {
            f"F{n}": "fuse",
            f"T{n}": ("smoothed-rectifier", {"capacitance": farads}),
            f"R{n}": resistor(500.0),
        }
        wires += [("G:~1", f"F{n}:1"), (f"F{n}:2", f"T{n}:~1"), ("G:~2", f"T{n}:~2")]
        wires += [(f"T{n}:+", f"R{n}:1"), (f"T{n}:-", f"R{n}:2")]
    rush = rush_of_stores(draw(parts, wires, 0.5), kinds(), {})
    small, large = rush.charge_as("F0"), rush.charge_as("F1")
    assert large == pytest.approx(10.0 * small, rel=0.02)
    assert rush.charge_as("G") == pytest.approx(small + large, rel=0.02)


def test_a_plan_without_capacitors_has_no_rush() -> None:
    assert rush_of_stores(draw({"R": resistor(1.0)}, []), kinds(), {}) is None


@pytest.mark.parametrize(
    ("rating", "speed", "heat", "expected"),
    [
        (1.0, "fast", 0.15, HOLDS),  # four times for 10 ms is promised: 0.16
        (1.0, "fast", 0.2, MAY_BLOW),
        (1.0, "fast", 2.1, BLOWS),  # ten times for 20 ms at most: 2
        (1.0, "slow", 1.9, HOLDS),  # ten times for 20 ms is promised: 2
        (1.0, "slow", 29.0, MAY_BLOW),
        (2.0, "fast", 0.6, HOLDS),
    ],
)
def test_a_fuse_stands_what_its_gates_come_to(rating: float, speed: str, heat: float, expected: str) -> None:
    """IEC 60127-2 sheets 2 and 3, as in wiring.standards.fuses."""
    assert short_verdict(rating, speed, heat) == expected


def test_a_lamp_shows_what_it_takes_cold() -> None:
    """About ten times its rated current at rated volts: common practice, no source; none while it is dark."""
    parts = {"G": ("supply-regulated", {"volts": 12.0, "ohms": 0.0}), "E": "lamp-12v", "S": "toggle-on-off"}
    plan = draw(parts, [("G:+", "S:13"), ("S:14", "E:1"), ("E:2", "G:-")])
    lit = solve(plan, kinds(), {"S": "on"}).parts["E"]
    assert lit.peak_a == pytest.approx(10.0 * lit.current_a, rel=0.03)
    assert solve(plan, kinds(), {"S": "off"}).parts["E"].peak_a is None
    cold = with_cold_lamps(plan, kinds(), {"S": "on"})
    assert cold.amps("E")[0] == pytest.approx(lit.peak_a, rel=0.02)
