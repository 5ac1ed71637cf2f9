"""Pulses against a transient run of ngspice on the same circuit: peak, when, heat, volts left and refill."""

import pytest

from tests.support.ngspice import needs_ngspice, run
from tests.support.pulse_cases import CASES, press_netlist, refill_netlist
from wiring.studies.throws.discharge import discharge

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
