"""Pulses against ngspice's transient analysis of the same circuit: peak, its time, heat and volts left."""

import pytest

from tests.support.ngspice import needs_ngspice, run
from wiring.studies.throws.coil import Coil, Store
from wiring.studies.throws.discharge import discharge

pytestmark = [pytest.mark.ngspice, needs_ngspice]

ON_S, END_S = 0.06, 0.09
# A silicon diode, 0.8 V at 2.6 A.
DIODE = ".model dfly D(is=1e-9 n=1.43 rs=0)"


def netlist(store: Store, coils, on_s=ON_S, end_s=END_S) -> str:
    """The store, a button closed from the first moment until `on_s`, and each coil behind its loop."""
    lines = [
        "* a capacitor emptied into coils",
        f"Vfeed f 0 {store.volts_v}",
        f"Rcharge f c {store.charge_ohm}",
    ]
    lines += [f"Cstore c 0 {store.farads} ic={store.volts_v}", DIODE]
    # One button a coil, so that a coil let go is cut off from the others too.
    lines += [
        f"Vpress p 0 PWL(0 1 {on_s} 1 {on_s + 1e-6} 0)",
        ".model press SW(vt=0.5 vh=0 ron=1u roff=1e9)",
    ]
    for k, coil in enumerate(coils):
        lines += [
            f"S{k} c b{k} p 0 press", f"Rloop{k} b{k} t{k} {max(coil.loop_ohms, 1e-6)}",
            f"Vsense{k} t{k} s{k} {coil.offset_v}", f"L{k} s{k} m{k} {coil.henry} ic=0",
            f"R{k} m{k} 0 {coil.ohms}",
            f"Bheat{k} 0 e{k} i={coil.ohms}*v(m{k})*v(m{k})/{coil.ohms**2}", f"Cheat{k} e{k} 0 1 ic=0",
        ]  # fmt: skip
        if coil.freewheel_v is not None:
            lines.append(f"D{k} 0 s{k} dfly")
    step = 5e-6
    lines += [
        ".options reltol=1e-5 vntol=1e-7 abstol=1e-9", ".control", "set numdgt=12",
        f"tran {step} {end_s} 0 {step} uic",
    ]  # fmt: skip
    for k, coil in enumerate(coils):
        lines += [
            f"meas tran peak{k} MAX v(m{k})", f"meas tran at{k} MAX_AT v(m{k})",
            f"meas tran heat{k} FIND v(e{k}) AT={end_s - step}",
        ]  # fmt: skip
        del coil
    lines += [f"meas tran left FIND v(c) AT={on_s - step}", ".endc", ".end"]
    return "\n".join(lines) + "\n"


CASES = {
    "overdamped": (Store(4700e-6, 20.0, 100.0), [Coil(6.0, 5e-3 / 6.0, 0.35)]),
    "typical coil": (Store(4700e-6, 20.0, 470.0), [Coil(15.0, 0.5e-3, 1.6)]),
    "freewheel diode": (Store(4700e-6, 20.0, 100.0), [Coil(6.0, 5e-3 / 6.0, 0.35, freewheel_v=0.8)]),
    "underdamped": (Store(1000e-6, 20.0, 100.0), [Coil(1.0, 5e-3, 0.05)]),
    "underdamped with diode": (Store(1000e-6, 20.0, 100.0), [Coil(1.0, 5e-3, 0.3, freewheel_v=0.8)]),
    "two unlike coils": (Store(18_000e-6, 18.0, 100.0), [Coil(4.0, 1e-3, 0.2), Coil(12.0, 0.3e-3, 1.0)]),
    "let go early": (Store(18_000e-6, 18.0, 100.0), [Coil(4.0, 2e-3, 0.2, freewheel_v=0.8)]),
}


@pytest.mark.parametrize("name", CASES)
def test_peak_time_and_heat_agree_within_one_per_cent(name, tmp_path):
    store, coils = CASES[name]
    on_s = 0.02 if name == "let go early" else ON_S
    ours = discharge(store, coils, on_s)
    theirs = run(netlist(store, coils, on_s), tmp_path)
    for k, (coil, pulse) in enumerate(zip(coils, ours.coils, strict=True)):
        assert pulse.peak_a == pytest.approx(theirs[f"peak{k}"] / coil.ohms, rel=0.01)
        assert pulse.peak_at_s == pytest.approx(theirs[f"at{k}"], rel=0.01, abs=1e-5)
        assert pulse.energy_j == pytest.approx(theirs[f"heat{k}"], rel=0.01)
    assert ours.left_v == pytest.approx(theirs["left"], rel=0.01, abs=0.02)
