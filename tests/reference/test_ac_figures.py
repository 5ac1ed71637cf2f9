"""What figures on AC are, RMS, mean or mean power, against a run in time by ngspice.

Volts and amperes of a part are RMS, as a meter for AC shows them and as they heat; watts are the mean of
volts times amperes; the light of an LED goes with its mean current, that of a filament with its RMS volts.
"""

from pathlib import Path

import pytest
from support.networks import draw, resistor
from support.ngspice import needs_ngspice, run

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.gathering import figures_of
from wiring.circuit.spice import netlist, node_names
from wiring.circuit.states import Settled, settle
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

FEED = ("supply-ac", {"rated_v": 16.0, "open_v": 18.0, "rated_a": 1.0})
HALF_WAVE_LED = draw(
    {"G": FEED, "D": "diode", "R": resistor(330), "E": "led-red-bare"},
    [("G:~1", "D:A"), ("D:K", "R:1"), ("R:2", "E:A"), ("E:K", "G:~2")], 0.5,
)  # fmt: skip
HALF_WAVE_LAMP = draw(
    {"G": FEED, "D": "diode", "R": resistor(10), "E": "lamp-16v"},
    [("G:~1", "D:A"), ("D:K", "R:1"), ("R:2", "E:1"), ("E:2", "G:~2")], 0.5,
)  # fmt: skip
BRIDGE_LED = draw(
    {"G": FEED, "D": "rectifier", "R": resistor(470), "E": "led-red-bare"},
    [("G:~1", "D:~1"), ("G:~2", "D:~2"), ("D:+", "R:1"), ("R:2", "E:A"), ("E:K", "D:-")], 0.5,
)  # fmt: skip
STORED_LED = draw(
    {"G": FEED, "D": ("smoothed-rectifier", {"capacitance": 47e-6}), "R": resistor(470), "E": "led-red-bare"},
    [("G:~1", "D:~1"), ("G:~2", "D:~2"), ("D:+", "R:1"), ("R:2", "E:A"), ("E:K", "D:-")], 0.5,
)  # fmt: skip
STORED_LAMP = draw(
    {"G": FEED, "D": ("smoothed-rectifier", {"capacitance": 220e-6}), "R": resistor(10), "E": "lamp-16v"},
    [("G:~1", "D:~1"), ("G:~2", "D:~2"), ("D:+", "R:1"), ("R:2", "E:1"), ("E:2", "D:-")], 0.5,
)  # fmt: skip
PLANS = {
    "half wave, LED": HALF_WAVE_LED,
    "half wave, lamp": HALF_WAVE_LAMP,
    "bridge, LED": BRIDGE_LED,
    "capacitor, LED": STORED_LED,
    "capacitor, lamp": STORED_LAMP,
}


def measured(settled: Settled, folder: Path) -> dict[str, float]:
    """RMS and mean of the volts across R and E and of the amperes through them, and E's mean watts."""
    names, lines = node_names(settled), netlist(settled).splitlines()
    assembly = settled.assembly

    def node(part: str, terminal: str) -> str:
        place = list(assembly.refs).index(TerminalRef(part, terminal))
        return names[int(assembly.node_of[place])]

    ends = [t.name for t in assembly.parts["E"].kind.terminals[:2]]
    ohms = assembly.parts["R"].values["resistance"]
    first = next(n for n, line in enumerate(lines) if line.startswith("meas"))
    window = lines[first].partition(" from=")[2]
    waves = {
        "amps": f"(v({node('R', '1')})-v({node('R', '2')}))/{ohms}",
        "volts": f"v({node('E', ends[0])})-v({node('E', ends[1])})",
        "watts": "volts*amps",
    }
    told = [f"let {name} = {wave}" for name, wave in waves.items()]
    for name in waves:
        told += [
            f"meas tran rms_{name} RMS {name} from={window}",
            f"meas tran mean_{name} AVG {name} from={window}",
        ]
    return run("\n".join([*lines[:first], *told, *lines[first:]]), folder)


@pytest.mark.ngspice
@needs_ngspice
@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS)
def test_figures_on_ac_are_what_a_run_in_time_measures(plan: Plan, tmp_path: Path) -> None:
    settled = settle(plan, builtin_kinds(), {}, None)
    figures, theirs = figures_of(settled), measured(settled, tmp_path)
    light, limiter = figures.parts["E"], figures.parts["R"]
    assert light.volts_v == pytest.approx(theirs["rms_volts"], rel=1e-3)
    assert light.current_a == pytest.approx(theirs["rms_amps"], rel=2e-3)
    assert limiter.current_a == pytest.approx(theirs["rms_amps"], rel=2e-3)
    assert light.power_w == pytest.approx(theirs["mean_watts"], rel=3e-3)
    assert limiter.power_w == pytest.approx(
        theirs["rms_amps"] ** 2 * settled.assembly.parts["R"].values["resistance"], rel=4e-3
    )
    values = settled.assembly.parts["E"].values
    assert light.mean_a == pytest.approx(theirs["mean_amps"], rel=2e-3)
    if "forward_a" in values:
        assert light.light == pytest.approx(abs(theirs["mean_amps"]) / values["forward_a"], rel=2e-3)
        assert abs(theirs["mean_amps"]) < 0.999 * theirs["rms_amps"]  # so that the two are told apart
    else:
        assert light.light == pytest.approx((theirs["rms_volts"] / values["rated_v"]) ** 3.4, rel=1e-2)


def test_the_light_of_a_led_behind_a_lone_diode_is_less_than_its_rms_current_says() -> None:
    """A half sine has an RMS of half its peak and a mean of 1/pi of it (textbook): 1.57 apart.

    An LED that starts to conduct late in the wave has them farther apart still.
    """
    figures = figures_of(settle(HALF_WAVE_LED, builtin_kinds(), {}, None))
    led = figures.parts["E"]
    assert led.light is not None
    assert led.current_a / (led.light * 0.02) > 1.57
