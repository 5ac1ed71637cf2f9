"""Preferred values and resistor bands against IEC 60063 and IEC 60062, by another package and by print."""

import math
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.findings import found
from support.networks import draw, stiff

from wiring.standards.preferred import E24, next_e24_up
from wiring.standards.resistor_bands import bands


def test_the_series_is_that_of_the_eseries_package():
    eseries = pytest.importorskip("eseries", reason="the eseries package is the outside check here")
    theirs = eseries.series(eseries.ESeries.E24)
    assert [round(value * 10 / theirs[0]) for value in theirs] == list(E24)


@settings(deadline=None)
@given(st.floats(1e-3, 1e7).map(lambda v: float(f"{v:.4g}")))
def test_next_value_up_is_that_of_the_eseries_package(ohms):
    eseries = pytest.importorskip("eseries", reason="the eseries package is the outside check here")
    theirs = eseries.find_greater_than_or_equal(eseries.ESeries.E24, ohms)
    assert next_e24_up(ohms) == pytest.approx(theirs, rel=1e-6)


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
    """An LED straight across the supply is told which one to get."""
    assert (supply_v - led_v) / amps == pytest.approx(exact)  # the example itself adds up
    led = ("led-red-bare", {"forward_v": led_v, "forward_a": amps, "max_a": 2 * amps})
    plan = draw({"G": stiff(supply_v), "E": led}, [("G:+", "E:A"), ("E:K", "G:-")])
    mend = found(plan, "led-without-resistor").mend
    value, kilo = re.search(r"a resistor of ([\d.]+) (k?)Ω", mend).groups()
    assert float(value) * (1000.0 if kilo else 1.0) == pytest.approx(bought)


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
