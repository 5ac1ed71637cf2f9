"""The two-well law against published numbers and against its own differential equations.

Sources: NREL SSC, test/shared_test/lib_battery_capacity_test.cpp (BSD-3-Clause), for the lead-acid
numbers; the lifetimes of the small cell are those of Jongerden and Haverkort, "Which battery model to
use?", from memory and confirmed by computation: that table is a check of the closed form against its own
event form, not a printed oracle.
"""

import math
import random

import pytest

from wiring.standards.two_wells import Wells, drawn, full

C, K = 0.166, 0.122  # share, 1/min


def _lifetime(capacity, jobs):
    """Minutes until the available well is empty; the crossing is found by bisection of the closed form."""
    wells, minutes = full(capacity, C), 0.0
    while True:
        for current, length in jobs:
            after = drawn(wells, current, length, C, K)
            if after.available_ah <= 0 and current > 0:
                low, high = 0.0, length
                for _ in range(60):
                    middle = (low + high) / 2
                    if drawn(wells, current, middle, C, K).available_ah > 0:
                        low = middle
                    else:
                        high = middle
                return minutes + low
            wells, minutes = after, minutes + length


JOBS = {
    "continuous 250": [(0.25, 1)],
    "continuous 500": [(0.5, 1)],
    "alternating": [(0.5, 1), (0.25, 1)],
    "short rest 250": [(0.25, 1), (0, 1)],
    "short rest 500": [(0.5, 1), (0, 1)],
    "short rest alternating": [(0.5, 1), (0, 1), (0.25, 1), (0, 1)],
    "long rest 250": [(0.25, 1), (0, 2)],
    "long rest 500": [(0.5, 1), (0, 2)],
}
LIFETIMES = {
    5.5: (4.53, 2.02, 2.58, 10.80, 4.30, 4.80, 21.86, 6.53),
    11.0: (12.16, 4.53, 6.45, 44.78, 10.80, 16.93, 84.90, 21.86),
}


@pytest.mark.parametrize("capacity", LIFETIMES)
@pytest.mark.parametrize("number", range(8))
def test_lifetimes_of_the_small_cell(capacity, number):
    jobs = list(JOBS.values())[number]
    assert _lifetime(capacity, jobs) == pytest.approx(LIFETIMES[capacity][number], abs=0.01)


# SSC's test battery: 100 Ah at 20 h, 93 Ah at 10 h, 60 Ah at 1 h.
SSC_SHARE, SSC_RATE, SSC_FULL_AH = 0.4751, 0.6770, 108.16


def test_rates_of_the_ssc_battery_come_back():
    for hours, capacity in ((20, 100.0), (10, 93.0), (1, 60.0)):
        wells = full(SSC_FULL_AH, SSC_SHARE)
        after = drawn(wells, capacity / hours, hours, SSC_SHARE, SSC_RATE)
        assert after.available_ah == pytest.approx(0.0, abs=0.002 * capacity)


def test_ssc_battery_from_half_charge():
    half = Wells(SSC_SHARE * SSC_FULL_AH / 2, (1 - SSC_SHARE) * SSC_FULL_AH / 2)
    assert half.available_ah == pytest.approx(25.6938, rel=1e-3)
    first = drawn(half, 1.5, 1.0, SSC_SHARE, SSC_RATE)
    assert first.total_ah == pytest.approx(52.58, rel=1e-3)
    assert drawn(first, 3.0, 1.0, SSC_SHARE, SSC_RATE).total_ah == pytest.approx(49.58, rel=1e-3)


def _largest_current(wells, hours):
    """The current that just empties the available well; the law is straight in the current."""
    at_none = drawn(wells, 0.0, hours, SSC_SHARE, SSC_RATE).available_ah
    at_one = drawn(wells, 1.0, hours, SSC_SHARE, SSC_RATE).available_ah
    return at_none / (at_none - at_one)


def test_largest_currents_of_the_ssc_battery():
    wells = Wells(SSC_SHARE * SSC_FULL_AH / 2, (1 - SSC_SHARE) * SSC_FULL_AH / 2)
    for current in (1.5, 3.0):
        wells = drawn(wells, current, 1.0, SSC_SHARE, SSC_RATE)
    first = _largest_current(wells, 1.0)
    assert first == pytest.approx(26.65, abs=0.02)
    after = drawn(wells, first, 1.0, SSC_SHARE, SSC_RATE)
    assert _largest_current(after, 1.0) == pytest.approx(6.25, abs=0.02)


def _integrated(wells, current, hours, share, rate, steps=2000):
    """The well equations by the classical fourth-order Runge-Kutta rule."""

    def slope(q1, q2):
        flow = rate * (1 - share) * share * (q2 / (1 - share) - q1 / share)
        return -current + flow, -flow

    q1, q2 = wells
    h = hours / steps
    for _ in range(steps):
        a = slope(q1, q2)
        b = slope(q1 + h / 2 * a[0], q2 + h / 2 * a[1])
        c = slope(q1 + h / 2 * b[0], q2 + h / 2 * b[1])
        d = slope(q1 + h * c[0], q2 + h * c[1])
        q1 += h / 6 * (a[0] + 2 * b[0] + 2 * c[0] + d[0])
        q2 += h / 6 * (a[1] + 2 * b[1] + 2 * c[1] + d[1])
    return q1, q2


def test_closed_form_is_the_integral_of_the_well_equations():
    chance = random.Random(4)
    for _ in range(8):
        share, rate = chance.uniform(0.1, 0.9), chance.uniform(0.05, 5)
        wells = Wells(chance.uniform(0.2, 3), chance.uniform(0.2, 3))
        current, hours = chance.uniform(0, 2), chance.uniform(0.01, 3)
        expected = _integrated(wells, current, hours, share, rate)
        assert drawn(wells, current, hours, share, rate) == pytest.approx(expected, abs=1e-9)


def test_two_half_steps_are_one_step():
    wells = Wells(1.3, 1.9)
    half = drawn(drawn(wells, 0.3, 0.7, 0.5, 0.45), 0.3, 0.7, 0.5, 0.45)
    assert drawn(wells, 0.3, 1.4, 0.5, 0.45) == pytest.approx(half, abs=1e-12)


def test_rest_keeps_the_charge_and_levels_the_wells():
    wells = Wells(0.2, 2.5)
    rested = drawn(wells, 0.0, 500.0, 0.5, 0.45)
    assert rested.total_ah == pytest.approx(wells.total_ah, abs=1e-12)
    assert rested.available_ah == pytest.approx(0.5 * wells.total_ah, abs=1e-12)
    assert not math.isnan(rested.bound_ah)


def test_closed_form_agrees_with_a_general_battery_simulation():
    """NREL-PySAM 7.1.1, BatteryStateful, lead-acid at 25 °C, run once: 20.02, 5.15, 2.10 and 1.02 h.

    Its battery is given 6.86, 6.48 and 3.92 Ah at 20, 10 and 1 h; it steps by a minute.
    """
    share, rate, full_ah = 0.407, 1.169, 7.287
    for amps, hours in ((0.343, 20.02), (1.14, 5.15), (2.26, 2.10), (3.92, 1.02)):
        low, high = 0.0, 40.0
        for _ in range(60):
            middle = (low + high) / 2
            left = drawn(full(full_ah, share), amps, middle, share, rate).available_ah
            low, high = (middle, high) if left > 0 else (low, middle)
        assert low == pytest.approx(hours, rel=0.025)
