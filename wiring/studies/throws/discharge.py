"""A capacitor emptied into one or several coils: exact, from one change of a diode to the next.

States: the capacitor's volts v, then each coil's current i. Per coil, while the button is held:
driven   L i' = v - offset - (R + loop) i          C v' gets -i
wheels   L i' = -Vd - R i                          C v' gets -(v + Vd - offset) / loop
off      i = 0
and always C v' = (E - v) / Rc + ...; once the button is let go only a freewheel diode keeps i going.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from wiring.studies.throws.coil import Coil, Store
from wiring.studies.throws.linear_phase import Floats, LinearPhase, grid_s, solved_phase
from wiring.studies.throws.pulse import Pulse, coil_pulse

FULL = 0.95
DRIVEN, WHEELS, OFF = "driven", "wheels", "off"
LEAST_LOOP_OHM = 1e-3
STAYS_OFF_PER_S = 1.0  # any rate will do: the state is nought and stays so
MOST_CHANGES = 40
POINTS = 400
TAIL_TIMES = 8.0  # a freewheeling tail is followed for so many of the coil's own time constants


class _Stretch(NamedTuple):
    """A phase that holds from one change to the next."""

    phase: LinearPhase
    matrix: Floats
    push: Floats
    starts_s: float
    lasts_s: float


def discharge(store: Store, coils: Sequence[Coil], on_s: float) -> Pulse:
    """Return the pulse when a full store is put to coils for `on_s` seconds.

    All values positive: farads, volts, ohms, seconds. The coils lie in parallel, each behind its own loop.
    """
    stretches, end = _followed(store, coils, on_s)
    times = np.unique(np.concatenate([s.starts_s + grid_s(s.phase, s.lasts_s, POINTS) for s in stretches]))
    states = _states(stretches, times)
    tails = [_tail(coil, float(end[k + 1])) for k, coil in enumerate(coils)]
    tail_s = max(lasts for lasts, _ in tails)
    if tail_s > 0.0:
        later = np.linspace(0.0, tail_s, POINTS // 4)[1:]
        states = np.hstack((states, _after(store, coils, end, later)))
        times = np.concatenate((times, on_s + later))
    left_v = float(end[0])
    pulses = []
    for k, coil in enumerate(coils):
        peak_a, peak_at_s = _peak(stretches, k + 1)
        energy_j = coil.ohms * sum(s.phase.integral_of_square(k + 1, s.lasts_s) for s in stretches)
        pulses.append(coil_pulse(coil, states[k + 1], peak_a, peak_at_s, energy_j + tails[k][1]))
    return Pulse(tuple(pulses), times, states[0], left_v, recharge_s(store, left_v), store.energy_j)


def recharge_s(store: Store, from_v: float) -> float:
    """Return the time to fill from so many volts to 95 % of full: RC ln((E - v) / (0.05 E))."""
    missing = (store.volts_v - from_v) / ((1.0 - FULL) * store.volts_v)
    return max(store.charge_ohm * store.farads * float(np.log(max(missing, 1.0))), 0.0)


def _followed(store: Store, coils: Sequence[Coil], on_s: float) -> tuple[list[_Stretch], Floats]:
    x = np.concatenate(([store.volts_v], np.zeros(len(coils))))
    modes = [DRIVEN] * len(coils)
    stretches: list[_Stretch] = []
    now, changes = 0.0, 0
    while now < on_s:
        matrix, push = _system(store, coils, modes)
        phase = solved_phase(matrix, push, x)
        lasts, change = on_s - now, None
        if changes < MOST_CHANGES:
            for k, mode, weights, offset in _changes(coils, modes):
                at = phase.falls_through(weights, offset, lasts) if lasts > 0.0 else None
                if at is not None and at < lasts:
                    lasts, change = at, (k, mode)
        if lasts > 0.0:
            stretches.append(_Stretch(phase, matrix, push, now, lasts))
            x = phase.at(lasts)[:, 0]
        if change is None:
            break
        k, modes[k] = change
        if modes[k] == OFF:
            x[k + 1] = 0.0
        now, changes = now + lasts, changes + 1
    return stretches, x


def _system(store: Store, coils: Sequence[Coil], modes: Sequence[str]) -> tuple[Floats, Floats]:
    size = len(coils) + 1
    matrix, push = np.zeros((size, size)), np.zeros(size)
    matrix[0, 0] = -1.0 / (store.charge_ohm * store.farads)
    push[0] = store.volts_v / (store.charge_ohm * store.farads)
    for k, (coil, mode) in enumerate(zip(coils, modes, strict=True), 1):
        if mode == DRIVEN:
            matrix[0, k] = -1.0 / store.farads
            matrix[k, 0] = 1.0 / coil.henry
            matrix[k, k] = -(coil.ohms + coil.loop_ohms) / coil.henry
            push[k] = -coil.offset_v / coil.henry
        elif mode == WHEELS:
            loop_ohms = max(coil.loop_ohms, LEAST_LOOP_OHM)
            matrix[0, 0] -= 1.0 / (loop_ohms * store.farads)
            push[0] -= (_wheel_v(coil) - coil.offset_v) / (loop_ohms * store.farads)
            matrix[k, k] = -coil.ohms / coil.henry
            push[k] = -_wheel_v(coil) / coil.henry
        else:
            matrix[k, k] = -STAYS_OFF_PER_S
    return matrix, push


def _changes(coils: Sequence[Coil], modes: Sequence[str]) -> list[tuple[int, str, Floats, float]]:
    """Return what to watch for: coil, its mode afterwards, and the sum of states that then falls below 0."""
    found: list[tuple[int, str, Floats, float]] = []
    size = len(coils) + 1

    def watch(k: int, mode: str, of_v: float, of_i: float, offset: float) -> None:
        weights = np.zeros(size)
        weights[0], weights[k + 1] = of_v, of_i
        found.append((k, mode, weights, offset))

    for k, (coil, mode) in enumerate(zip(coils, modes, strict=True)):
        loop_ohms = max(coil.loop_ohms, LEAST_LOOP_OHM)
        if mode == OFF:
            watch(k, DRIVEN, -1.0, 0.0, coil.offset_v)
            continue
        if mode == DRIVEN and coil.freewheel_v is not None:
            watch(k, WHEELS, 1.0, -coil.loop_ohms, coil.freewheel_v - coil.offset_v)
        if mode == DRIVEN and coil.one_way:
            watch(k, OFF, 0.0, 1.0, 0.0)
        if mode == WHEELS:
            watch(k, DRIVEN, -1.0 / loop_ohms, 1.0, -(_wheel_v(coil) - coil.offset_v) / loop_ohms)
            watch(k, OFF, 0.0, 1.0, 0.0)
    return found


def _wheel_v(coil: Coil) -> float:
    return coil.freewheel_v or 0.0


def _states(stretches: Sequence[_Stretch], times: Floats) -> Floats:
    starts = np.array([s.starts_s for s in stretches])
    which = np.maximum(np.searchsorted(starts, times, side="right") - 1, 0)
    states = np.empty((len(stretches[0].phase.rest), len(times)))
    for n, stretch in enumerate(stretches):
        mine = which == n
        states[:, mine] = stretch.phase.at(times[mine] - stretch.starts_s)
    return states


def _peak(stretches: Sequence[_Stretch], state: int) -> tuple[float, float]:
    """Return the largest value of a state and when: where its slope falls through nought, or at an end."""
    found: list[tuple[float, float]] = []
    for stretch in stretches:
        ends = [0.0, stretch.lasts_s]
        turn = stretch.phase.falls_through(stretch.matrix[state], stretch.push[state], stretch.lasts_s)
        at = np.array([*ends, *([] if turn is None else [turn])])
        values = stretch.phase.at(at)[state]
        best = int(np.argmax(values))
        found.append((float(values[best]), stretch.starts_s + float(at[best])))
    return max(found)


def _tail(coil: Coil, amps: float) -> tuple[float, float]:
    """Return how long a freewheel diode keeps the current going, and the heat it leaves in the winding."""
    if coil.freewheel_v is None or amps <= 0.0:
        return 0.0, 0.0
    tau_s, rest_a = coil.henry / coil.ohms, coil.freewheel_v / coil.ohms
    if rest_a == 0.0:
        return TAIL_TIMES * tau_s, 0.5 * coil.henry * amps * amps
    lasts_s = tau_s * float(np.log1p(amps / rest_a))
    # Half L i² less what the diode takes: its volts times the charge that runs down.
    charge = tau_s * amps - rest_a * lasts_s
    return lasts_s, 0.5 * coil.henry * amps * amps - coil.freewheel_v * charge


def _after(store: Store, coils: Sequence[Coil], end: Floats, later: Floats) -> Floats:
    """Return the states once the button is let go: the store fills, the coils run down or are cut off."""
    tau_s = store.charge_ohm * store.farads
    rows = [store.volts_v + (end[0] - store.volts_v) * np.exp(-later / tau_s)]
    for k, coil in enumerate(coils):
        rest_a = -_wheel_v(coil) / coil.ohms
        amps = rest_a + (end[k + 1] - rest_a) * np.exp(-later * coil.ohms / coil.henry)
        alive = coil.freewheel_v is not None and end[k + 1] > 0.0
        rows.append(np.maximum(amps, 0.0) if alive else np.zeros_like(later))
    return np.vstack(rows)
