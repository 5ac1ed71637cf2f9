"""Lithium batteries against published discharges that were used nowhere in fitting.

No number of a battery type may be set by looking at this file.

Sources, all read as text. Q1: measured discharges of a 2.28 Ah lithium-ion polymer pouch cell at four rates
to 3.0 V, published with the physics library PyBaMM (its data of Ai and others, 2020; seconds and volts as
logged). Q2: discharge of a 7.5 Ah pouch cell at 1 It, Ecker and others, J. Electrochem. Soc. 162 (2015)
A1849, as digitised and published with the same library. Q3: a public digitisation of the plots of a maker's
sheet of a 5 Ah lithium-ion cell (21700), 23 °C and others, to 2.5 V. Q4: a maker's sheet of a lithium AA as
quoted by a third party and a handbook's comparison at 25 to 1000 mA: 3.0 Ah at any of them. Q5: a bench
test of a lithium AA at 2 A.
"""

import numpy as np
import pytest
from support.cell_runs import CONTINUOUS, current, life

from wiring.standards.cells import CELLS
from wiring.studies.cells.pack import packed

POUCH_AH, POUCH_END_V = 2.28, 3.0
# rate (It), seconds to the end, and (seconds, volts) on the way
POUCH = (
    (0.1, 36876, ()),
    (0.5, 7305, ((731, 4.008),)),
    (1.0, 3611, ((361, 3.944), (903, 3.806))),
    (2.0, 1768, ((177, 3.828), (443, 3.688), (884, 3.528))),
)
LARGE_POUCH_AH = 7.5
LARGE_POUCH = ((0.82, 3.981), (2.00, 3.846), (3.77, 3.706), (5.85, 3.554))  # Ah given, volts
LARGE_POUCH_END = (7.74, 2.8)
STEEL_CELL = ((0.2, 4.932), (0.5, 4.835), (1.0, 4.798), (2.0, 4.816))  # rate, Ah to 2.5 V at 23 °C
STEEL_CELL_AH = 5.0
LITHIUM_AA = ((0.025, 3.0), (0.25, 3.0), (0.5, 3.0), (1.0, 3.0), (2.0, 2.8))  # A, Ah


def _pouch(rate):
    pack = packed(CELLS["lipo 1 cell"], capacity_ah=POUCH_AH)
    return life("", current(rate * POUCH_AH), POUCH_END_V, pack=pack)


def errors():
    """Return the relative errors of charge or hours, by chemistry and case."""
    pouch = {f"pouch {rate:g} It": _pouch(rate).lit_h * 3600 / seconds - 1 for rate, seconds, _ in POUCH}
    large = packed(CELLS["lipo 1 cell"], capacity_ah=LARGE_POUCH_AH)
    end_ah, end_v = LARGE_POUCH_END
    given = life("", current(LARGE_POUCH_AH), end_v, pack=large).delivered_ah
    steel = packed(CELLS["li-ion 18650"], capacity_ah=STEEL_CELL_AH)
    return {
        "li-ion": {
            **pouch,
            "large pouch 1 It": given / end_ah - 1,
            **{
                f"steel {rate:g} It": life("", current(rate * STEEL_CELL_AH), 2.5, pack=steel).delivered_ah
                / charge_ah
                - 1
                for rate, charge_ah in STEEL_CELL
            },
        },
        "lithium": {
            f"AA {amps:g} A": life("lithium AA", current(amps), 0.8, CONTINUOUS).delivered_ah / charge_ah - 1
            for amps, charge_ah in LITHIUM_AA
        },
    }


BOUNDS = {"li-ion": 0.08, "lithium": 0.08}


@pytest.mark.parametrize("chemistry", BOUNDS)
def test_charge_given(chemistry):
    found = errors()[chemistry]
    assert max(map(abs, found.values())) < BOUNDS[chemistry], found


@pytest.mark.parametrize(("rate", "seconds", "course"), POUCH)
def test_course_of_a_pouch_cell(rate, seconds, course):
    samples = _pouch(rate).samples
    hours, volts = [s.lit_h for s in samples], [s.volts_v for s in samples]
    for at_s, published in course:
        assert np.interp(at_s / 3600, hours, volts) == pytest.approx(published, abs=0.09)


def test_course_of_a_large_pouch_cell_of_another_cathode():
    pack = packed(CELLS["lipo 1 cell"], capacity_ah=LARGE_POUCH_AH)
    samples = life("", current(LARGE_POUCH_AH), 2.8, pack=pack).samples
    given, volts = [s.lit_h * LARGE_POUCH_AH for s in samples], [s.volts_v for s in samples]
    for charge_ah, published in LARGE_POUCH:
        assert np.interp(charge_ah, given, volts) == pytest.approx(published, abs=0.11)


@pytest.mark.parametrize(("celsius", "charge_ah"), [(45, 4.952), (10, 4.649), (0, 4.524)])
def test_steel_cell_in_cold_and_warmth(celsius, charge_ah):
    """Q3 at 1 It, against 4.810 Ah at 23 °C of the same plot; the type was set to another maker's plot."""
    there, usual = (
        life(
            "",
            current(STEEL_CELL_AH),
            2.5,
            pack=packed(CELLS["li-ion 18650"], capacity_ah=STEEL_CELL_AH, celsius=c),
        ).delivered_ah
        for c in (celsius, 23)
    )
    assert there / usual == pytest.approx(charge_ah / 4.810, abs=0.04)
