"""A chain of LEDs or a diode with its series resistor, several chains side by side, as one closed form.

Shockley's i = Is (exp((v - i rs) / s) - 1) is solved for i by the Wright omega function, so the slope is
bounded by 1 / rs and nothing overflows. A real junction leaks more than Shockley says; the leak also keeps
the voltage between two blocking junctions defined.
"""

import math

import numpy as np

from wiring.circuit.branches.law import Curve, Floats, Law, number
from wiring.circuit.wright_omega import wright_omega

LEAK_S = 1e-9
LEAST_RATIO = 1e-6  # of forward volts to slope; a straight line to the eye
BOLTZMANN_OVER_CHARGE = 1.38064852e-23 / 1.6021766208e-19  # the constants ngspice uses
# Of one junction at a given current. Common practice: textbooks of electronics give 2 mV a kelvin for
# silicon, makers' sheets 1 to 4 mV a kelvin for LEDs.
PER_KELVIN_V = -0.002
SPICE_KELVIN = 300.15
SPICE_VT = BOLTZMANN_OVER_CHARGE * SPICE_KELVIN


def _curve(p: Floats) -> Curve:
    tight = _without_leak(p)

    def curve(v: Floats) -> tuple[Floats, Floats]:
        amps, slopes = tight(v)
        return amps + LEAK_S * v, slopes + LEAK_S

    return curve


def _without_leak(p: Floats) -> Curve:
    log_is, s, rs, chains = p[0], p[1], p[2], p[3]
    leak_a, per_volt = np.exp(log_is), 1.0 / s
    offset = log_is + np.log(rs * per_volt) + leak_a * rs * per_volt
    scale, leaks, steepest = chains * s / rs, chains * leak_a, chains / rs

    def curve(v: Floats) -> tuple[Floats, Floats]:
        omega = wright_omega(v * per_volt + offset)
        return scale * omega - leaks, steepest * omega / (1.0 + omega)

    return curve


def curve_behind(p: Floats, behind: Floats) -> Curve:
    """Return the curve of junctions behind so many ohms more, their leak beside the junction only.

    A junction's law can be told of all resistance at once, which is right but for the leak: that sees only
    what the resistance leaves. One Newton step from the voltage without a leak; what is left is of the order
    of the square of leak times resistance.
    """
    p = p.copy()
    p[2] = p[2] + p[3] * behind
    tight, much = _without_leak(p), behind * LEAK_S

    def curve(v: Floats) -> tuple[Floats, Floats]:
        given, gain = tight(v)
        left = 1.0 - behind * gain
        over_whole = 1.0 / (1.0 + much * left)
        shift = much * (v - behind * given) * over_whole
        given -= gain * shift
        return given + LEAK_S * (v - shift - behind * given), (gain + LEAK_S * left) * over_whole

    return curve


def _spice(name: str, a: str, b: str, values: tuple[float, ...]) -> tuple[str, ...]:
    log_is, s, rs, chains = values[:4]
    inner, leak_a = f"{a}_{name}", math.exp(log_is) * chains
    return (
        f"R{name} {a} {inner} {number(rs / chains)}",
        f"D{name} {inner} {b} J{name}",
        f".model J{name} D(is={number(leak_a)} n={number(s / SPICE_VT)} rs=0 isr=0 tnom=27)",
        f"Rleak{name} {a} {b} {number(1.0 / LEAK_S)}",
    )


def junction_values(
    forward_v: float,
    forward_a: float,
    slope_v: float,
    own_ohms: float,
    in_series: float,
    series_ohms: float,
    chains: float,
    warmer_k: float = 0.0,
) -> tuple[float, ...]:
    """Return the law's values so that each junction passes exactly forward_a at forward_v.

    slope_v is n Vt of one junction; own_ohms is one junction's bulk resistance, already inside forward_v.
    A junction that is so much warmer than it is stated for needs less volts for the same current.
    """
    s = slope_v * in_series
    inside_v = (forward_v + PER_KELVIN_V * warmer_k - forward_a * own_ohms) * in_series
    ratio = max(inside_v / s, LEAST_RATIO)
    log_is = math.log(forward_a) - ratio - math.log1p(-math.exp(-ratio))
    return log_is, s, own_ohms * in_series + series_ohms, chains


JUNCTION = Law("junction", ("log_is", "slope_v", "ohms", "chains"), _curve, _spice)
