"""Whatever is typed, reading gives a finite value or one plain sentence."""

import math
import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from wiring.quantities.quantity import EXAMPLES, SIGNED, Quantity
from wiring.quantities.reading import NotUnderstood, read

quantities = st.sampled_from(Quantity)
typed = st.one_of(
    st.text(max_size=80),
    st.text(alphabet="0123456789.,/-+ eE'\"½²µΩ°%kmMAVRhFin", max_size=30),
    st.from_regex(r"[0-9]{1,4}[.,]?[0-9]{0,3} ?(mA|V|Ω|R|k|ft|in|m|mAh|%|h|W|'|°C|µF|mm²)", fullmatch=True),
)


@settings(deadline=None)
@given(typed, quantities)
@example("1e999", Quantity.VOLTAGE)
@example("9" * 60, Quantity.RESISTANCE)
@example("1/0 in", Quantity.LENGTH)
@example("0/0", Quantity.COUNT)
@example("1e-400 °F", Quantity.TEMPERATURE)
@example("\x00", Quantity.CURRENT)
@example("٣ V", Quantity.VOLTAGE)
@example("1e308 km", Quantity.LENGTH)
@example("1 " * 30, Quantity.LENGTH)
def test_reading_never_fails_otherwise(text, quantity):
    try:
        value = read(text, quantity)
    except NotUnderstood as refusal:
        sentence = str(refusal)
        assert sentence.endswith(f"type for example {EXAMPLES[quantity]}.")
        assert "\n" not in sentence and len(sentence) < 200
    else:
        assert math.isfinite(value) and abs(value) <= 1e12
        assert value >= 0.0 or quantity in SIGNED


@settings(deadline=None)
@given(quantities)
def test_every_example_can_be_read(quantity):
    for text in EXAMPLES[quantity].split(" or "):
        assert read(text, quantity) > 0.0


@pytest.mark.parametrize(
    ("text", "quantity", "value"),
    [
        ("22 mA", "current", 0.022), ("20ma", "current", 0.02), ("500 µA", "current", 5e-4),
        ("1.5", "current", 1.5),
        ("500 uA", "current", 5e-4), ("12 V", "voltage", 12.0), ("12v", "voltage", 12.0),
        ("3V3", "voltage", 3.3),
        ("−5 V", "voltage", -5.0), ("2,4 V", "voltage", 2.4), ("470 Ω", "resistance", 470.0),
        ("470R", "resistance", 470.0), ("4k7", "resistance", 4700.0), ("4R7", "resistance", 4.7),
        ("R47", "resistance", 0.47), ("1M2", "resistance", 1.2e6), ("4,7 kΩ", "resistance", 4700.0),
        ("10 kohm", "resistance", 1e4), ("10 000", "resistance", 1e4), ("12 mΩ", "resistance", 0.012),
        ("8 ft 6 in", "length", 2.5908), ("8' 6\"", "length", 2.5908), ("8′ 6″", "length", 2.5908),
        ("8'6", "length", 2.5908), ("8 ft", "length", 2.4384), ("6 in.", "length", 0.1524),
        ("1 1/2 in", "length", 0.0381), ("1½ in", "length", 0.0381), ("5' 1/2\"", "length", 1.5367),
        ("2.4 m", "length", 2.4), ("85 cm", "length", 0.85), ("1200mm", "length", 1.2),
        ("2500 mAh", "charge", 2.5), ("2.5 Ah", "charge", 2.5), ("3 h", "duration", 3.0),
        ("90 min", "duration", 1.5), ("100 ms", "time", 0.1), ("2 min", "time", 120.0),
        ("10 %", "fraction", 0.1),
        ("0,25", "fraction", 0.25), ("68 °F", "temperature", 20.0), ("-5 °C", "temperature", -5.0),
        ("4700 µF", "capacitance", 4.7e-3), ("4n7", "capacitance", 4.7e-9), ("0.25 W", "power", 0.25),
        ("1/4 W", "power", 0.25), ("0.75 mm²", "area", 0.75), ("0.75 mm2", "area", 0.75), ("3", "count", 3.0),
        ("1,234.5 mA", "current", 1.2345), ("1.234,5 mA", "current", 1.2345),
        ("1,000,000 Ω", "resistance", 1e6), ("1.000.000 Ω", "resistance", 1e6),
    ],
)  # fmt: skip
def test_values_as_people_type_them(text, quantity, value):
    assert read(text, quantity) == pytest.approx(value, rel=1e-9)


@pytest.mark.parametrize(
    ("text", "quantity", "said"),
    [
        ("20 mA", "voltage", "“20 mA” is a current, not a voltage; type for example 12 V."),
        ("12 V", "length", "“12 V” is a voltage, not a length; type for example 2.4 m or 8 ft 6 in."),
        ("", "current", "Nothing was typed where a current is wanted; type for example 20 mA."),
        ("lots", "current", "“lots” cannot be read as a current; type for example 20 mA."),
        ("-3 m", "length", "“-3 m” is less than nothing; type for example 2.4 m or 8 ft 6 in."),
        ("120 %", "fraction", "“120 %” is more than the whole; type for example 10 %."),
        ("2.5", "count", "“2.5” is not a whole number; type for example 3."),
        ("-300 °C", "temperature", "“-300 °C” is colder than anything can be; type for example 20 °C."),
    ],
)
def test_refusals_say_what_was_typed_and_what_is_wanted(text, quantity, said):
    with pytest.raises(NotUnderstood, match=f"^{re.escape(said)}$"):
        read(text, quantity)


@pytest.mark.parametrize("text", ["1,000 Ω", "12,500", "8,125 kΩ"])
def test_what_could_mean_two_numbers_is_not_guessed(text):
    with pytest.raises(NotUnderstood, match="two ways"):
        read(text, "resistance")


@pytest.mark.parametrize(("bare", "value"), [("", 8.0), ("ft", 2.4384), ("mm", 0.008)])
def test_a_bare_number_takes_the_unit_it_is_told(bare, value):
    assert read("8", "length", bare=bare) == pytest.approx(value)
    assert read("8 m", "length", bare=bare) == 8.0


@settings(deadline=None)
@given(st.floats(1e-3, 1e5), st.sampled_from(["m", "cm", "mm", "in", "ft"]))
def test_comma_and_point_mean_the_same(value, unit):
    text = f"{value:.4f} {unit}"
    assert read(text.replace(".", ","), "length") == read(text, "length")


@settings(deadline=None)
@given(st.integers(0, 500), st.integers(0, 11))
def test_feet_and_inches_add_up(feet, inches):
    expected = (12 * feet + inches) * 0.0254
    for text in (
        f"{feet} ft {inches} in",
        f"{feet}' {inches}\"",
        f"{feet}'{inches}",
        f"{feet} feet {inches} inches",
    ):
        assert read(text, "length") == pytest.approx(expected)
