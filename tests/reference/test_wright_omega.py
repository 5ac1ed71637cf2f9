"""The Wright omega function against scipy's (Lawrence, Corless and Jeffrey, ACM TOMS Algorithm 917)."""

import math

import numpy as np
from scipy.special import wrightomega

from wiring.circuit.wright_omega import wright_omega


def test_it_is_that_of_scipy() -> None:
    z = np.concatenate((np.linspace(-700, 700, 28_001), np.linspace(-6, 6, 24_001), np.logspace(3, 12, 91)))
    assert np.max(np.abs(wright_omega(z) / wrightomega(z) - 1.0)) < 1e-13


def test_known_points() -> None:
    assert wright_omega(np.array([1.0]))[0] == 1.0 or abs(wright_omega(np.array([1.0]))[0] - 1.0) < 1e-15
    assert abs(wright_omega(np.array([0.0]))[0] - 0.5671432904097838) < 1e-15  # the omega constant
    assert abs(wright_omega(np.array([1.0 + math.e]))[0] - math.e) < 1e-14
    assert 0.0 <= wright_omega(np.array([-1e6]))[0] < 1e-300
