"""Diameter of hook-up wire over its insulation."""

import pytest

from wiring.standards.conductors import insulated_diameter_mm

# From memory: makers' lists of 300 V hook-up wire with 1/64 inch of PVC.
LISTED_MM = {"22 AWG": 1.6, "24 AWG": 1.4, "20 AWG": 1.8, "18 AWG": 2.0}


@pytest.mark.parametrize(("size", "listed"), LISTED_MM.items())
def test_hook_up_wire_is_as_thick_as_listed(size, listed):
    assert insulated_diameter_mm(size) == pytest.approx(listed, abs=0.15)
