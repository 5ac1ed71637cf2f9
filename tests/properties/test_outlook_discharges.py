"""What must hold of any discharge, whatever the battery and the load."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.cell_runs import current, life, power, resistor

from wiring.standards.cells import CELLS
from wiring.standards.two_wells import full
from wiring.studies.cells.discharge import Demand, run_patterns, working_v
from wiring.studies.cells.load import meeting_v, tabled
from wiring.studies.cells.pack import Grade, packed
from wiring.studies.cells.timeline import Pattern

KEYS = ("alkaline AA", "alkaline 9 V", "zinc-carbon AA", "nimh AA", "lead-acid 12 V", "li-ion 18650")
GRID = 1.003  # lives differ by a few tenths of a per mille with the grid of steps
QUICK = settings(max_examples=25, deadline=None)


def _without_loss(key, **more):
    return packed(CELLS[key], **more)._replace(shelf_per_h=0.0, ageing_per_h=0.0)


def _usual_a(key):
    return CELLS[key].rated_ah / 20


@QUICK
@given(st.sampled_from(KEYS), st.floats(0.2, 4.0), st.floats(1.05, 2.0))
def test_more_load_never_lasts_longer(key, rate, more):
    pack = _without_loss(key)
    amps = rate * _usual_a(key)
    light = life(key, current(amps), pack.floor_v, pack=pack).lit_h
    heavy = life(key, current(amps * more), pack.floor_v, pack=pack).lit_h
    assert heavy <= light * GRID


@QUICK
@given(st.sampled_from(KEYS), st.floats(0.2, 3.0), st.floats(1.01, 1.12))
def test_a_higher_end_never_lasts_longer(key, rate, higher):
    pack = _without_loss(key)
    load = current(rate * _usual_a(key))
    assert (
        life(key, load, pack.floor_v * higher, pack=pack).lit_h
        <= GRID * life(key, load, pack.floor_v, pack=pack).lit_h
    )


@QUICK
@given(st.sampled_from(KEYS), st.floats(0.5, 3.0), st.floats(0.5, 4.0), st.floats(1.0, 40.0))
def test_more_rest_never_lasts_shorter(key, rate, session_h, rest_h):
    pack = _without_loss(key)
    load = current(rate * _usual_a(key))
    short = life(key, load, pack.floor_v, (session_h, session_h + rest_h), pack=pack).lit_h
    long = life(key, load, pack.floor_v, (session_h, session_h + 2 * rest_h), pack=pack).lit_h
    assert long * GRID >= short


@QUICK
@given(st.sampled_from(KEYS), st.floats(0.5, 3.0), st.floats(0.5, 4.0), st.floats(1.0, 200.0))
def test_rest_never_costs_more_than_the_shelf_takes(key, rate, session_h, rest_h):
    """But for one session: a battery that just falls short at the end of one is not given another rest."""
    pack = packed(CELLS[key])._replace(ageing_per_h=0.0)
    load = current(rate * _usual_a(key))
    short = life("", load, pack.floor_v, (session_h, session_h + rest_h), pack=pack)
    long = life("", load, pack.floor_v, (session_h, session_h + 2 * rest_h), pack=pack)
    kept = math.exp(-pack.shelf_per_h * max(long.elapsed_h - short.elapsed_h, 0.0))
    one_ah = rate * _usual_a(key) * session_h
    assert long.delivered_ah * GRID + one_ah >= short.delivered_ah * kept


@pytest.mark.parametrize("key", KEYS[:5])
def test_cold_never_lasts_longer(key):
    load = current(2 * _usual_a(key))
    lives = []
    for celsius in (0.0, 10.0, 20.0):
        pack = packed(CELLS[key], celsius=celsius)._replace(shelf_per_h=0.0)
        lives.append(life(key, load, pack.floor_v, pack=pack).lit_h)
    assert lives == sorted(lives)


@pytest.mark.parametrize("key", KEYS)
def test_what_is_delivered_is_what_the_wells_lose(key):
    pack = _without_loss(key)
    run = life(key, resistor(CELLS[key].nominal_v / _usual_a(key)), pack.floor_v, (3, 72), pack=pack)
    assert run.delivered_ah == pytest.approx(pack.capacity_ah - run.wells.total_ah, rel=1e-9)
    assert run.reached_end


@pytest.mark.parametrize("ohms", [20.0, 150.0, 620.0])
def test_a_table_of_a_resistor_is_the_resistor(ohms):
    pack = packed(CELLS["alkaline 9 V"])
    wells = full(pack.capacity_ah, pack.share)
    direct = pack.emf_v(0.0) * ohms / (ohms + pack.ohms(0.0))
    assert working_v(pack, resistor(ohms, 12.0), wells) == pytest.approx(direct, rel=5e-4)


@pytest.mark.parametrize("key", KEYS)
def test_half_the_step_changes_next_to_nothing(key):
    pack = packed(CELLS[key])
    load = resistor(CELLS[key].nominal_v / (2 * _usual_a(key)))
    coarse = life(key, load, pack.floor_v, (3, 48), pack=pack).lit_h
    fine = life(key, load, pack.floor_v, (3, 48), step=0.01, pack=pack).lit_h
    assert coarse == pytest.approx(fine, rel=1e-3)


@pytest.mark.parametrize("count", [2, 3])
def test_cells_in_parallel_and_in_series(count):
    one = packed(CELLS["alkaline AA"])
    side = packed(CELLS["alkaline AA"], in_parallel=count)
    row = packed(CELLS["alkaline AA"], in_series=count)
    alone = life("", resistor(10.0, 2.0), 0.9, (2, 24), pack=one).lit_h
    assert life("", resistor(10.0 / count, 2.0), 0.9, (2, 24), pack=side).lit_h == pytest.approx(
        alone, rel=1e-9
    )
    assert life(
        "", resistor(10.0 * count, 2.0 * count), 0.9 * count, (2, 24), pack=row
    ).lit_h == pytest.approx(alone, rel=1e-9)


@pytest.mark.parametrize("key", ["alkaline AA", "nimh AA", "lead-acid 12 V"])
def test_small_sessions_run_together_last_as_long_as_one_by_one(key, monkeypatch):
    pack = packed(CELLS[key])
    load = resistor(CELLS[key].nominal_v / (0.1 * _usual_a(key)))
    together = life(key, load, pack.floor_v, (0.5, 12.0), pack=pack)
    monkeypatch.setattr("wiring.studies.cells.discharge.TOGETHER", 0.0)
    single = life(key, load, pack.floor_v, (0.5, 12.0), pack=pack)
    assert together.lit_h == pytest.approx(single.lit_h, rel=5e-3)
    assert together.sessions == pytest.approx(single.sessions, rel=5e-3)


def test_a_poor_grade_lasts_shorter():
    good = life("alkaline AA", resistor(10), 0.9).lit_h
    poor = life("", resistor(10), 0.9, pack=packed(CELLS["alkaline AA"], grade=Grade(0.65, 1.3))).lit_h
    assert poor < 0.7 * good


def test_constant_power_meets_at_the_upper_voltage_or_not_at_all():
    load = power(2.0)
    assert not load.rising
    volts = meeting_v(load, 9.0, 2.0)
    assert volts + 2.0 * 2.0 / volts == pytest.approx(9.0, rel=1e-3)
    assert volts > 4.5
    assert meeting_v(load, 9.0, 20.0) is None  # 2 W through 20 ohm needs 12.6 V at least


def test_a_load_that_would_charge_the_battery_counts_as_none():
    assert tabled([0.0, 1.0, 2.0], [-0.5, -0.1, 0.3]).amps == (0.0, 0.0, 0.3)


def test_nine_volt_block_with_six_strings_of_leds():
    """94 mA at 9.0 V, 41 mA at 6.0 V: seven and a half hours, the third session of three hours fails."""
    import numpy as np

    volts = np.linspace(0, 11, 45)
    amps = np.maximum(6 * (volts - 3.68) / 330, 0.0)
    run = life("alkaline 9 V", tabled(volts, amps), 6.2, (3.0, 72.0))
    assert 2.0 < run.sessions < 3.0
    assert run.lit_h == pytest.approx(7.6, rel=0.05)


@QUICK
@given(st.sampled_from(KEYS), st.floats(0.3, 3.0), st.floats(1.0, 6.0), st.integers(2, 5))
def test_splitting_a_session_never_loses_charge(key, rate, session_h, pieces):
    """The same hours a day in several pieces give as much or more, but for the piece in which it ends."""
    pack = _without_loss(key)
    load = current(rate * _usual_a(key))
    whole = life("", load, pack.floor_v, (session_h, 24.0), pack=pack)
    split = life("", load, pack.floor_v, (session_h / pieces, 24.0 / pieces), pack=pack)
    piece_ah = rate * _usual_a(key) * session_h / pieces
    assert split.delivered_ah * GRID + piece_ah >= whole.delivered_ah


@QUICK
@given(st.sampled_from(KEYS), st.floats(0.2, 3.0), st.floats(0.2, 3.0), st.floats(0.5, 5.0))
def test_charge_taken_by_two_patterns_is_the_charge_counted(key, rate, other, session_h):
    pack = _without_loss(key)
    patterns = [Pattern(session_h, 24.0), Pattern(2.0, 60.0)]
    amps = {1: rate, 2: other, 3: rate + other}
    demands = {on: Demand(current(r * _usual_a(key)), pack.floor_v) for on, r in amps.items()}
    run = run_patterns(pack, demands, patterns, 1e6)
    assert run.reached_end
    assert run.delivered_ah == pytest.approx(pack.capacity_ah - run.wells.total_ah, rel=1e-9)


@pytest.mark.parametrize("key", KEYS)
def test_energy_of_a_step_is_what_the_cell_gives_up(key):
    """What reaches the load and what the inner resistance warms up make EMF times current, at any depth."""
    pack = packed(CELLS[key])
    load = resistor(CELLS[key].nominal_v / (2 * _usual_a(key)))
    for left in (1.0, 0.7, 0.4, 0.1):
        wells = pack.level(left)
        emf_v, ohms = pack.thevenin(wells)
        volts = working_v(pack, load, wells)
        amps = load.current_a(volts)
        assert volts * amps + ohms * amps**2 == pytest.approx(emf_v * amps, rel=1e-9)
