"""Filament lamps above and below their rated voltage, in a plan, against the printed re-rating law.

The encyclopaedia page "Lamp rerating" prints the exponents after Fink & Beaty, Standard Handbook for
Electrical Engineers, 11th ed. 1978, p. 22-8: current 0.55, light 3.4 to 3.5, life -12 to -16.
"""

import pytest
from support.findings import found
from support.networks import draw, stiff
from support.solved import solved

# Volts over rated volts: current, light with 3.4 and with 3.5; computed from the exponents to three digits.
RERATED = {
    0.70: (0.822, 0.297, 0.287), 0.80: (0.885, 0.468, 0.458), 0.90: (0.944, 0.699, 0.692),
    0.95: (0.972, 0.840, 0.836), 1.05: (1.027, 1.180, 1.186), 1.10: (1.054, 1.383, 1.396),
}  # fmt: skip


@pytest.mark.parametrize(("ratio", "printed"), RERATED.items())
@pytest.mark.parametrize(("kind", "rated_v", "rated_a"), [("lamp-12v", 12.0, 0.05), ("lamp-1v5", 1.5, 0.03)])
def test_lamps_follow_the_rerating_law(kind, rated_v, rated_a, ratio, printed):
    current, *light = printed
    lamp = (kind, {"rated_v": rated_v, "rated_a": rated_a})
    plan = draw({"G": stiff(ratio * rated_v), "E": lamp}, [("G:+", "E:1"), ("E:2", "G:-")])
    figure = solved(plan).parts["E"]
    assert figure.current_a / rated_a == pytest.approx(current, abs=1e-3)
    assert min(light) - 2e-3 <= figure.light <= max(light) + 2e-3
    assert figure.power_w == pytest.approx(ratio * rated_v * current * rated_a, rel=2e-3)


@pytest.mark.parametrize(("ratio", "said"), [(1.15, "19 %"), (1.25, "7 %"), (1.4, "2 %")])
def test_a_lamp_on_too_many_volts_is_told_what_is_left_of_its_life(ratio, said):
    """1.15, 1.25 and 1.4 to the power -12, the longer life of the two the page prints, by a calculator."""
    plan = draw({"G1": stiff(ratio * 12.0), "E1": "lamp-12v"}, [("G1:+", "E1:1"), ("E1:2", "G1:-")])
    why = found(plan, "lamp-over-volts").why
    assert why == f"It lasts at most about {said} of the hours it would at its rated volts."
