"""Alternating current against closed forms and against a transient run of ngspice."""

import math
from pathlib import Path

import pytest
from support.networks import draw, resistor
from support.ngspice import needs_ngspice, run
from support.solved import solved

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.spice import netlist, node_names
from wiring.circuit.states import settle
from wiring.plan.plan import Plan

RMS_V = 16.0
STIFF = ("supply-ac", {"rated_v": RMS_V, "open_v": RMS_V, "rated_a": 1.0})
# A diode as good as ideal: next to no volts at any current.
IDEAL = {"forward_v": 1e-3, "forward_a": 1.0, "slope_v": 1e-4}


def test_a_resistor_reads_plain_rms() -> None:
    figures = solved(draw({"G": STIFF, "R": resistor(100)}, [("G:~1", "R:1"), ("R:2", "G:~2")]))
    assert figures.alternating == {"G", "R"}
    assert figures.parts["R"].volts_v == pytest.approx(RMS_V, rel=1e-4)
    assert figures.parts["R"].power_w == pytest.approx(RMS_V**2 / 100, rel=1e-4)
    assert figures.supplies["G"].current_a == pytest.approx(0.16, rel=1e-4)
    assert figures.supplies["G"].power_w == pytest.approx(2.56, rel=1e-4)


def test_half_wave_rms_is_half_the_peak() -> None:
    """A half-wave rectified sine has an RMS value of half its peak (closed form)."""
    plan = draw({"G": STIFF, "D": ("diode", IDEAL), "R": resistor(100)},
                [("G:~1", "D:A"), ("D:K", "R:1"), ("R:2", "G:~2")])  # fmt: skip
    figures = solved(plan)
    assert figures.parts["R"].volts_v == pytest.approx(RMS_V * math.sqrt(2) / 2, rel=2e-3)
    assert figures.parts["R"].power_w == pytest.approx(RMS_V**2 / 200, rel=2e-3)


def test_bridge_gives_the_whole_rms() -> None:
    """A full-wave rectified sine has the RMS value of the sine (closed form)."""
    figures = solved(bridge(("resistor", {"resistance": 100}), "1", "2"))
    assert figures.parts["R"].volts_v == pytest.approx(RMS_V, rel=2e-3)


def test_light_of_a_led_follows_the_mean_current() -> None:
    """Behind an ideal bridge the mean is 2 peak / pi (closed form); the LED's own volts take a little."""
    led = {
        "forward_v": 0.05,
        "forward_a": 0.02,
        "slope_v": 0.002,
        "series_ohm": 1000.0,
        "in_series": 1,
        "in_parallel": 1,
    }
    figures = solved(bridge(("led-red", led), "A", "K"))
    mean_a = 2 * RMS_V * math.sqrt(2) / math.pi / 1000
    assert figures.parts["R"].light == pytest.approx(mean_a / 0.02, rel=1e-2)
    assert figures.parts["R"].current_a == pytest.approx(RMS_V / 1000, rel=1e-2)


def test_a_led_on_ac_is_not_called_backward() -> None:
    figures = solved(draw({"G": "supply-ac", "E": "led-red"}, [("G:~1", "E:A"), ("G:~2", "E:K")], 0.5))
    assert not [p for p in figures.problems if p.code == "backward"]
    assert 0 < figures.parts["E"].light < 1.5


def test_a_filament_keeps_the_resistance_of_its_rms_volts() -> None:
    """On AC of its rated RMS volts a lamp takes its rated RMS current, as on DC: the definition of RMS."""
    lamp = ("lamp-16v", {"rated_v": RMS_V, "rated_a": 0.05})
    figures = solved(draw({"G": STIFF, "E": lamp}, [("G:~1", "E:1"), ("G:~2", "E:2")]))
    assert figures.parts["E"].current_a == pytest.approx(0.05, rel=1e-3)
    assert figures.parts["E"].light == pytest.approx(1.0, rel=5e-3)


def test_the_supply_sags_to_its_rated_volts_at_its_rated_current() -> None:
    supply = ("supply-ac", {"rated_v": 16.0, "open_v": 18.5, "rated_a": 1.0})
    figures = solved(draw({"G": supply, "R": resistor(16)}, [("G:~1", "R:1"), ("R:2", "G:~2")]))
    assert figures.supplies["G"].volts_v == pytest.approx(16.0, rel=1e-5)
    assert figures.supplies["G"].current_a == pytest.approx(1.0, rel=1e-5)


def bridge(load: tuple[str, dict[str, float]], plus: str, minus: str) -> Plan:
    parts = {"G": STIFF, "T": ("rectifier", IDEAL), "R": load}
    wires = [("G:~1", "T:~1"), ("G:~2", "T:~2"), ("T:+", f"R:{plus}"), ("T:-", f"R:{minus}")]
    return draw(parts, wires)


HALF_WAVE = draw({"G": "supply-ac", "R": resistor(50), "D": "diode"},
                 [("G:~1", "D:A"), ("D:K", "R:1"), ("R:2", "G:~2")], 0.5)  # fmt: skip
LAMP_AND_LED = draw(
    {"G": "supply-ac", "E1": "lamp-16v", "T": "rectifier", "E2": "led-red"},
    [("G:~1", "T:~1"), ("T:~2", "G:~2"), ("E1:2", "T:-"), ("E1:1", "T:+"), ("E2:A", "T:+"), ("E2:K", "T:-")],
    0.5,
)  # fmt: skip
TWO_LAMPS = draw(
    {"G": "supply-ac", "E1": "lamp-16v", "E2": "lamp-16v", "R": resistor(68)},
    [("G:~1", "R:1"), ("R:2", "E1:1"), ("R:2", "E2:1"), ("E1:2", "G:~2"), ("E2:2", "G:~2")], 2.0,
)  # fmt: skip


@pytest.mark.ngspice
@needs_ngspice
@pytest.mark.parametrize("plan", [HALF_WAVE, LAMP_AND_LED, TWO_LAMPS], ids=["half wave", "bridge", "lamps"])
def test_rms_is_that_of_a_transient_run(plan: Plan, tmp_path: Path) -> None:
    settled = settle(plan, builtin_kinds(), {}, None)
    theirs = run(netlist(settled), tmp_path)
    for node, called in node_names(settled).items():
        assert theirs[f"rms_{called}"] == pytest.approx(settled.reading.nodes[node], rel=2e-4, abs=2e-4)
