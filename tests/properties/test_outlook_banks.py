"""Batteries whose cells differ: a weak cell in a string, unequal strings side by side."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.cell_runs import FOREVER_H, current, life, resistor

from wiring.standards.cells import CELLS
from wiring.studies.cells.bank import Bank, part_of, with_weak_cell
from wiring.studies.cells.discharge import Demand, run_patterns
from wiring.studies.cells.pack import packed
from wiring.studies.cells.timeline import Pattern

ALWAYS = [Pattern(1e6, 1e6)]


def lossless(key, **more):
    return packed(CELLS[key], **more)._replace(shelf_per_h=0.0, ageing_per_h=0.0)


def run(store, load, end_v, patterns=ALWAYS):
    return run_patterns(store, {1: Demand(load, end_v)}, patterns, FOREVER_H)


@pytest.mark.parametrize("key", ["alkaline AA", "nimh AA"])
def test_equal_cells_in_a_bank_are_one_pack(key):
    pack = lossless(key, in_series=4)
    load = resistor(40.0)
    alone = run(pack, load, pack.floor_v, [Pattern(3, 24)])
    string = run(Bank((tuple(part_of(pack, 1, 4) for _ in range(4)),)), load, pack.floor_v, [Pattern(3, 24)])
    assert string.lit_h == pytest.approx(alone.lit_h, rel=1e-3)
    half = pack._replace(capacity_ah=pack.capacity_ah / 2, ohms_full=pack.ohms_full * 2)
    side = run(Bank(((half,), (half,))), load, pack.floor_v, [Pattern(3, 24)])
    assert side.lit_h == pytest.approx(alone.lit_h, rel=2e-3)


@pytest.mark.parametrize("weakest", [0.9, 0.7, 0.4])
def test_a_string_lasts_about_as_long_as_its_weakest_cell(weakest):
    pack = lossless("alkaline AA", in_series=4)
    load, end_v = current(0.1), 4 * 1.1
    good = run(pack, load, end_v).lit_h
    weak = run(with_weak_cell(pack, 4, 1, weakest, False), load, end_v)
    assert weakest * 0.9 * good < weak.lit_h < good
    spared = run(with_weak_cell(lossless("nimh AA", in_series=4), 4, 1, weakest, True), load, 4.0)
    whole = run(lossless("nimh AA", in_series=4), load, 4.0).lit_h
    assert spared.lit_h == pytest.approx(weakest * whole, rel=0.06)


def test_a_weaker_cell_never_lasts_longer():
    pack = lossless("alkaline AA", in_series=8)
    lives = [
        run(with_weak_cell(pack, 8, 1, share, False), resistor(100.0), 8.0).lit_h
        for share in (0.3, 0.5, 0.7, 0.9, 1.0)
    ]
    assert lives == sorted(lives)


def test_an_empty_cell_of_a_dry_battery_is_reversed_and_the_others_carry_on():
    pack = lossless("alkaline AA", in_series=8)
    bank = with_weak_cell(pack, 8, 1, 0.5, False)
    seen = run(bank, current(0.1), 8 * 0.95)
    assert max(bank.depths(seen.wells)) > 1.0
    assert seen.reached_end


def test_unequal_strings_share_the_load_by_their_charge():
    small = lossless("alkaline AAA", in_series=4)
    large = lossless("alkaline AA", in_series=4)
    bank = Bank(((small,), (large,)))
    seen = run(bank, current(0.1), 4 * 0.9)
    alone = run(large, current(0.1), 4 * 0.9).lit_h + run(small, current(0.1), 4 * 0.9).lit_h
    assert seen.lit_h > 0.95 * alone
    assert abs(bank.depths(seen.wells)[0] - bank.depths(seen.wells)[1]) < 0.15


def test_a_fresh_string_beside_a_used_one_levels_out_at_rest():
    pack = lossless("alkaline AA")
    bank = Bank(((pack,), (pack,)))
    state = ((pack.level(1.0),), (pack.level(0.5),))
    rested = state
    for _ in range(20):
        rested = bank.rested(rested, 24.0)
    assert bank.total_ah(rested) == pytest.approx(bank.total_ah(state), rel=1e-9)
    ends = [pack.emf_v(pack.depth(row[0])) for row in rested]
    assert ends[0] == pytest.approx(ends[1], abs=0.01)


@settings(max_examples=20, deadline=None)
@given(st.floats(0.3, 1.0), st.floats(0.02, 0.4), st.integers(2, 4))
def test_charge_of_a_bank_is_counted(weakest, amps, count):
    bank = with_weak_cell(lossless("nimh AA", in_series=count), count, 2, weakest, True)
    before = bank.level(1.0)
    seen = run(bank, current(amps), count * 1.0, [Pattern(2, 24)])
    per_string = [sum(w.total_ah for w in row) / len(row) for row in before]
    assert seen.reached_end
    assert bank.total_ah(seen.wells) < bank.total_ah(before)
    assert seen.delivered_ah <= sum(per_string) * 1.001


def test_a_single_cell_bank_gives_what_a_cell_gives():
    pack = lossless("alkaline AA")
    seen = run(Bank(((pack,),)), resistor(10.0), 0.9)
    assert seen.lit_h == pytest.approx(life("", resistor(10.0), 0.9, pack=pack).lit_h, rel=1e-9)
    assert seen.delivered_ah == pytest.approx(
        pack.capacity_ah
        - pack.level(1.0).total_ah
        + (pack.capacity_ah - Bank(((pack,),)).total_ah(seen.wells)),
        rel=1e-9,
    )
