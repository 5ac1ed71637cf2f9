"""What is shown can be typed again and means the same, within the digits shown."""

import math
import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from wiring.quantities.quantity import SIGNED, Quantity
from wiring.quantities.reading import read
from wiring.quantities.wording import INCH_M, LARGEST, SCALES, worded

SPAN = {Quantity.FRACTION: (1e-4, 1.0), Quantity.TEMPERATURE: (0.01, 200.0), Quantity.COUNT: (1.0, 999.0)}
LEAST = {Quantity.AREA: 1e-3, Quantity.CAPACITANCE: 1e-12}


@st.composite
def values(draw):
    quantity = draw(st.sampled_from(Quantity))
    low, high = SPAN.get(quantity, (LEAST.get(quantity, 1e-5), 1e5))
    value = math.exp(draw(st.floats(math.log(low), math.log(high))))
    if quantity is Quantity.COUNT:
        value = float(round(value))
    if quantity in SIGNED and draw(st.booleans()):
        value = -value
    return quantity, min(value, high)


@settings(deadline=None)
@given(values(), st.sampled_from(["metric", "us"]))
@example((Quantity.CURRENT, 0.9997), "metric")
@example((Quantity.LENGTH, 0.30479), "us")
@example((Quantity.LENGTH, 2.4383), "us")
@example((Quantity.DURATION, 0.9999), "metric")
@example((Quantity.TEMPERATURE, -17.7778), "us")
def test_worded_values_read_back(given_value, units):
    quantity, value = given_value
    shown = worded(value, quantity, units)
    tolerance = 5.01e-3 * abs(value)
    if units == "us" and quantity is Quantity.LENGTH:
        # Whole inches from a foot up; below, thousandths of an inch are the last digit.
        tolerance = max(tolerance, (0.501 if abs(value) >= 0.3 else 5e-4) * INCH_M)
    if quantity is Quantity.TEMPERATURE:
        tolerance = max(tolerance, 0.5 / 1.8) if units == "us" else tolerance
    last_digit = 5e-4 * (SCALES[quantity][-1][1] if quantity in SCALES else 1.0)
    assert read(shown, quantity) == pytest.approx(value, rel=0.0, abs=max(tolerance, last_digit))


@settings(deadline=None)
@given(values(), st.sampled_from(["metric", "us"]))
def test_at_most_three_digits_count(given_value, units):
    quantity, value = given_value
    shown = worded(value, quantity, units)
    if "ft" in shown and "in" in shown:
        return
    digits = re.sub(r"[^0-9.]", "", shown.split(" ")[0])
    if "." in digits:
        assert len(digits.replace(".", "").strip("0")) <= 3
        assert not digits.endswith("0")
    assert "e" not in shown.split(" ")[0]


@settings(deadline=None)
@given(st.floats(), st.sampled_from(Quantity), st.sampled_from(["metric", "us"]))
def test_no_float_is_ever_shown_as_nan_or_infinite(value, quantity, units):
    shown = worded(value, quantity, units)
    assert "nan" not in shown and "inf" not in shown.replace("in", "") and shown
    assert (shown == "–") == (not abs(value) <= LARGEST)


@pytest.mark.parametrize(
    ("value", "quantity", "units", "shown"),
    [
        (0.0182, "current", "metric", "18.2 mA"), (11.8, "voltage", "metric", "11.8 V"),
        (2.4, "length", "metric", "2.4 m"),
        (2.4, "length", "us", "7 ft 10 in"), (0.1, "length", "us", "3.94 in"),
        (2.4384, "length", "us", "8 ft"),
        (12.0, "voltage", "metric", "12 V"), (0.9, "voltage", "metric", "0.9 V"),
        (0.045, "voltage", "metric", "45 mV"),
        (4700.0, "resistance", "metric", "4.7 kΩ"), (0.25, "power", "metric", "0.25 W"),
        (0.1, "fraction", "metric", "10 %"),
        (2.5, "charge", "metric", "2.5 Ah"), (0.718, "charge", "metric", "718 mAh"),
        (4.7e-3, "capacitance", "metric", "4700 µF"),
        (0.1, "time", "metric", "100 ms"), (0.75, "duration", "metric", "45 min"),
        (16.67, "duration", "metric", "16.7 h"),
        (20.0, "temperature", "us", "68 °F"), (-0.0182, "current", "metric", "−18.2 mA"),
        (0.0, "current", "metric", "0 A"),
        (0.85, "length", "metric", "85 cm"), (0.03, "length", "metric", "30 mm"),
        (0.9999, "current", "metric", "1 A"),
        (1234.0, "count", "metric", "1234"), (3.0, "count", "metric", "3"),
        (0.5, "area", "metric", "0.5 mm²"),
        (math.inf, "current", "metric", "–"),
    ],
)  # fmt: skip
def test_values_as_people_read_them(value, quantity, units, shown):
    assert worded(value, quantity, units) == shown


def test_a_current_that_no_meter_of_the_hobby_reads_is_nothing():
    assert worded(-1.22e-8, "current") == "0 A"
    assert worded(2e-7, "current") == "0.2 µA"
