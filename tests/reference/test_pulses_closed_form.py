"""Pulses against capacitor energies, RC times and the textbook natural response of a series RLC circuit.

Formulas: the source-free series RLC circuit of any circuits textbook, alpha = R / 2L, w0² = 1 / LC (from
memory of Nilsson and Riedel, Electric Circuits). Energies: half of C V², computed.
"""

import math

import numpy as np
import pytest

from wiring.studies.throws.coil import Coil, Store
from wiring.studies.throws.discharge import discharge, recharge_s
from wiring.studies.throws.from_supply import from_supply

UNCHARGED_OHM = 1e12  # nothing comes in after the start


@pytest.mark.parametrize(
    ("farads", "volts", "joules"),
    [
        (2200e-6, 16, 0.282), (2200e-6, 24, 0.634), (4700e-6, 16, 0.602), (4700e-6, 24, 1.354),
        (10_000e-6, 24, 2.88), (4700e-6, 12, 0.338), (4700e-6, 20, 0.940), (4700e-6, 25, 1.469),
    ],
)  # fmt: skip
def test_stored_energy(farads, volts, joules):
    store = Store(farads, volts, UNCHARGED_OHM)
    assert store.energy_j == pytest.approx(joules, abs=6e-4)
    assert discharge(store, [Coil(8.0, 1e-4)], 2.0).energy_coil_j == pytest.approx(store.energy_j, rel=1e-9)


# 4700 µF at 24 V: I²t of the whole discharge is half of C V² over R, whatever the time.
@pytest.mark.parametrize(("ohms", "peak", "square"), [(4, 6.0, 0.338), (6, 4.0, 0.226), (8, 3.0, 0.169)])
def test_peak_and_square_of_a_discharge_without_inductance(ohms, peak, square):
    found = discharge(Store(4700e-6, 24.0, UNCHARGED_OHM), [Coil(ohms, 0.0)], 2.0)
    assert found.peak_a == pytest.approx(peak, rel=1e-4)
    assert found.energy_coil_j / ohms == pytest.approx(square, abs=6e-4)


# Time constants of 4700 µF: 22.1 ms through 4.7 ohm, 70.5 ms through 15 ohm.
@pytest.mark.parametrize(("ohms", "tau_s"), [(4.7, 22.1e-3), (15.0, 70.5e-3)])
def test_volts_fall_with_the_time_constant(ohms, tau_s):
    found = discharge(Store(4700e-6, 20.0, UNCHARGED_OHM), [Coil(ohms, 0.0)], tau_s)
    assert found.left_v / 20.0 == pytest.approx(math.exp(-1.0), rel=3e-3)


def test_defibrillator_falls_from_ten_kilovolts_to_twenty_volts():
    """10 µF through 1.207 kilohm, a teaching example: 75.0 ms, tau 12.07 ms."""
    found = discharge(Store(10e-6, 10_000.0, UNCHARGED_OHM), [Coil(1207.0, 0.0)], 75.0e-3)
    assert found.left_v == pytest.approx(20.0, rel=5e-3)


@pytest.mark.parametrize("from_v", [0.0, 5.0, 18.0])
def test_recharging_takes_three_time_constants_from_empty_and_less_from_there(from_v):
    store = Store(4700e-6, 20.0, 470.0)
    tau_s = 470.0 * 4700e-6
    after = recharge_s(store, from_v)
    assert 20.0 - (20.0 - from_v) * math.exp(-after / tau_s) == pytest.approx(19.0, rel=1e-12)
    if from_v == 0.0:
        assert after == pytest.approx(tau_s * math.log(20.0))
    assert recharge_s(store, 19.5) == 0.0


FARADS, HENRY, VOLTS = 4700e-6, 5e-3, 20.0
CRITICAL_OHM = 2.0 * math.sqrt(HENRY / FARADS)


def _textbook(ohms: float, times: np.ndarray) -> tuple[np.ndarray, float]:
    """Current, and when it is at its peak."""
    alpha, w0_square = ohms / (2.0 * HENRY), 1.0 / (HENRY * FARADS)
    root = alpha * alpha - w0_square
    if abs(root) < 1e-9 * w0_square:
        return VOLTS / HENRY * times * np.exp(-alpha * times), 1.0 / alpha
    if root > 0:
        s1, s2 = -alpha + math.sqrt(root), -alpha - math.sqrt(root)
        amps = VOLTS / (HENRY * (s1 - s2)) * (np.exp(s1 * times) - np.exp(s2 * times))
        return amps, math.log(s2 / s1) / (s1 - s2)
    wd = math.sqrt(-root)
    return VOLTS / (wd * HENRY) * np.exp(-alpha * times) * np.sin(wd * times), math.atan2(wd, alpha) / wd


@pytest.mark.parametrize(
    "ohms", [0.3, 1.0, 0.999 * CRITICAL_OHM, CRITICAL_OHM, 1.001 * CRITICAL_OHM, 6.0, 30.0]
)
def test_series_circuit_of_resistance_inductance_and_capacitance(ohms):
    coil_ohm = 0.9 * ohms
    coil = Coil(coil_ohm, HENRY / coil_ohm, ohms - coil_ohm)
    found = discharge(Store(FARADS, VOLTS, UNCHARGED_OHM), [coil], 0.05)
    amps, peak_at_s = _textbook(ohms, found.times_s)
    peak_a = float(_textbook(ohms, np.array([peak_at_s]))[0][0])
    assert found.coils[0].amps == pytest.approx(amps, abs=1e-7 * peak_a)
    assert found.peak_a == pytest.approx(peak_a, rel=1e-8)
    assert found.peak_at_s == pytest.approx(peak_at_s, rel=1e-5)
    # What the capacitor and the coil no longer hold is heat, shared by resistance.
    held_j = 0.5 * FARADS * found.left_v**2 + 0.5 * HENRY * found.coils[0].amps[-1] ** 2
    assert found.energy_coil_j == pytest.approx(0.9 * (found.stored_j - held_j), rel=1e-8)


def test_two_equal_coils_share_evenly_as_one_of_half_the_resistance():
    store = Store(FARADS, VOLTS, 100.0)
    two = discharge(store, [Coil(8.0, 1e-3, 0.5)] * 2, 0.06)
    one = discharge(store, [Coil(4.0, 1e-3, 0.25)], 0.06)
    assert two.peak_a == pytest.approx(one.peak_a / 2, rel=1e-9)
    assert two.coils[0].energy_j == two.coils[1].energy_j == pytest.approx(one.energy_coil_j / 2, rel=1e-9)


def test_a_coil_on_a_supply_rises_as_the_textbook_says():
    """i = V/R (1 - exp(-t R/L)); integral of i² by Simpson's rule."""
    coil = Coil(15.0, 1e-3, 5.0)
    found = from_supply(16.0, math.inf, [coil], 0.1)
    tau_s = 15e-3 / 20.0
    times = np.linspace(0.0, 0.1, 200_001)
    amps = 0.8 * (1.0 - np.exp(-times / tau_s))
    weights = np.tile([2.0, 4.0], 100_001)[: len(times)]
    weights[0] = weights[-1] = 1.0
    simpson = float(weights @ amps**2) * times[1] / 3.0
    assert found.peak_a == pytest.approx(0.8)
    assert found.energy_coil_j == pytest.approx(15.0 * simpson, rel=1e-9)
    assert not found.limited


def test_a_supply_with_a_limit_gives_no_more():
    found = from_supply(16.0, 0.5, [Coil(15.0, 1e-3, 5.0)], 0.1)
    assert found.limited
    assert found.peak_a == pytest.approx(0.5)
    rises_s = -0.75e-3 * math.log(1.0 - 0.5 / 0.8)
    flat_j = 15.0 * 0.25 * (0.1 - rises_s)
    assert flat_j < found.energy_coil_j < flat_j + 15.0 * 0.25 * rises_s


def test_equal_coils_behind_diodes_change_at_the_same_moment():
    """Small capacitor, much inductance: the volts swing over, and all diodes take over at once."""
    coil = Coil(7.9, 2.4e-3, 3.8, offset_v=0.9, one_way=True, freewheel_v=0.8)
    found = discharge(Store(200e-6, 12.6, 1100.0), [coil] * 3, 0.086)
    for pulse in found.coils:
        assert pulse.amps == pytest.approx(found.coils[0].amps, abs=1e-9)
        assert np.min(pulse.amps) >= -1e-9
