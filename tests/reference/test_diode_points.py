"""Operating points of diodes and LEDs against textbooks and against pvlib's one-diode equation."""

import math

import numpy as np
import pytest
from support.networks import draw, resistor, stiff
from support.solved import solved

from wiring.circuit.branches.junction import JUNCTION, LEAK_S, junction_values

# (source, supply V, series ohms, forward V at forward A, n Vt) -> diode volts, amperes.
POINTS = (
    # Sedra and Smith, Microelectronic Circuits: 5 V, 1 kohm, 1 mA at 0.7 V. Statement from the book, exact
    # solution of its equation computed separately; the book's hand iteration gives 0.738 V and 4.262 mA.
    (5.0, 1000.0, 0.7, 1e-3, 0.025, 0.7363, 4.2637e-3),
    # The same with 0.1 V per decade; computed.
    (5.0, 1000.0, 0.7, 1e-3, 0.1 / math.log(10), 0.7627, 4.2373e-3),
    # 1 V, 1 kohm, Is 1e-15 A, Vt 25 mV: published hand steps 0.66 V, 0.34 mA; exact computed.
    (1.0, 1000.0, 0.025 * math.log(1e-3 / 1e-15 + 1), 1e-3, 0.025, 0.6635, 0.3365e-3),
    # G. Tuttle, diode practice problems: 7 V, 10 kohm, Is 6e-15 A, Vt 25.8 mV; answers computed.
    (7.0, 10_000.0, 0.0258 * math.log(1e-3 / 6e-15 + 1), 1e-3, 0.0258, 0.6549, 0.6345e-3),
    # Shockley with Vt 25.852 mV; closed form computed separately.
    (5.0, 1000.0, 0.025852 * math.log(1e-3 / 1e-14 + 1), 1e-3, 0.025852, 0.692544, 4.307456e-3),
    (5.0, 1000.0, 0.025852 * math.log(1e-3 / 1e-12 + 1), 1e-3, 0.025852, 0.574192, 4.425808e-3),
    (12.0, 1000.0, 0.051704 * math.log(1e-2 / 1e-18 + 1), 1e-2, 0.051704, 1.905333, 10.094667e-3),
)


@pytest.mark.parametrize("point", POINTS)
def test_textbook_point(point: tuple[float, ...]) -> None:
    supply_v, ohms, forward_v, forward_a, slope_v, volts, amps = point
    diode = ("diode", {"forward_v": forward_v, "forward_a": forward_a, "slope_v": slope_v})
    plan = draw({"G": stiff(supply_v), "R": resistor(ohms), "D": diode},
                [("G:+", "R:1"), ("R:2", "D:A"), ("D:K", "G:-")])  # fmt: skip
    figure = solved(plan).parts["D"]
    assert figure.volts_v == pytest.approx(volts, abs=1.5e-4)
    assert figure.current_a == pytest.approx(amps, rel=2e-4)


def test_red_led_data_sheet_curve() -> None:
    """Published fit of a red LED's data sheet (Is 1e-18 A, n 1.8, kT/q 26 mV); points computed from it."""
    slope_v = 1.8 * 0.026
    at_1v6 = 1e-18 * (math.exp(1.6 / slope_v) - 1)
    row = np.array(junction_values(1.6, at_1v6, slope_v, 1e-6, 1, 0.0, 1))
    amps, _ = JUNCTION.current(np.array([1.3, 1.4, 1.5, 1.6]), row[:, None])
    assert amps == pytest.approx([1.16e-6, 9.8e-6, 83e-6, 0.704e-3], rel=0.01)


@pytest.mark.parametrize("chains", [1, 3])
@pytest.mark.parametrize("in_series", [1, 3])
@pytest.mark.parametrize("series_ohm", [1.0, 47.0, 470.0, 4700.0])
def test_led_with_resistor_is_the_one_diode_equation(in_series: int, series_ohm: float, chains: int) -> None:
    """pvlib solves I = IL - Io (exp((V + I Rs) / nNsVth) - 1) by Lambert's W; IL = 0, -I is ours."""
    pvsystem = pytest.importorskip("pvlib.pvsystem", reason="pvlib is not installed")
    values = junction_values(2.1, 0.02, 0.055, 1.5, in_series, series_ohm, chains)
    log_is, s, rs, _ = values
    volts = np.linspace(-3.0, 16.0, 39)
    ours, _ = JUNCTION.current(volts, np.array(values)[:, None])
    theirs = -chains * pvsystem.i_from_v(volts, 0.0, math.exp(log_is), rs, np.inf, s)
    assert ours - LEAK_S * volts == pytest.approx(theirs, rel=1e-8, abs=1e-13)
