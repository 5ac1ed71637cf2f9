"""A button that puts coils straight on a supply: the current rises to what the loop lets through."""

from collections.abc import Sequence

import numpy as np

from wiring.studies.throws.coil import Coil
from wiring.studies.throws.discharge import POINTS
from wiring.studies.throws.linear_phase import Floats
from wiring.studies.throws.pulse import CoilPulse, Pulse, coil_pulse


def from_supply(volts_v: float, limit_a: float, coils: Sequence[Coil], on_s: float) -> Pulse:
    """Return the pulse of a supply that holds its volts until its limit, put to coils for `on_s` seconds.

    i = I (1 - exp(-t / tau)), I = (V - offset) / (R + loop), tau = L / (R + loop), textbook RL. Beyond the
    limit each coil keeps its share of the limit. On AC give RMS volts: the coil's reactance is left out.
    """
    final_a = [max(volts_v - coil.offset_v, 0.0) / (coil.ohms + coil.loop_ohms) for coil in coils]
    asked_a = sum(final_a)
    share = min(limit_a / asked_a, 1.0) if asked_a > 0.0 else 1.0
    times = np.linspace(0.0, on_s, POINTS)
    pulses = tuple(_rising(coil, a, share, times, on_s) for coil, a in zip(coils, final_a, strict=True))
    held_v = np.full_like(times, volts_v)
    return Pulse(pulses, times, held_v, volts_v, 0.0, 0.0, share < 1.0)


def _rising(coil: Coil, final_a: float, share: float, times: Floats, on_s: float) -> CoilPulse:
    tau_s = coil.henry / (coil.ohms + coil.loop_ohms)
    most_a = share * final_a
    rises_s = on_s if share >= 1.0 else min(-tau_s * float(np.log1p(-share)), on_s)
    amps = np.minimum(-final_a * np.expm1(-times / tau_s), most_a)
    x = rises_s / tau_s
    # Integral of (1 - exp(-x))²: x + 2 (exp(-x) - 1) - (exp(-2 x) - 1) / 2, times tau.
    rising = tau_s * (x + 2.0 * float(np.expm1(-x)) - 0.5 * float(np.expm1(-2.0 * x)))
    square = final_a**2 * rising + most_a**2 * (on_s - rises_s)
    peak_a = float(amps[-1])
    return coil_pulse(coil, amps, peak_a, rises_s, coil.ohms * square)
