"""Lead-acid and NiMH discharges against makers' data sheets.

Lead-acid: sheets of a 12 V 7 Ah sealed battery and its sister sizes, constant current in amperes at 20 °C
to an end voltage per cell. NiMH: sheet of a 450 mAh battery that refers to IEC 61951-2.
"""

import math

import pytest
from support.cell_runs import current, life
from support.published import LEAD_ACID, LEAD_HOURS, LITHIUM_ION, NIMH_RATES

from wiring.standards.cells import CELLS
from wiring.studies.cells.pack import packed


def _errors(end_v):
    return [
        life("lead-acid 12 V", current(amps), 6 * end_v).lit_h / hours - 1
        for hours, amps in zip(LEAD_HOURS, LEAD_ACID[end_v], strict=True)
    ]


@pytest.mark.parametrize("end_v", LEAD_ACID)
def test_lead_acid_hours(end_v):
    assert max(abs(error) for error in _errors(end_v)) < 0.06


def test_mean_error_of_lead_acid_is_small():
    errors = [abs(error) for end_v in LEAD_ACID for error in _errors(end_v)]
    assert sum(errors) / len(errors) < 0.025


SISTERS = {  # A at 1.75 V per cell after 1, 2, 3, 5, 10, 20 h
    "1.2 Ah": (0.672, 0.388, 0.294, 0.196, 0.111, 0.059),
    "2.3 Ah": (1.29, 0.743, 0.563, 0.375, 0.213, 0.113),
    "12 Ah": (6.72, 3.88, 2.94, 1.96, 1.11, 0.588),
}


@pytest.mark.parametrize("size", SISTERS)
def test_other_sizes_scale_with_their_20_h_capacity(size):
    rated_ah = 20 * SISTERS[size][-1]
    pack = packed(CELLS["lead-acid 12 V"], capacity_ah=rated_ah)
    for hours, amps in zip((1, 2, 3, 5, 10, 20), SISTERS[size], strict=True):
        run = life("lead-acid 12 V", current(amps), 6 * 1.75, pack=pack)
        assert run.lit_h == pytest.approx(hours, rel=0.06)


@pytest.mark.parametrize(("rate", "end_v", "share"), NIMH_RATES)
def test_nimh_capacity_at_three_rates(rate, end_v, share):
    pack = packed(CELLS["nimh AA"], capacity_ah=0.45)
    run = life("nimh AA", current(rate * 0.45), end_v, pack=pack)
    assert run.delivered_ah / 0.45 == pytest.approx(share, abs=0.03)


def test_lithium_ion_hardly_minds_the_rate_as_a_physics_model_finds():
    """PyBaMM 26.10, SPMe with its Chen2020 set of a 5 Ah cell, run once: Ah at 0.05, 0.2, 0.5 and 1 C."""
    simulated = (5.090, 5.063, 5.015, 4.939)
    pack = packed(CELLS["li-ion 18650"])
    given = [
        life("", current(rate * 2.5), 2.75, pack=pack).delivered_ah / 2.5 for rate in (0.05, 0.2, 0.5, 1.0)
    ]
    for found, expected in zip(given, simulated, strict=True):
        assert found / given[0] == pytest.approx(expected / simulated[0], abs=0.03)


@pytest.mark.parametrize("key", LITHIUM_ION)
def test_lithium_ion_gives_what_is_printed_as_iec_61960_rates_it(key):
    """0.2 It to the maker's end voltage, 2.75 V a cell in several sheets (IEC 61960 from memory)."""
    cell = CELLS[key]
    run = life("", current(0.2 * cell.rated_ah), 2.75 * cell.cells_in_series, pack=packed(cell))
    assert run.delivered_ah == pytest.approx(cell.rated_ah, rel=0.02)


@pytest.mark.parametrize(("hours", "exponent"), [(1.0, 1.23), (5.0, 1.15)])
def test_peukerts_exponent_comes_out_of_the_two_wells(hours, exponent):
    """Peukert: t = H (C / (I H))^n. From the table above, 20 h and `hours`, at 1.75 V a cell."""
    row = dict(zip(LEAD_HOURS, LEAD_ACID[1.75], strict=True))
    published = math.log(20 / hours) / math.log(row[hours] / row[20])
    assert published == pytest.approx(exponent, abs=0.01)
    lives = [life("lead-acid 12 V", current(row[h]), 6 * 1.75).lit_h for h in (20, hours)]
    found = math.log(lives[0] / lives[1]) / math.log(row[hours] / row[20])
    assert found == pytest.approx(exponent, abs=0.03)


@pytest.mark.parametrize(("celsius", "share"), [(40, 1.03), (25, 1.00), (0, 0.86), (-15, 0.65)])
def test_lead_acid_in_cold_and_warmth(celsius, share):
    """A maker's sheet, capacity at the 10 h rate against that at 25 °C."""
    warm, there = (
        life("", current(0.648), 10.5, pack=packed(CELLS["lead-acid 12 V"], celsius=c)).delivered_ah
        for c in (25, celsius)
    )
    assert there / warm == pytest.approx(share, abs=0.05)
