"""What a meter shows behind a rectifier, against its minus: textbook means of rectified sines."""

import math

import pytest
from support.networks import draw, kinds, resistor

from wiring.circuit.solve import solve
from wiring.findings.situation import examine
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.sheets.meter_checks import volt_checks

# A stiff transformer: 20 V open and 20 V at 10 A.
FEED = ("supply-ac", {"open_v": 20.0, "rated_v": 20.0, "rated_a": 10.0})


def bridge(kind: str, ohms: float = 1000.0) -> Plan:
    wires = [("G:~1", "T:~1"), ("G:~2", "T:~2"), ("T:+", "S:13"), ("S:14", "R:1"), ("R:2", "T:-")]
    parts = {"G": FEED, "T": kind, "S": ("toggle-on-off", {}, "on"), "R": resistor(ohms), "L": "lamp-16v"}
    return draw(parts, [*wires, ("G:~1", "L:1"), ("G:~2", "L:2")], 0.2)


def volts(plan: Plan, *ends: str, positions: dict[str, str] | None = None) -> list[float]:
    figures = solve(plan, kinds(), positions or {"S": "on"})
    return [figures.terminals[TerminalRef(*end.split(":"))] for end in ends]


def test_a_bare_bridge_shows_the_mean_of_a_full_wave_less_two_diodes() -> None:
    """Mean of |sine| is 2/pi of its peak (textbook); two silicon diodes take about 0.75 V each at 20 mA."""
    plus, minus, lamp = volts(bridge("rectifier"), "R:1", "R:2", "L:1")
    assert minus == pytest.approx(0.0, abs=1e-3)
    assert plus == pytest.approx(2.0 / math.pi * 20.0 * math.sqrt(2.0) - 1.4, abs=0.3)
    assert lamp in (pytest.approx(20.0, rel=0.01), pytest.approx(0.0, abs=1e-9))


def test_a_smoothed_bridge_shows_the_peak_less_two_diodes_and_half_the_ripple() -> None:
    """Ripple is about I / (2 f C), textbook: 26 mA, 50 Hz and 1000 microfarads make 0.26 V."""
    plus, minus = volts(bridge("smoothed-rectifier"), "T:+", "T:-")
    assert minus == pytest.approx(0.0, abs=1e-9)
    assert plus == pytest.approx(20.0 * math.sqrt(2.0) - 1.5 - 0.13, abs=0.3)


def test_what_an_open_switch_cuts_off_is_still_counted_from_the_minus() -> None:
    plus, cut, minus = volts(bridge("smoothed-rectifier"), "T:+", "R:1", "T:-", positions={"S": "off"})
    assert plus == pytest.approx(20.0 * math.sqrt(2.0) - 1.0, abs=0.6)
    assert cut == pytest.approx(0.0, abs=1e-3)
    assert minus == pytest.approx(0.0, abs=1e-9)


def test_a_load_shows_what_its_figure_says() -> None:
    """On a steady feed RMS and mean are the same."""
    plan = bridge("smoothed-rectifier")
    figures = solve(plan, kinds(), {"S": "on"})
    one, other = (figures.terminals[TerminalRef("R", end)] for end in "12")
    assert one - other == pytest.approx(figures.parts["R"].volts_v, rel=1e-3)


def test_behind_a_lone_diode_the_leg_still_counts() -> None:
    plan = draw(
        {"G": FEED, "D": "diode", "R": resistor(1000.0)}, [("G:~1", "D:A"), ("D:K", "R:1"), ("R:2", "G:~2")]
    )
    figures = solve(plan, kinds(), {})
    across = abs(figures.terminals[TerminalRef("R", "1")] - figures.terminals[TerminalRef("R", "2")])
    assert across == pytest.approx(10.0 * math.sqrt(2.0), rel=0.06)  # RMS of a half wave


def test_a_sheet_of_checks_asks_for_direct_volts_there() -> None:
    """The LED behind the rectifier is measured on the DC range, the lamp on the legs on the AC range."""
    parts = {
        "G": FEED,
        "T": "smoothed-rectifier",
        "E": ("led-white", {"series_ohm": 2200.0}),
        "L": "lamp-16v",
    }
    wires = [("G:~1", "T:~1"), ("G:~2", "T:~2"), ("T:+", "E:A"), ("T:-", "E:K")]
    plan = draw(parts, [*wires, ("G:~1", "L:1"), ("G:~2", "L:2")], 0.2)
    known = examine(plan, kinds(), {}, outlooks=False)
    checks = {check.red.part: check for check in volt_checks(known)}
    assert known.figures.rectified == {"E"}
    assert not checks["E"].alternating and checks["L"].alternating
    assert checks["E"].expect_v == pytest.approx(20.0 * math.sqrt(2.0) - 1.5, abs=0.4)
