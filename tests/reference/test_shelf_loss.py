"""What batteries lose unused, against makers' sheets; shares of the charge kept.

Alkaline: a maker's 9 V sheet, 81 to 90 % after five years, 97 to 99 % after one; a maker's chart as quoted,
85 % after seven years at 20 °C and 95 % after nine at 0 °C. Lead-acid: plot of a maker's sheet, read at four
temperatures. NiMH of low self-discharge: 70 % after five years, a maker's claim, second-hand.
"""

import math

import pytest
from support.cell_runs import current, life

from wiring.standards.cells import CELLS
from wiring.studies.cells.pack import HOURS_PER_YEAR, packed


def kept(key, years, celsius=20.0):
    pack = packed(CELLS[key], celsius=celsius)
    return pack.total_ah(pack.rested(pack.level(1.0), years * HOURS_PER_YEAR)) / pack.capacity_ah


@pytest.mark.parametrize(
    ("key", "years", "celsius", "low", "high"),
    [
        ("alkaline 9 V", 1, 20, 0.97, 0.99),
        ("alkaline 9 V", 5, 20, 0.81, 0.90),
        ("alkaline AA", 7, 20, 0.82, 0.88),
        ("alkaline AA", 9, 0, 0.92, 0.97),
        ("lead-acid 12 V", 11.6 / 12, 10, 0.77, 0.83),
        ("lead-acid 12 V", 1, 25, 0.60, 0.66),
        ("lead-acid 12 V", 10 / 12, 30, 0.45, 0.60),
        ("lead-acid 12 V", 5.3 / 12, 40, 0.45, 0.60),
        ("nimh AA", 1, 20, 0.80, 0.90),
    ],
)
def test_share_of_the_charge_kept(key, years, celsius, low, high):
    assert low <= kept(key, years, celsius) <= high


def test_five_years_of_nimh_are_on_the_safe_side():
    assert 0.40 < kept("nimh AA", 5) < 0.70


def test_loss_is_a_share_of_what_is_there():
    assert kept("alkaline AA", 2) == pytest.approx(kept("alkaline AA", 1) ** 2, rel=1e-9)
    assert kept("lithium AA", 10) == pytest.approx(math.exp(-0.06), rel=1e-6)


@pytest.mark.parametrize(("celsius", "share"), [(-10, 0.70), (0, 0.82), (10, 0.91), (20, 0.97), (30, 1.01)])
def test_lead_acid_in_the_cold_at_a_light_load(celsius, share):
    """A plot of the maker's sheet at 0.05 CA, kept apart: the factors are those of the 10 h rate."""
    pack = packed(CELLS["lead-acid 12 V"], celsius=celsius)
    rated = CELLS["lead-acid 12 V"].rated_ah
    given = life("", current(0.05 * rated), 10.5, pack=pack).delivered_ah
    warm = life("", current(0.05 * rated), 10.5, pack=packed(CELLS["lead-acid 12 V"], celsius=25))
    assert given / warm.delivered_ah == pytest.approx(share, abs=0.06)
