"""However turnouts, buttons, diodes, relays and units are wired: an answer or a sentence, never an error."""

import math

from hypothesis import given, settings
from hypothesis import strategies as st
from support.findings import situation
from support.networks import draw, kinds

from wiring.studies.throws.inrush import rushes
from wiring.studies.throws.pulse_for import pulse_for

PARTS = {
    "G1": "supply-regulated", "G2": "supply-ac", "C1": "discharge-unit", "C2": "discharge-unit",
    "S1": "push-to-make", "S2": "push-to-make", "S3": "toggle-on-on", "R1": "diode", "K1": "relay",
    "M1": "twin-coil", "M2": "twin-coil", "F1": "fuse", "E1": "lamp-12v", "M3": "servo",
}  # fmt: skip
ENDS = [f"{name}:{t.name}" for name, kind in PARTS.items() for t in kinds()[kind].terminals]
# Mostly sound: a unit on the supply, a coil behind a button; then whatever else is drawn.
SOUND = [("G1:+", "C1:+"), ("G1:-", "C1:-"), ("C1:O", "S1:13"), ("S1:14", "M1:N"), ("M1:C", "C1:-")]
missing = st.one_of(st.none(), st.sampled_from(SOUND))
wires = st.lists(st.tuples(st.sampled_from(ENDS), st.sampled_from(ENDS)), max_size=6)
wild = st.one_of(st.floats(allow_nan=False), st.just("text"))
fair = st.floats(1e-3, 20.0)
values = st.one_of(fair, fair, fair, wild)
unit_settings = st.dictionaries(st.sampled_from(["capacitance", "charge_ohm", "open_v"]), values, max_size=2)
coil_settings = st.dictionaries(st.sampled_from(["coil_ohm", "rise", "rated_v", "pulse"]), values, max_size=2)
answered = [0]


@given(missing, wires, unit_settings, coil_settings, st.floats(0.0, 20.0))
@settings(max_examples=60, deadline=None)
def _every_coil_has_an_answer(gone, more, unit, coil, length_m):
    parts = {**PARTS, "C1": ("discharge-unit", unit), "M1": ("twin-coil", coil)}
    plan = draw(parts, [*(w for w in SOUND if w != gone), *((a, b) for a, b in more if a != b)], length_m)
    for motor in ("M1", "M2"):
        for end in ("N", "R"):
            answer = pulse_for(plan, kinds(), motor, end)
            assert (answer.pulse is None) == bool(answer.why)
            assert answer.why.endswith(".") or answer.pulse is not None
            if answer.pulse is not None:
                answered[0] += 1
                pulse = answer.pulse
                numbers = (pulse.peak_a, pulse.energy_coil_j, pulse.margin, pulse.recharge_s, pulse.left_v)
                assert all(math.isfinite(n) for n in numbers)
                assert pulse.peak_a > 0 and pulse.energy_coil_j > 0
    seen = situation(plan)
    for rush in rushes(plan, kinds(), seen.positions, seen.figures).values():
        assert 0.0 <= rush.hot_a <= rush.cold_a < math.inf


def test_every_coil_has_an_answer():
    answered[0] = 0
    _every_coil_has_an_answer()
    assert answered[0] >= 3  # not all of them sentences
