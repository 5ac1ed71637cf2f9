"""Pulses against a transient run of ngspice on the same circuit: peak, when, heat, volts left and refill."""

import math

import pytest
from support.ngspice import needs_ngspice, run
from support.pulse_cases import CASES, STRAIGHT, press_netlist, refill_netlist, straight_netlist

from wiring.studies.throws.discharge import discharge
from wiring.studies.throws.from_supply import from_supply

pytestmark = [pytest.mark.ngspice, needs_ngspice]


@pytest.mark.parametrize("name", CASES)
def test_peak_time_heat_and_refill_agree_within_one_per_cent(name, tmp_path):
    case = CASES[name]
    ours = discharge(*case)
    theirs = run(press_netlist(case), tmp_path)
    for k, (coil, pulse) in enumerate(zip(case.coils, ours.coils, strict=True)):
        assert pulse.peak_a == pytest.approx(theirs[f"peak{k}"] / coil.ohms, rel=0.01)
        assert pulse.peak_at_s == pytest.approx(theirs[f"at{k}"], rel=0.01, abs=1e-5)
        assert pulse.energy_j == pytest.approx(theirs[f"heat{k}"], rel=0.01)
    assert ours.left_v == pytest.approx(theirs["left"], rel=0.01, abs=0.02)
    refill = run(refill_netlist(case.store, theirs["left"]), tmp_path)
    assert ours.recharge_s == pytest.approx(refill["full"], rel=0.01)


@pytest.mark.parametrize("name", STRAIGHT)
def test_straight_on_a_supply_peak_and_heat_agree(name, tmp_path):
    volts_v, coil, on_s = STRAIGHT[name]
    ours = from_supply(volts_v, math.inf, [coil], on_s)
    theirs = run(straight_netlist(volts_v, coil, on_s), tmp_path)
    assert ours.peak_a == pytest.approx(theirs["peak"] / coil.ohms, rel=1e-3)
    assert ours.energy_coil_j == pytest.approx(theirs["heat"], rel=1e-3)
