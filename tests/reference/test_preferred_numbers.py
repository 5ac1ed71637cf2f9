"""Preferred values and resistor bands against IEC 60063 and IEC 60062, by another package and by print."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wiring.standards.preferred import SERIES, is_preferred, nearest, next_down, next_e24_up, next_up
from wiring.standards.resistor_bands import bands


@pytest.mark.parametrize("name", ["E6", "E12", "E24", "E96"])
def test_series_agree_with_the_eseries_package(name):
    eseries = pytest.importorskip("eseries", reason="the eseries package is the outside check here")
    theirs = eseries.series(eseries.ESeries[name])
    assert [round(v * (100 if name == "E96" else 10) / theirs[0]) for v in theirs] == list(SERIES[name])


@settings(deadline=None)
@given(st.floats(1e-3, 1e7).map(lambda v: float(f"{v:.4g}")), st.sampled_from(["E24", "E96"]))
def test_next_value_up_agrees_with_the_eseries_package(ohms, name):
    eseries = pytest.importorskip("eseries", reason="the eseries package is the outside check here")
    theirs = eseries.find_greater_than_or_equal(eseries.ESeries[name], ohms)
    assert next_up(ohms, name) == pytest.approx(theirs, rel=1e-6)


# (supply V, LED V, A): exact Ω, next E24. Encyclopaedia page "LED circuit"; two hobby question-and-answer
# pages; a school resource; a university wiki's table.
LED_RESISTORS = [
    (12, 1.8, 0.005, 2040, 2200), (9, 1.8, 0.005, 1440, 1500), (12, 3 * 2.4, 0.020, 240, 240),
    (9, 3, 0.020, 300, 300), (6, 3, 0.020, 150, 150), (12, 3.4, 0.010, 860, 910),
    (3, 1.8, 0.002, 600, 620), (3.3, 1.8, 0.002, 750, 750),
    (5, 1.8, 0.002, 1600, 1600), (12, 1.8, 0.002, 5100, 5100), (3, 2.1, 0.010, 90, 91),
    (12, 2.1, 0.010, 990, 1000),
    (12, 1.8, 0.020, 510, 510),
]  # fmt: skip


@pytest.mark.parametrize(("supply_v", "led_v", "amps", "exact", "bought"), LED_RESISTORS)
def test_led_resistors_of_published_examples(supply_v, led_v, amps, exact, bought):
    ohms = (supply_v - led_v) / amps
    assert ohms == pytest.approx(exact)
    assert next_e24_up(ohms) == bought


@settings(deadline=None)
@given(st.floats(1e-2, 1e8))
def test_neighbours_enclose_the_value(ohms):
    below, above = next_down(ohms), next_up(ohms)
    assert below <= ohms * (1 + 1e-8) and above >= ohms * (1 - 1e-8)
    assert is_preferred(below) and is_preferred(above)
    assert nearest(ohms) in (below, above)
    assert above / below < 1.154  # 13 to 15 is the widest step of the row


@pytest.mark.parametrize("ohms", [0.0, -1.0, math.nan, math.inf])
def test_no_resistance_has_no_neighbour(ohms):
    with pytest.raises(ValueError, match="no resistance"):
        next_e24_up(ohms)


# IEC 60062 reference chart.
@pytest.mark.parametrize(
    ("ohms", "tolerance", "printed"),
    [(1000, 0.05, "brown black red gold"), (4700, 0.05, "yellow violet red gold"),
     (22_000, 0.05, "red red orange gold"), (10, 0.01, "brown black black gold brown")],
)  # fmt: skip
def test_bands_of_the_reference_chart(ohms, tolerance, printed):
    assert bands(ohms, tolerance).colours == tuple(printed.split())


@pytest.mark.parametrize("ohms", [0.0, math.nan, 12_345.0, 1e15])
def test_values_without_bands_are_refused(ohms):
    with pytest.raises(ValueError, match="band"):
        bands(ohms)
