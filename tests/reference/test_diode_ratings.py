"""The current a rectifier diode is rated by is the average over a cycle; a bridge by the average it gives.

Makers' sheets of rectifier diodes and bridges: "maximum average forward rectified current; single phase, half
wave, 60 Hz, resistive or inductive load; for capacitive load derate current by 20 %". Average and RMS of half
waves and full waves are those of any textbook: 1/pi and 1/2, 2/pi and 1/sqrt 2 of the peak.
"""

import math

import pytest
from support.findings import found, rules, situation
from support.networks import draw, resistor

from wiring.circuit.many_readings import mean_out_a

RATED_A = 1.0
STIFF_AC = ("supply-ac", {"rated_v": 15.99, "open_v": 16.0, "rated_a": 50.0})
DIODE = ("diode", {"max_a": RATED_A})


def half_wave(ohms: float):
    return draw(
        {"G1": STIFF_AC, "V1": DIODE, "R1": ("resistor", {"resistance": ohms, "rated_power": 500.0})},
        [("G1:~1", "V1:A"), ("V1:K", "R1:1"), ("R1:2", "G1:~2")],
    )


def full_wave(ohms: float, kind: str = "rectifier"):
    return draw(
        {
            "G1": STIFF_AC,
            "V1": (kind, {"max_a": RATED_A}),
            "R1": ("resistor", {"resistance": ohms, "rated_power": 500.0}),
        },
        [("G1:~1", "V1:~1"), ("G1:~2", "V1:~2"), ("V1:+", "R1:1"), ("R1:2", "V1:-")],
    )


def mean_share(peak_v: float, lost_v: float) -> float:
    """Half waves less a constant drop, on average: (V cos a - Vd (pi/2 - a)) / pi with a = asin(Vd / V)."""
    begins = math.asin(lost_v / peak_v)
    return (peak_v * math.cos(begins) - lost_v * (math.pi / 2.0 - begins)) / math.pi


def given(plan, terminal: str) -> float:
    return mean_out_a(situation(plan).figures, "V1", terminal)


@pytest.mark.parametrize(("ohms", "too_much"), [(6.0, True), (7.4, False), (10.0, False)])
def test_a_lone_diode_is_held_to_the_average_of_its_half_waves(ohms, too_much):
    plan = half_wave(ohms)
    figure = situation(plan).figures.parts["V1"]
    assert given(plan, "K") == pytest.approx(mean_share(16.0 * math.sqrt(2.0), 0.93) / ohms, rel=0.01)
    assert figure.current_a == pytest.approx((16.0 * math.sqrt(2.0) - 0.93) / ohms / 2.0, rel=0.03)
    assert figure.current_a > RATED_A  # by its RMS each of them would be too much
    assert ("diode-current" in rules(plan)) == too_much == (given(plan, "K") > RATED_A)


@pytest.mark.parametrize(("ohms", "too_much"), [(10.8, True), (15.0, False)])
def test_a_bridge_is_held_to_the_average_it_gives_not_to_what_one_diode_carries(ohms, too_much):
    plan = full_wave(ohms)
    one_diode_a = situation(plan).figures.parts["V1"].current_a
    assert given(plan, "+") == pytest.approx(2.0 * mean_share(16.0 * math.sqrt(2.0), 1.86) / ohms, rel=0.01)
    assert one_diode_a == pytest.approx((16.0 * math.sqrt(2.0) - 1.86) / ohms / 2.0, rel=0.05)
    assert one_diode_a < RATED_A  # by the RMS of one diode neither would be too much
    assert ("diode-current" in rules(plan)) == too_much == (given(plan, "+") > RATED_A)


def test_a_bridge_with_a_capacitor_bears_a_fifth_less():
    for ohms in (16.0, 21.0, 30.0):
        plan = full_wave(ohms, "smoothed-rectifier")
        assert ("diode-current" in rules(plan)) == (given(plan, "+") > 0.8 * RATED_A)
    between = full_wave(21.0, "smoothed-rectifier")
    assert 0.8 * RATED_A < given(between, "+") < RATED_A
    assert "made for 800 mA with its capacitor" in found(between, "diode-current").what


def test_on_dc_the_average_is_the_current():
    feed = ("supply-regulated", {"volts": 12.0, "limit_a": 5.0})
    for ohms, too_much in ((10.0, True), (12.5, False)):
        load = {"R1": ("resistor", {"resistance": ohms, "rated_power": 500.0})}
        plan = draw({"G1": feed, "V1": DIODE, **load}, [("G1:+", "V1:A"), ("V1:K", "R1:1"), ("R1:2", "G1:-")])
        assert given(plan, "K") == pytest.approx(situation(plan).figures.parts["V1"].current_a)
        assert ("diode-current" in rules(plan)) == too_much
        bridge = draw(
            {"G1": feed, "V1": ("rectifier", {"max_a": RATED_A}), "R1": resistor(ohms)},
            [("G1:+", "V1:~1"), ("G1:-", "V1:~2"), ("V1:+", "R1:1"), ("R1:2", "V1:-")],
        )
        assert given(bridge, "+") == pytest.approx(situation(bridge).figures.parts["R1"].current_a, rel=1e-6)
