"""Whatever a person draws or a file holds, examining it gives an answer with sane numbers and words."""

import math
import time
from pathlib import Path

import msgspec
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from support.findings import situation
from support.networks import draw, kinds, lamp_street

from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.plan.names import TerminalRef

KEYS = sorted(kinds())
ODD_NUMBERS = (0.0, -1.0, 0.37, 1e9, float("nan"), float("inf"))
ODD_TEXTS = ("many", "", "2026-02-31", 3.0)
SIZES = ("22 AWG", "26 AWG", "0.14 mm²", "no size", "18 AWG")

DEMOS = Path(__file__).parents[2] / "demo_layouts"
SOUND = (
    load(DEMOS / "quay.underboard"),
    load(DEMOS / "siding.underboard"),
    lamp_street(4, "lamp-16v", "supply-ac"),
    draw(
        {"G1": "battery-9v", "K1": "relay", "S1": "push-to-make", "M1": "twin-coil", "A1": "sound-module"},
        [
            ("G1:+", "S1:13"), ("S1:14", "K1:A1"), ("K1:A2", "G1:-"), ("G1:+", "K1:11"), ("K1:14", "M1:N"),
            ("M1:C", "G1:-"), ("K1:12", "A1:+"), ("A1:-", "G1:-"),
        ],
    ),
)  # fmt: skip


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


@st.composite
def spoiled(draw_from):
    """A sound plan with some of the slips a builder makes."""
    plan = draw_from(st.sampled_from(SOUND))
    terminals = [TerminalRef(p.id, t.name) for p in plan.parts.values() for t in kinds()[p.kind].terminals]
    for _ in range(draw_from(st.integers(1, 5))):
        wires, parts = dict(plan.wires), dict(plan.parts)
        wire = wires[draw_from(st.sampled_from(sorted(wires)))]
        part = parts[draw_from(st.sampled_from(sorted(parts)))]
        slip = draw_from(
            st.sampled_from(["lost wire", "wrong end", "thin", "lost part", "thrown", "swapped"])
        )
        if slip == "lost wire" and len(wires) > 1:
            del wires[wire.id]
        elif slip == "wrong end":
            end = draw_from(st.sampled_from(terminals))
            wires[wire.id] = msgspec.structs.replace(wire, end=end)
        elif slip == "thin":
            size = draw_from(st.sampled_from(SIZES))
            wires[wire.id] = msgspec.structs.replace(wire, size=size, length_m=30.0)
        elif slip == "lost part" and len(parts) > 1:
            del parts[part.id]
        elif slip == "thrown" and kinds()[part.kind].positions:
            names = [p.name for p in kinds()[part.kind].positions]
            parts[part.id] = msgspec.structs.replace(part, position=draw_from(st.sampled_from(names)))
        elif slip == "swapped":
            wires[wire.id] = msgspec.structs.replace(wire, start=wire.end, end=wire.start)
        plan = plan.with_changes(wires=wires, parts=parts)
    return plan


QUICK = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])


@settings(QUICK, max_examples=80)
@given(plans())
def test_every_plan_can_be_examined(plan):
    _check(plan)


@settings(QUICK, max_examples=40)
@given(spoiled())
def test_every_slip_in_a_sound_plan_can_be_examined(plan):
    _check(plan)


def _check(plan):
    answer = situation(plan)
    for finding in answer.findings:
        for sentence in (finding.what, finding.why, finding.mend):
            assert 0 < len(sentence) < 260  # 200 is what a contract holds; odd names may make it longer here
            assert "nan" not in sentence.split()
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
