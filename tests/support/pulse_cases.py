"""Pulses to compare by: stores, coils and how long the button is held, and their circuit for ngspice."""

from typing import NamedTuple

from wiring.studies.throws.coil import Coil, Store

# A silicon diode, 0.8 V at 2.6 A.
DIODE = ".model dfly D(is=1e-9 n=1.43 rs=0)"
OPTIONS = ".options reltol=1e-5 vntol=1e-7 abstol=1e-9"
STEP_S, TAIL_S = 5e-6, 0.03
FULL = 0.95


class Case(NamedTuple):
    """One press."""

    store: Store
    coils: tuple[Coil, ...]
    on_s: float = 0.06


STORE, SMALL, LARGE = Store(4700e-6, 20.0, 100.0), Store(1000e-6, 20.0, 100.0), Store(18_000e-6, 18.0, 100.0)
CASES = {
    "overdamped": Case(STORE, (Coil(6.0, 5e-3 / 6.0, 0.35),)),
    "typical coil": Case(Store(4700e-6, 20.0, 470.0), (Coil(15.0, 0.5e-3, 1.6),)),
    "freewheel diode": Case(STORE, (Coil(6.0, 5e-3 / 6.0, 0.35, freewheel_v=0.8),)),
    "underdamped": Case(SMALL, (Coil(1.0, 5e-3, 0.05),)),
    "underdamped with diode": Case(SMALL, (Coil(1.0, 5e-3, 0.3, freewheel_v=0.8),)),
    "two unlike coils": Case(LARGE, (Coil(4.0, 1e-3, 0.2), Coil(12.0, 0.3e-3, 1.0))),
    "let go early": Case(LARGE, (Coil(4.0, 2e-3, 0.2, freewheel_v=0.8),), 0.02),
}

STRAIGHT = {  # volts of a supply, coil, seconds
    "straight on a supply": (16.0, Coil(15.0, 0.5e-3, 1.6), 0.06),
    "a slow coil let go early": (12.0, Coil(4.0, 8e-3, 0.5), 0.01),
}


def press_netlist(case: Case) -> str:
    """The store, a button closed from the first moment until it is let go, each coil behind its loop.

    Prints `peak0` (volts across the winding), `at0` and `heat0` a coil, and `left`, the volts left.
    """
    store, coils, on_s = case
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
    end_s = on_s + TAIL_S
    lines += [OPTIONS, ".control", "set numdgt=12", f"tran {STEP_S} {end_s} 0 {STEP_S} uic"]
    for k in range(len(coils)):
        lines += [
            f"meas tran peak{k} MAX v(m{k})", f"meas tran at{k} MAX_AT v(m{k})",
            f"meas tran heat{k} FIND v(e{k}) AT={end_s - STEP_S}",
        ]  # fmt: skip
    lines += [f"meas tran left FIND v(c) AT={on_s - STEP_S}", ".endc", ".end"]
    return "\n".join(lines) + "\n"


def refill_netlist(store: Store, left_v: float) -> str:
    """The store filling again with nothing on it; prints `full`, the seconds to 95 % of its feed's volts."""
    fills_s = store.farads * store.charge_ohm
    return "\n".join(
        [
            "* a capacitor filled again", f"Vfeed f 0 {store.volts_v}", f"Rcharge f c {store.charge_ohm}",
            f"Cstore c 0 {store.farads} ic={left_v}", OPTIONS, ".control", "set numdgt=12",
            f"tran {fills_s / 1000} {4 * fills_s} 0 {fills_s / 1000} uic",
            f"meas tran full WHEN v(c)={FULL * store.volts_v} RISE=1", ".endc", ".end", "",
        ]
    )  # fmt: skip


def straight_netlist(volts_v: float, coil: Coil, on_s: float) -> str:
    """A coil put on a supply; prints `peak` (volts across the winding) and `heat` at the end."""
    step_s = on_s / 5000
    return "\n".join(
        [
            "* a coil on a supply", f"Vfeed f 0 {volts_v}", f"Rloop f s {coil.loop_ohms}",
            f"L s m {coil.henry} ic=0", f"R m 0 {coil.ohms}",
            f"Bheat 0 e i=v(m)*v(m)/{coil.ohms}", "Cheat e 0 1 ic=0", OPTIONS, ".control", "set numdgt=12",
            f"tran {step_s} {1.01 * on_s} 0 {step_s} uic", f"meas tran peak MAX v(m) FROM=0 TO={on_s}",
            f"meas tran heat FIND v(e) AT={on_s}", ".endc", ".end", "",
        ]
    )  # fmt: skip
