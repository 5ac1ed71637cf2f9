"""Whatever a person draws or a file holds, examining it gives an answer with sane numbers and words."""

import math
import time

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.support.findings import situation
from tests.support.networks import draw, kinds, lamp_street
from wiring.findings.situation import examine

KEYS = sorted(kinds())
ODD_NUMBERS = (0.0, -1.0, 0.37, 1e9, float("nan"), float("inf"))
ODD_TEXTS = ("many", "", "2026-02-31", 3.0)
SIZES = ("22 AWG", "26 AWG", "0.14 mm²", "no size", "18 AWG")


@st.composite
def plans(draw_from):
    chosen = draw_from(st.lists(st.sampled_from(KEYS), min_size=1, max_size=7))
    parts, terminals = {}, []
    for number, key in enumerate(chosen):
        kind = kinds()[key]
        given_values = {}
        if kind.settings and draw_from(st.booleans()):
            name = draw_from(st.sampled_from([s.name for s in kind.settings]))
            numbers = kind.setting(name).quantity not in ("text", "choice")
            given_values[name] = draw_from(st.sampled_from(ODD_NUMBERS if numbers else ODD_TEXTS))
        position = draw_from(st.sampled_from(["", "nonsense", *(p.name for p in kind.positions)]))
        parts[f"A{number}"] = (key, given_values, position)
        terminals += [f"A{number}:{t.name}" for t in kind.terminals]
    ends = st.sampled_from([*terminals, "A0:no such", "gone:1"])
    fields = st.fixed_dictionaries(
        {"size": st.sampled_from(SIZES), "length_m": st.sampled_from([0.0, 0.5, 40.0])}
    )
    wires = draw_from(st.lists(st.tuples(ends, ends, fields), max_size=14))
    return draw(parts, wires)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(plans())
def test_every_plan_can_be_examined(plan):
    answer = situation(plan)
    for finding in answer.findings:
        for sentence in (finding.what, finding.why, finding.mend):
            assert "nan" not in sentence.split()
            assert sentence
        assert set(finding.parts) <= set(plan.parts)
        assert set(finding.wires) <= set(plan.wires)
    for outlook in answer.outlooks.values():
        for span in (outlook.hours, outlook.sessions, outlook.days):
            assert 0 <= span.low <= span.typical <= span.high < math.inf
        assert math.isfinite(outlook.first_load_a)
        assert len(outlook.curve.hours) == len(outlook.curve.volts) == len(outlook.curve.days)
    for run in answer.runs.values():
        assert 0 <= run.drop_v < math.inf


def test_a_large_plan_is_examined_quickly():
    plan = lamp_street(120, "lamp-12v")
    figures = situation(plan).figures
    times = []
    for _ in range(3):
        start = time.process_time()
        examine(plan, kinds(), outlooks=False, figures=figures)
        times.append(time.process_time() - start)
    assert min(times) < 0.12  # 0.02 s on a quiet core; the rest is for a busy machine
