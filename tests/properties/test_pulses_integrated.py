"""Pulses of any coils against step-by-step integration, diodes and all, and what must hold for each."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from wiring.studies.throws.coil import Coil, Store
from wiring.studies.throws.discharge import discharge

stores = st.builds(
    Store,
    st.floats(2e-4, 5e-2),
    st.floats(8.0, 35.0),
    st.floats(20.0, 2000.0),
)
coils = st.builds(
    Coil,
    st.floats(2.0, 40.0),
    st.floats(1e-4, 5e-3),
    st.floats(0.05, 4.0),
    st.sampled_from([0.0, 0.9]),
    st.booleans(),
    st.sampled_from([None, 0.8]),
    st.just(16.0),
    st.just(0.1),
)
on_times = st.floats(0.01, 0.2)


def _integrated(store: Store, coil: Coil, on_s: float) -> tuple[np.ndarray, float]:
    """Volts and current of one coil at the end, and its heat: diodes are written as clamps, no modes."""

    def slopes(_t: float, x: np.ndarray) -> list[float]:
        v, i, _heat = x
        at_coil_v = v - coil.offset_v - coil.loop_ohms * i
        from_store_a = i
        if coil.freewheel_v is not None and at_coil_v < -coil.freewheel_v:
            at_coil_v = -coil.freewheel_v
            from_store_a = (v - coil.offset_v + coil.freewheel_v) / coil.loop_ohms
        rise = (at_coil_v - coil.ohms * i) / coil.henry
        if coil.one_way and i <= 0.0:
            rise, from_store_a = max(rise, 0.0), max(i, 0.0)
        fill_a = (store.volts_v - v) / store.charge_ohm
        return [(fill_a - from_store_a) / store.farads, rise, coil.ohms * i * i]

    done = solve_ivp(
        slopes,
        (0.0, on_s),
        [store.volts_v, 0.0, 0.0],
        method="BDF",  # LSODA can hang for ever where a diode stops conducting
        rtol=1e-8,
        atol=1e-10,
        max_step=on_s / 200,
    )
    return done.y[:2, -1], float(done.y[2, -1])


@given(stores, coils, on_times)
@settings(max_examples=25, deadline=None)
def test_one_coil_ends_where_integration_ends(store, coil, on_s):
    found = discharge(store, [coil], on_s)
    (left_v, amps), heat_j = _integrated(store, coil, on_s)
    last = int(np.argmin(np.abs(found.times_s - on_s)))
    assert found.left_v == pytest.approx(left_v, abs=2e-3 * store.volts_v)
    assert found.coils[0].amps[last] == pytest.approx(amps, abs=2e-3 * found.peak_a + 1e-6)
    tail_j = 0.5 * coil.henry * amps * amps if coil.freewheel_v is not None else 0.0
    assert heat_j * (1 - 2e-3) <= found.energy_coil_j <= (heat_j + tail_j) * (1 + 2e-3)


@given(stores, st.lists(coils, min_size=1, max_size=4), on_times)
@settings(max_examples=40, deadline=None)
def test_no_pulse_makes_energy_and_none_is_out_of_bounds(store, several, on_s):
    found = discharge(store, several, on_s)
    for values in (found.times_s, found.store_v, *(c.amps for c in found.coils)):
        assert np.all(np.isfinite(values))
        assert len(values) == len(found.times_s)
    assert np.all(np.diff(found.times_s) > 0)
    # All that was stored, and all that can have come in through the charging resistor meanwhile.
    most_j = found.stored_j + store.volts_v**2 / store.charge_ohm * on_s * 4.0
    assert 0.0 < sum(c.energy_j for c in found.coils) <= most_j
    for coil, pulse in zip(several, found.coils, strict=True):
        assert 0.0 < pulse.peak_a <= store.volts_v / coil.ohms * (1 + 1e-9)
        assert pulse.peak_a >= np.max(pulse.amps) * (1 - 1e-9)
        assert 0.0 <= pulse.peak_at_s <= on_s
        if coil.freewheel_v is not None and coil.one_way:
            assert np.min(pulse.amps) >= -1e-6
        assert pulse.throws == (pulse.margin >= 1.0)
    assert 0.0 <= found.recharge_s < math.inf


@given(stores, coils, st.floats(1.1, 4.0))
@settings(max_examples=30, deadline=None)
def test_more_loop_resistance_never_gives_a_stronger_pulse(store, coil, factor):
    plain = coil._replace(one_way=False, freewheel_v=None, offset_v=0.0, rise_s=1e-4)
    near = discharge(store, [plain], 0.1)
    far = discharge(store, [plain._replace(loop_ohms=factor * plain.loop_ohms)], 0.1)
    assert far.peak_a < near.peak_a
    # Longer on the capacitor can make up for less at once, but never beyond what reaches the winding at most.
    assert far.margin <= near.margin * (1 + 1e-9) or far.left_v > near.left_v
