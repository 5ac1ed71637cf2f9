"""A module that takes one power: P / v above its lowest voltage; below it, it starves like a resistor."""

import numpy as np

from wiring.circuit.branches.law import Curve, Floats, Law, number

BLOCKED_S = 1e-9


def _curve(p: Floats) -> Curve:
    power_w, min_v = p[0], p[1]
    starved = power_w / (min_v * min_v)

    def curve(v: Floats) -> tuple[Floats, Floats]:
        runs, blocked = v >= min_v, v < 0
        safe = np.where(runs, v, min_v)
        amps = np.where(runs, power_w / safe, np.where(blocked, BLOCKED_S * v, starved * v))
        slope = np.where(runs, -power_w / (safe * safe), np.where(blocked, BLOCKED_S, starved))
        return amps, slope

    return curve


def _spice(name: str, a: str, b: str, values: tuple[float, ...]) -> tuple[str, ...]:
    power_w, min_v = values[:2]
    v = f"v({a},{b})"
    starved = f"({v} < 0 ? {BLOCKED_S!r}*{v} : {number(power_w / min_v**2)}*{v})"
    runs = f"{number(power_w)}/max({v},{number(min_v)})"
    return (f"B{name} {a} {b} i={v} < {number(min_v)} ? {starved} : {runs}",)


CONSTANT_POWER = Law("constant_power", ("power_w", "min_v"), _curve, _spice, monotone=False)
