"""The battery table against makers' sheets."""

import itertools

import pytest

from wiring.standards.cells import CELLS


@pytest.mark.parametrize("cell", CELLS.values(), ids=lambda c: c.key)
def test_every_type_is_whole(cell):
    depths, volts = zip(*cell.emf_table, strict=True)
    assert depths[0] == 0.0 and depths[-1] > 1.0 and volts[-1] == 0.0
    assert all(a < b for a, b in itertools.pairwise(depths))
    assert all(a >= b for a, b in itertools.pairwise(volts))
    assert 0 < cell.floor_v < volts[0]
    assert cell.capacity_ah > 0 and 0 < cell.c < 1 and cell.k_per_h > 0 and cell.r0_ohm > 0 and cell.r1 >= 0
    assert cell.grades.low < cell.grades.typical <= cell.grades.high
    assert cell.source


# Open-circuit volts when new: alkaline 9 V block 9.55 V at least (maker's data sheet with storage table), C
# cell 1.60 V (maker's specification); sealed lead-acid 12.8 V (published preset), NiMH 1.42 V (published
# curve); LiPo is charged to 4.20 V a cell (makers' sheets).
@pytest.mark.parametrize(
    ("key", "low_v", "high_v"),
    [("alkaline 9 V", 9.55, 9.8), ("alkaline C", 1.57, 1.65), ("lead-acid 12 V", 12.6, 12.9),
     ("nimh AA", 1.40, 1.45), ("lithium 9 V", 9.0, 9.6), ("li-ion 18650", 4.0, 4.2),
     ("lipo 1 cell", 4.15, 4.2), ("lipo 2 cells", 8.3, 8.4), ("lipo 3 cells", 12.45, 12.6)],
)  # fmt: skip
def test_fresh_volts_agree_with_makers(key, low_v, high_v):
    assert low_v <= CELLS[key].fresh_v <= high_v


# Ω when new: MN1604 1.7 at 1 kHz and "9 V behind 3 Ω" for direct current; MN1400 0.15; 12 V 7 Ah lead-acid
# 0.023 at 1 kHz; lithium 9 V: 3 A into a short circuit, 3 to 4 Ω. Makers' sheets and a textbook.
@pytest.mark.parametrize(
    ("key", "low_ohm", "high_ohm"),
    [("alkaline 9 V", 1.7, 3.0), ("alkaline C", 0.12, 0.23), ("lead-acid 12 V", 0.023, 0.05),
     ("lithium 9 V", 3.0, 4.0)],
)  # fmt: skip
def test_inner_resistance_agrees_with_makers(key, low_ohm, high_ohm):
    assert low_ohm <= CELLS[key].r0_ohm <= high_ohm


def test_capacities_lie_in_published_ranges():
    # Several published tables, alkaline at light loads, in Ah, the upper ends as premium cells measure.
    ranges = {"AAA": (0.8, 1.5), "AA": (2.0, 3.3), "C": (4.0, 8.2), "D": (8.0, 18.0), "9 V": (0.4, 0.75)}
    for size, (low, high) in ranges.items():
        assert low <= CELLS[f"alkaline {size}"].capacity_ah <= high
    # Encyclopaedia table: zinc-carbon 9 V block 0.19–0.33 Ah.
    assert 0.19 <= CELLS["zinc-carbon 9 V"].capacity_ah <= 0.33


def test_exchange_between_the_wells_follows_the_diffusion_law():
    # k falls with the square of the diameter, d in mm from IEC 60086-2: LR6 14.5, LR14 26.2, LR20 34.2.
    k_aa = CELLS["alkaline AA"].k_per_h
    for size, d_mm in (("C", 26.2), ("D", 34.2)):
        assert CELLS[f"alkaline {size}"].k_per_h == pytest.approx(k_aa * (14.5 / d_mm) ** 2, rel=0.01)
