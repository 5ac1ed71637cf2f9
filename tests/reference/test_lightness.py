"""CIE 1976 lightness against its printed table."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wiring.standards.lightness import lightness, relative_light

# CIE e-ILV 17-23-076 formula; values as colour science texts tabulate them.
TABLE = [
    (0, 0), (0.001, 0.903), (0.008856, 8.000), (0.01, 8.991), (0.05, 26.73), (0.10, 37.84), (0.18, 49.50),
    (0.25, 57.08), (0.50, 76.07), (0.75, 89.39), (1.0, 100.0),
]  # fmt: skip


@pytest.mark.parametrize(("relative", "printed"), TABLE)
def test_lightness_of_the_table(relative, printed):
    assert lightness(relative) == pytest.approx(printed, abs=0.006)


@settings(deadline=None)
@given(st.floats(0.0, 3.0))
def test_inverse_leads_back(relative):
    assert relative_light(lightness(relative)) == pytest.approx(relative, abs=1e-12, rel=1e-9)


@settings(deadline=None)
@given(st.floats(-1e3, 1e3), st.floats(0.0, 10.0))
def test_more_light_is_never_darker(relative, more):
    assert lightness(relative) <= lightness(relative + more)
