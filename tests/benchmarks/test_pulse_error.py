"""The pulse benchmark holds pulses to an integration of their own, and would notice a wrong one."""

import pulse_error
import pytest
from support.pulse_cases import CASES


def test_pulses_lie_within_one_per_cent_of_an_integration(monkeypatch):
    monkeypatch.setattr(pulse_error.shutil, "which", lambda _name: None)
    assert max(error for _, error in pulse_error.errors(CASES["underdamped with diode"])) < 0.01


def test_a_capacitor_of_another_size_shows(monkeypatch):
    case = CASES["typical coil"]
    wrong = pulse_error.discharge(case.store._replace(farads=1.1 * case.store.farads), *case[1:])
    monkeypatch.setattr(pulse_error.shutil, "which", lambda _name: None)
    monkeypatch.setattr(pulse_error, "discharge", lambda *_case: wrong)
    assert max(error for _, error in pulse_error.errors(case)) == pytest.approx(0.1, abs=0.05)
