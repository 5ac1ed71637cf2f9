"""Pulses, rests and rushes of whole plans against Ohm's law, closed forms and published gates of fuses."""

import math

import pytest
from support.networks import draw, kinds, stiff
from support.solved import solved

from wiring.standards.conductors import ohm_per_m
from wiring.studies.throws.coil import Coil, Store
from wiring.studies.throws.discharge import discharge
from wiring.studies.throws.inrush import BLOWS, HOLDS, MAY_BLOW, inrush, verdict
from wiring.studies.throws.pulse_for import pulse_for

CONTACT_OHM = 0.02
WIRE_OHM = ohm_per_m("20 AWG")
COIL = {"coil_ohm": 6.0, "rise": 5e-3 / 6.0, "pulse": 0.06}
FEED = [("G1:+", "C1:+"), ("G1:-", "C1:-")]


def on_unit(wires, coil=COIL, more=None, **unit):
    parts = {"G1": stiff(20.0), "C1": ("discharge-unit", {"charge_ohm": 100.0, **unit}), "S1": "push-to-make"}
    return draw({**parts, "M1": ("twin-coil", coil), **(more or {})}, [*FEED, *wires])


RUN = {"length_m": 3.0, "size": "20 AWG"}
WIRED = [("C1:O", "S1:13", RUN), ("S1:14", "M1:N", RUN), ("M1:C", "C1:-", RUN)]


def test_a_full_unit_rests_at_the_volts_of_its_feed_and_takes_next_to_nothing():
    figure = solved(on_unit(WIRED)).parts["C1"]
    assert figure.volts_v == pytest.approx(20.0, rel=1e-3)
    assert figure.current_a < 2e-4
    assert figure.state == "full"


def test_a_held_button_feeds_the_coil_through_the_charging_resistor_only():
    figures = solved(on_unit(WIRED), {"S1": "pressed"})
    loop_ohm = 100.0 + 6.0 + 9 * WIRE_OHM + CONTACT_OHM
    assert figures.parts["M1"].current_a == pytest.approx(20.0 / loop_ohm, rel=1e-4)
    assert figures.parts["C1"].current_a == pytest.approx(20.0 / loop_ohm, rel=1e-4)
    assert figures.parts["C1"].state == "empty, its output draws"


# Half of C V², to three digits; the unit's own leak keeps it a little below the volts of its feed.
@pytest.mark.parametrize(
    ("farads", "volts", "joules"),
    [(2200e-6, 16, 0.282), (4700e-6, 12, 0.338), (4700e-6, 24, 1.354), (10_000e-6, 24, 2.88)],
)
def test_a_unit_stores_what_the_formula_says_and_the_coil_gets_its_share_by_ohms(farads, volts, joules):
    """Held for a second it also gets what the charging resistor lets by: i = It + (I0 - It) exp(-t/RC)."""
    parts = {"G1": stiff(volts), "C1": ("discharge-unit", {"charge_ohm": 100.0, "capacitance": farads}),
             "S1": "push-to-make", "M1": ("twin-coil", {**COIL, "rise": 0.0, "pulse": 1.0})}  # fmt: skip
    pulse = pulse_for(draw(parts, [*FEED, *WIRED]), kinds(), "M1", "N").pulse
    assert pulse.stored_j == pytest.approx(joules, rel=5e-3)
    loop_ohm = 6.0 + 9 * WIRE_OHM + CONTACT_OHM
    first_a, held_a, tau_s = volts / loop_ohm, volts / (loop_ohm + 100.0), farads / (1 / loop_ohm + 1 / 100.0)
    fading_a2s = (first_a - held_a) ** 2 * tau_s / 2 + 2 * (first_a - held_a) * held_a * tau_s
    assert pulse.energy_coil_j == pytest.approx(6.0 * (fading_a2s + held_a**2 * 1.0), rel=5e-3)


def test_the_loop_is_the_wires_there_and_back_and_the_contact():
    answer = pulse_for(on_unit(WIRED), kinds(), "M1", "N")
    assert answer.why == ""
    assert (answer.source, dict(answer.presses), answer.wires) == (
        "C1",
        {"S1": "pressed"},
        ("w3", "w4", "w5"),
    )
    assert answer.coils[0].loop_ohms == pytest.approx(9 * WIRE_OHM + CONTACT_OHM, rel=1e-5)
    assert answer.coils[0].offset_v == pytest.approx(0.0, abs=1e-6)
    by_hand = discharge(
        Store(4700e-6, 20.0, 100.0), [Coil(6.0, 5e-3 / 6.0, 9 * WIRE_OHM + CONTACT_OHM)], 0.06
    )
    assert answer.pulse.peak_a == pytest.approx(by_hand.peak_a, rel=1e-3)
    assert answer.pulse.energy_coil_j == pytest.approx(by_hand.energy_coil_j, rel=2e-3)


def test_a_ring_of_wire_counts_as_both_its_ways():
    ring = [*WIRED, ("C1:O", "S1:13", RUN)]
    assert pulse_for(on_unit(ring), kinds(), "M1", "N").coils[0].loop_ohms == pytest.approx(
        7.5 * WIRE_OHM + CONTACT_OHM, rel=1e-5
    )


def test_the_common_may_be_on_the_unit_and_the_button_in_the_return():
    turned = [("C1:O", "M1:C", RUN), ("M1:R", "S1:13", RUN), ("S1:14", "C1:-", RUN)]
    answer = pulse_for(on_unit(turned), kinds(), "M1", "R")
    assert answer.coils[0].loop_ohms == pytest.approx(9 * WIRE_OHM + CONTACT_OHM, rel=1e-5)
    assert pulse_for(on_unit(turned), kinds(), "M1", "N").pulse is None


def test_two_turnouts_on_one_button_share_the_pulse():
    more = {"M2": ("twin-coil", COIL)}
    two = [*WIRED, ("S1:14", "M2:R", RUN), ("M2:C", "C1:-", RUN)]
    answer = pulse_for(on_unit(two, more=more), kinds(), "M1", "N")
    assert answer.together == (("M2", "R"),)
    alone = pulse_for(on_unit(WIRED), kinds(), "M1", "N")
    assert len(answer.pulse.coils) == 2
    assert 0.4 < answer.pulse.energy_coil_j / alone.pulse.energy_coil_j < 0.52


def test_a_diode_in_the_way_takes_its_volts_and_one_turned_round_takes_all():
    for anode, cathode, passes in (("A", "K", True), ("K", "A", False)):
        wires = [("C1:O", "S1:13"), ("S1:14", f"R9:{anode}"), (f"R9:{cathode}", "M1:N"), ("M1:C", "C1:-")]
        answer = pulse_for(on_unit(wires, more={"R9": "diode"}), kinds(), "M1", "N")
        assert (answer.pulse is not None) == passes
        if passes:
            assert 0.5 < answer.coils[0].offset_v < 1.2
            assert answer.coils[0].one_way
        else:
            assert "diode" in answer.why and answer.why.endswith(".")


def test_a_diode_across_the_coil_keeps_its_current_going():
    across = [*WIRED, ("R9:K", "M1:N"), ("R9:A", "M1:C")]
    assert pulse_for(on_unit(across, more={"R9": "diode"}), kinds(), "M1", "N").coils[0].freewheel_v == 0.8
    assert pulse_for(on_unit(WIRED), kinds(), "M1", "N").coils[0].freewheel_v is None


def test_a_unit_may_charge_to_volts_of_its_own():
    assert pulse_for(on_unit(WIRED, open_v=24.0), kinds(), "M1", "N").store.volts_v == 24.0


def test_a_coil_straight_on_a_supply_gets_what_ohms_law_says():
    """Unregulated: 16 V at 1 A, 20 V open, so 4 ohm of its own."""
    supply = "supply-unregulated", {"rated_v": 16.0, "rated_a": 1.0, "open_v": 20.0}
    plan = draw(
        {"G1": supply, "S1": "push-to-make", "M1": ("twin-coil", COIL)},
        [("G1:+", "S1:13", RUN), ("S1:14", "M1:N", RUN), ("M1:C", "G1:-", RUN)],
    )
    answer = pulse_for(plan, kinds(), "M1", "N")
    assert answer.pulse.peak_a == pytest.approx(20.0 / (10.0 + 9 * WIRE_OHM + CONTACT_OHM), rel=1e-4)
    assert not answer.is_unit and answer.pulse.recharge_s == 0.0


def test_a_coil_no_button_reaches_and_a_unit_nothing_feeds_say_so():
    assert "-M1:R" in pulse_for(on_unit(WIRED), kinds(), "M1", "R").why
    plan = draw({"C1": "discharge-unit", "S1": "push-to-make", "M1": "twin-coil"}, WIRED)
    assert "gives no volts" in pulse_for(plan, kinds(), "M1", "N").why
    with pytest.raises(KeyError):
        pulse_for(on_unit(WIRED), kinds(), "S1", "N")


@pytest.mark.parametrize("supply", ["dc", "ac"])
def test_cold_lamps_draw_ten_times_what_they_draw_lit(supply):
    """Ten times: common practice; five 12 V 50 mA lamps on 12 V, wires next to nothing."""
    source = (
        stiff(12.0) if supply == "dc" else ("supply-ac", {"rated_v": 12.0, "rated_a": 100.0, "open_v": 12.0})
    )
    plus, minus = ("+", "-") if supply == "dc" else ("~1", "~2")
    lamps = {f"E{n}": ("lamp-12v", {"rated_v": 12.0, "rated_a": 0.05}) for n in range(5)}
    wires = [w for lamp in lamps for w in ((f"G1:{plus}", f"{lamp}:1"), (f"G1:{minus}", f"{lamp}:2"))]
    found = inrush(draw({"G1": source, **lamps}, wires), kinds(), {}, "G1")
    assert found.hot_a == pytest.approx(0.25, rel=1e-3)
    assert found.cold_a == pytest.approx(2.5, rel=0.01)
    assert found.settles_s is not None


def test_leds_have_no_rush():
    plan = draw({"G1": stiff(12.0), "E1": "led-red"}, [("G1:+", "E1:A"), ("G1:-", "E1:K")])
    found = inrush(plan, kinds(), {}, "G1")
    assert found.cold_a == found.hot_a and found.settles_s is None


# IEC 60127-2 as makers print it: a quick 1 A fuse must hold 2.75 A for 50 ms and 4 A for 10 ms, and must
# open within 20 ms at 10 A; a time-lag one holds 4 A for 150 ms and 10 A for 20 ms.
@pytest.mark.parametrize(
    ("rating", "speed", "cold", "hot", "expected"),
    [
        (1.0, "fast", 2.0, 0.2, HOLDS), (1.0, "fast", 6.0, 0.6, MAY_BLOW), (1.0, "slow", 6.0, 0.6, HOLDS),
        (1.0, "slow", 9.0, 0.9, MAY_BLOW), (0.1, "fast", 40.0, 0.09, BLOWS), (1.0, "fast", 0.5, 0.5, HOLDS),
    ],
)  # fmt: skip
def test_fuses_stand_a_rush_as_their_gates_say(rating, speed, cold, hot, expected):
    assert verdict(rating, speed, cold, hot) == expected
    assert math.isfinite(cold)
