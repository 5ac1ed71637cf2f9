"""A bridge with its smoothing capacitor against a fine integration in time, by another program's solver.

The circuit is written out by hand as one differential equation: the mains winding feeds the bridge through
its resistance, the bridge the capacitor, and what is behind discharges it. scipy integrates that over a cycle
and looks for the start that it leads back to; nothing of the product's solver takes part.
"""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, newton
from scipy.special import wrightomega
from support.networks import draw, kinds, resistor
from support.solved import solved
from support.waves import waves

from wiring.plan.plan import Plan

OPEN_V, RATED_V, RATED_A = 18.5, 16.0, 1.0
WINDING_OHM = (OPEN_V - RATED_V) / RATED_A
PEAK_V = OPEN_V * math.sqrt(2.0)
HERTZ = 50.0
OWN_OHM_FARADS = 1e-4  # as the product states it: 0.1 ohm at 1000 microfarads
DIODE = {"forward_v": 0.93, "forward_a": 1.0, "slope_v": 0.05}


def bridge(farads: float, load: object, plus: str = "1", minus: str = "2") -> Plan:
    parts = {"G": "supply-ac", "T": ("smoothed-rectifier", {"capacitance": farads}), "L": load}
    wires = [("G:~1", "T:~1"), ("G:~2", "T:~2"), ("T:+", f"L:{plus}"), ("T:-", f"L:{minus}")]
    return draw(parts, wires)


def integrated(farads: float, load_ohm: float) -> tuple[np.ndarray, np.ndarray]:
    """Volts on the load and current of the winding over one cycle that leads back to where it began."""
    own_ohm = OWN_OHM_FARADS / farads
    leak_a = DIODE["forward_a"] / math.expm1(DIODE["forward_v"] / DIODE["slope_v"])
    shared = 1.0 + own_ohm / load_ohm  # volts on the load: (u + own_ohm * amps) / shared
    ohms, slope_v = WINDING_OHM + own_ohm / shared, 2.0 * DIODE["slope_v"]

    def winding_a(t, u):
        """Shockley's law for two diodes in turn behind that resistance, by the Wright omega function."""
        push = np.abs(PEAK_V * np.sin(2.0 * np.pi * HERTZ * t)) - u / shared + leak_a * ohms
        return slope_v / ohms * wrightomega(math.log(leak_a * ohms / slope_v) + push / slope_v) - leak_a

    def change(t, y):
        amps = winding_a(t, y[0])
        return [(amps - (y[0] + own_ohm * amps) / shared / load_ohm) / farads]

    def cycle(u):
        return solve_ivp(change, (0.0, 1.0 / HERTZ), [u], method="LSODA", rtol=1e-8, atol=1e-9, max_step=4e-4,
                         dense_output=True)  # fmt: skip

    u = newton(lambda start: cycle(start).y[0, -1] - start, 0.7 * PEAK_V, tol=1e-8)
    times = np.arange(2000) / 2000.0 / HERTZ
    held = cycle(u).sol(times)[0]
    amps = winding_a(times, held)
    return (held + own_ohm * amps) / shared, amps


@pytest.mark.parametrize(("farads", "load_ohm"), [(2.2e-4, 60.0), (1e-3, 60.0), (1e-3, 24.0)])
def test_volts_ripple_and_currents_are_those_of_the_integration(farads: float, load_ohm: float) -> None:
    plan = bridge(farads, resistor(load_ohm))
    volts, amps = integrated(farads, load_ohm)
    figures = solved(plan)
    assert figures.parts["L"].volts_v == pytest.approx(math.sqrt(np.mean(volts**2)), rel=5e-4)
    assert figures.supplies["G"].current_a == pytest.approx(math.sqrt(np.mean(amps**2)), rel=1e-3)
    (load,) = waves(plan, kinds(), {}, "L")
    (winding,) = waves(plan, kinds(), {}, "G")
    assert load.mean_v == pytest.approx(volts.mean(), rel=5e-4)
    assert load.ripple_v == pytest.approx(np.ptp(volts), rel=1e-2)
    assert winding.peak_a == pytest.approx(amps.max(), rel=1e-2)
    assert load.mean_a == pytest.approx(amps.mean(), rel=1e-3)  # a capacitor keeps nothing over a cycle


def test_ripple_of_a_large_capacitor_is_that_of_the_textbooks() -> None:
    """Ripple is about I / (2 f C), less the time the capacitor charges (any electronics textbook)."""
    (load,) = waves(bridge(4.7e-3, resistor(100.0)), kinds(), {}, "L")
    simple_v = load.mean_a / (2.0 * HERTZ * 4.7e-3)
    assert 0.6 * simple_v < load.ripple_v < simple_v


def test_without_load_it_charges_to_the_peak() -> None:
    """Peak of the open winding less next to nothing over the diodes: 26.2 V less half a volt each."""
    figures = solved(bridge(1e-3, resistor(1e6)))
    assert PEAK_V - 1.2 < figures.parts["L"].volts_v < PEAK_V


def test_a_led_behind_it_does_not_flicker() -> None:
    plain, smooth = (waves(bridge(f, "led-white", "A", "K"), kinds(), {}, "L") for f in (0.0, 1e-3))
    assert plain[0].amps.min() < 1e-4
    assert smooth[0].amps.min() > 0.97 * smooth[0].amps.max()


def test_power_is_kept_over_the_cycle() -> None:
    """What the winding gives is what load, diodes, wires and the capacitor's own resistance take."""
    figures = solved(bridge(1e-3, "lamp-12v"))
    taken = sum(f.power_w for p, f in figures.parts.items() if p != "G")
    taken += sum(w.power_w for w in figures.wires.values())
    assert figures.supplies["G"].power_w == pytest.approx(taken, rel=1e-3)


def test_half_wave_led_against_integration() -> None:
    """One LED with its resistor on AC by itself: half of the cycle only, worked out moment by moment."""
    plan = draw({"G": "supply-ac", "E": "led-red"}, [("G:~1", "E:A"), ("G:~2", "E:K")])
    settings = kinds()["led-red"].values({})
    own_ohm = 0.03 / settings["forward_a"]
    ohms = settings["series_ohm"] + own_ohm + WINDING_OHM
    inside_v = settings["forward_v"] - settings["forward_a"] * own_ohm
    leak_a = settings["forward_a"] / math.expm1(inside_v / settings["slope_v"])

    def amps_at(phase: float) -> float:
        swing = PEAK_V * math.sin(phase)
        if swing <= 0.0:
            return 0.0
        slope_v = settings["slope_v"]
        return brentq(lambda i: swing - ohms * i - slope_v * math.log1p(i / leak_a), 0.0, swing / ohms)

    phases = (np.arange(4000) + 0.5) / 4000 * 2.0 * math.pi
    amps = np.array([amps_at(p) for p in phases])
    figures = solved(plan)
    assert figures.parts["E"].current_a == pytest.approx(math.sqrt(np.mean(amps**2)), rel=1e-3)
    assert figures.parts["E"].light == pytest.approx(amps.mean() / settings["forward_a"], rel=1e-3)
    led_v = PEAK_V * np.sin(phases) - WINDING_OHM * amps
    assert figures.parts["E"].power_w == pytest.approx(np.mean(amps * led_v), rel=1e-3)
