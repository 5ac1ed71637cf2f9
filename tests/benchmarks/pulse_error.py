"""How far pulses lie from a transient run of the same circuit: ngspice's, or scipy's where there is none.

`pulse_err` is the greatest relative error, over all cases and coils, of the peak current, the energy in the
coil and the time to fill again. ngspice integrates the circuit with a diode's exponential law, so what the
clamp at 0.8 V leaves out counts too. By itself `python tests/benchmarks/pulse_error.py` prints each case.
"""

import math
import shutil
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[2]))

from support.ngspice import run
from support.pulse_cases import (
    CASES,
    FULL,
    STRAIGHT,
    TAIL_S,
    Case,
    press_netlist,
    refill_netlist,
    straight_netlist,
)

from wiring.studies.throws.discharge import discharge
from wiring.studies.throws.from_supply import from_supply

SMOKE = ("typical coil", "underdamped with diode")


def pulse_err(*, smoke: bool | None = None) -> float:
    """The greatest relative error of all cases, or of a few of them."""
    few = "--smoke" in sys.argv if smoke is None else smoke
    found = [error for name in (SMOKE if few else CASES) for _, error in errors(CASES[name])]
    if shutil.which("ngspice") and not few:
        found += [error for name in STRAIGHT for _, error in straight_errors(name)]
    return max(found)


def straight_errors(name: str) -> Iterator[tuple[str, float]]:
    """Peak and energy of a coil straight on a supply, against ngspice."""
    volts_v, coil, on_s = STRAIGHT[name]
    ours = from_supply(volts_v, math.inf, [coil], on_s)
    with tempfile.TemporaryDirectory() as folder:
        theirs = run(straight_netlist(volts_v, coil, on_s), Path(folder))
    yield "peak", abs(ours.peak_a * coil.ohms / theirs["peak"] - 1.0)
    yield "energy", abs(ours.energy_coil_j / theirs["heat"] - 1.0)


def errors(case: Case) -> Iterator[tuple[str, float]]:
    """Each figure of a case by name, and its relative error."""
    ours = discharge(*case)
    theirs = _by_ngspice(case) if shutil.which("ngspice") else by_scipy(case)
    for k, coil in enumerate(ours.coils):
        yield f"peak of coil {k}", abs(coil.peak_a / theirs[f"peak{k}"] - 1.0)
        yield f"energy in coil {k}", abs(coil.energy_j / theirs[f"heat{k}"] - 1.0)
    yield "refill", abs(ours.recharge_s / theirs["full"] - 1.0)


def _by_ngspice(case: Case) -> dict[str, float]:
    with tempfile.TemporaryDirectory() as folder:
        found = run(press_netlist(case), Path(folder))
        found |= run(refill_netlist(case.store, found["left"]), Path(folder))
    return found | {f"peak{k}": found[f"peak{k}"] / coil.ohms for k, coil in enumerate(case.coils)}


def by_scipy(case: Case) -> dict[str, float]:
    """The same by an implicit integrator; LSODA may hang for ever where a diode takes over."""
    import numpy as np
    from scipy.integrate import solve_ivp

    store, coils, on_s = case
    count = len(coils)

    def slopes(t: float, x: np.ndarray) -> list[float]:
        v, amps, out_a = x[0], x[1 : 1 + count], 0.0
        rises, heats = [], []
        for coil, i in zip(coils, amps, strict=True):
            pressed = t < on_s
            at_v = v - coil.offset_v - coil.loop_ohms * i if pressed else -1e3 * i
            from_a = i if pressed else 0.0
            if coil.freewheel_v is not None and at_v < -coil.freewheel_v:
                at_v = -coil.freewheel_v
                from_a = (v - coil.offset_v + coil.freewheel_v) / coil.loop_ohms if pressed else 0.0
                at_v = at_v if i > 0.0 or pressed else 0.0
            rises.append((at_v - coil.ohms * i) / coil.henry)
            heats.append(coil.ohms * i * i)
            out_a += from_a
        return [((store.volts_v - v) / store.charge_ohm - out_a) / store.farads, *rises, *heats]

    found: dict[str, float] = {f"peak{k}": 0.0 for k in range(count)}
    x = np.array([store.volts_v, *([0.0] * (2 * count))])
    for begin, end in ((0.0, on_s), (on_s, on_s + TAIL_S)):
        if begin:
            found["left"] = float(x[0])
            for k, coil in enumerate(coils):  # cut off by the button, unless a diode carries it on
                x[1 + k] = 0.0 if coil.freewheel_v is None else x[1 + k]
        done = solve_ivp(
            slopes, (begin, end - 1e-12), x, method="BDF", rtol=1e-7, atol=1e-10, max_step=on_s / 400
        )
        x = done.y[:, -1].copy()
        for k in range(count):
            found[f"peak{k}"] = max(found[f"peak{k}"], float(done.y[1 + k].max()))
    found |= {f"heat{k}": float(x[1 + count + k]) for k in range(count)}

    def full(_t: float, v: np.ndarray) -> float:
        return float(v[0]) - FULL * store.volts_v

    tau_s = store.farads * store.charge_ohm
    filling = solve_ivp(
        lambda _t, v: (store.volts_v - v) / tau_s,
        (0.0, 4.0 * tau_s), [found["left"]], method="BDF", rtol=1e-8, atol=1e-9, events=full,
    )  # fmt: skip
    return found | {"full": float(filling.t_events[0][0])}


if __name__ == "__main__":
    for case_name, one in CASES.items():
        for what, error in errors(one):
            print(f"{case_name}, {what} = {error:.2e}")
    print(f"pulse_err = {pulse_err():.3g}")
