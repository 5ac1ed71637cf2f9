"""No chemistry is further than 15 % from the makers' hours or charge its types were fitted to."""

from support.discharge_errors import BOUND, fitted_errors

from wiring.standards.cells import CELLS


def test_every_chemistry_is_within_its_sheets():
    found = fitted_errors()
    assert found.keys() == {cell.chemistry for cell in CELLS.values()}
    worst = {chemistry: max(map(abs, cases.values())) for chemistry, cases in found.items()}
    assert max(worst.values()) < BOUND, worst


def test_every_type_says_how_heavy_a_load_it_was_measured_with():
    assert all(cell.measured_to_a > 0 for cell in CELLS.values())
