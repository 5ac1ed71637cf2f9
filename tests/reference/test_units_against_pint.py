"""Our few units against pint's own full registry."""

import pytest

from wiring.quantities.quantity import Quantity
from wiring.quantities.units import KEPT_IN, SPELLINGS, converted


@pytest.fixture(scope="module")
def full_registry():
    import pint

    registry = pint.UnitRegistry()
    registry.define("cmil = circular_mil")
    registry.define("kcmil = 1000 * circular_mil")
    return registry


@pytest.mark.parametrize("quantity", list(Quantity))
def test_every_unit_means_what_pint_says(quantity, full_registry):
    for unit in set(SPELLINGS[quantity].values()):
        theirs = full_registry.Quantity(7.0, unit).to(KEPT_IN[quantity]).magnitude
        assert converted(7.0, unit, quantity) == pytest.approx(theirs, rel=1e-9)
