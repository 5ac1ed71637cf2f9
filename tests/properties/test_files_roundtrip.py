"""Plans go to bytes and back without loss, and anything else is refused in words, never with a traceback."""

import json

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from support.editing import KINDS, plans, quay

from wiring.edits.move import move
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable
from wiring.plan.plan import Plan
from wiring.plan.soundness import unsound

VALID = encode(quay())
TOKENS = [
    b"{",
    b"}",
    b"[",
    b"]",
    b",",
    b":",
    b'"',
    b"null",
    b"-1",
    b"1e999",
    b"NaN",
    b"\xff",
    b"\x00",
    b'"p2"',
]


@given(plans())
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_a_plan_comes_back_equal_and_saves_back_byte_for_byte(plan):
    data = encode(plan)
    back = decode(data)
    assert back == plan
    assert encode(back) == data
    assert unsound(back, KINDS) == ()


def test_lines_kept_from_the_encoding_before_are_those_of_the_same_records_only():
    plan = quay()
    encode(plan)
    moved = move(["p2"], 5, 0).apply(plan)
    assert encode(moved) == encode(decode(encode(moved))) != encode(plan)
    assert encode(plan) == VALID


@given(plans())
@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_spacing_and_order_of_keys_do_not_matter(plan):
    raw = json.loads(encode(plan))
    loose = json.dumps({key: raw[key] for key in reversed(raw)}, indent=3).encode()
    assert decode(loose) == plan


@st.composite
def damaged(draw):
    data = bytearray(VALID)
    for _ in range(draw(st.integers(1, 3))):
        at = draw(st.integers(0, len(data)))
        until = min(len(data), at + draw(st.integers(0, 40)))
        kind = draw(st.sampled_from(["cut", "put", "flip", "double", "end"]))
        if kind == "cut":
            del data[at:until]
        elif kind == "put":
            data[at:at] = draw(st.sampled_from(TOKENS) | st.binary(max_size=4))
        elif kind == "flip" and at < len(data):
            data[at] ^= 1 << draw(st.integers(0, 7))
        elif kind == "double":
            data[at:at] = data[at:until]
        else:
            del data[at:]
    return bytes(data)


def _plan_or_words(data):
    try:
        plan = decode(data)
    except NotReadable as reason:
        assert str(reason).endswith(".") and "\n" not in str(reason) and len(str(reason)) < 400
        return
    assert isinstance(plan, Plan)
    assert unsound(plan) == ()
    assert decode(encode(plan)) == plan


@given(damaged())
@settings(max_examples=600, deadline=None)
def test_a_damaged_file_gives_a_plan_or_a_sentence(data):
    _plan_or_words(data)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)


@given(st.data())
@settings(max_examples=400, deadline=None)
def test_any_value_in_any_place_gives_a_plan_or_a_sentence(data):
    raw = json.loads(VALID)
    here, key = raw, data.draw(st.sampled_from(sorted(raw)))
    while isinstance(here[key], dict | list) and here[key] and data.draw(st.booleans()):
        here = here[key]
        key = data.draw(st.sampled_from(sorted(here) if isinstance(here, dict) else range(len(here))))
    here[key] = data.draw(JSON)
    _plan_or_words(json.dumps(raw).encode())
