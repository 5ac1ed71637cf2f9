"""Figures and findings kept from edit to edit are those of the plan looked at for the first time.

UNDERBOARD_SEQUENCES=2000 runs more.
"""

import os
import random
from collections.abc import Iterator
from contextlib import contextmanager

import numpy as np
import pytest
from support.edit_steps import KINDS, STEPS, State
from support.networks import draw, lamp_street
from support.random_networks import network_of

from wiring.circuit import assembly
from wiring.circuit.figures import Figures
from wiring.circuit.solve import solve
from wiring.circuit.stretches import stretches
from wiring.circuit.table_changes import table_change
from wiring.findings.situation import Situation, examine
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.studies import kept_joints

SEQUENCES = int(os.environ.get("UNDERBOARD_SEQUENCES", "16"))
BATCHES = 4
EDITS = 6
SIDE_BY_SIDE = 3  # networks a plan, so that most edits leave some of it as it was
NEAR = 1e-9  # of the highest volts, the largest current and both together
DIGITS_A = 1e-12  # less is what rounding leaves, and the volts it makes across a diode's leak say nothing


@contextmanager
def nothing_kept() -> Iterator[None]:
    arrays, joints = assembly._recent, kept_joints._recent
    assembly._recent = kept_joints._recent = ()
    try:
        yield
    finally:
        assembly._recent, kept_joints._recent = arrays, joints


def side_by_side(seed: int) -> Plan:
    parts, wires = {}, []
    for number in range(SIDE_BY_SIDE):
        mine = network_of(SIDE_BY_SIDE * seed + number, f"N{number}P", largest=6)
        parts |= mine[0]
        wires += mine[1]
    return draw(parts, wires)


def check(kept: Figures, cold: Figures) -> None:
    highest_v = max((abs(volts) for volts in cold.terminals.values()), default=0.0) + 1e-12
    largest_a = max((abs(wire.current_a) for wire in cold.wires.values()), default=0.0)
    digits_a = max(DIGITS_A, NEAR * largest_a)
    assert list(kept.parts) == list(cold.parts)
    assert list(kept.wires) == list(cold.wires)
    assert list(kept.terminals) == list(cold.terminals)
    assert kept.problems == cold.problems
    assert kept.alternating == cold.alternating
    assert [set(circuit) for circuit in kept.circuits] == [set(circuit) for circuit in cold.circuits]
    for name, figure in cold.parts.items():
        now = kept.parts[name]
        assert now.state == figure.state
        assert now.current_a == pytest.approx(figure.current_a, rel=NEAR, abs=digits_a)
        assert now.power_w == pytest.approx(figure.power_w, rel=NEAR, abs=digits_a * highest_v)
        near_v = NEAR if abs(figure.current_a) > digits_a else 1e-5
        assert now.volts_v == pytest.approx(figure.volts_v, rel=near_v, abs=near_v * highest_v)
    for name, wire in cold.wires.items():
        assert kept.wires[name].current_a == pytest.approx(wire.current_a, rel=NEAR, abs=digits_a)
    for name, supply in cold.supplies.items():
        assert kept.supplies[name].limited == supply.limited


@pytest.mark.parametrize("batch", range(BATCHES))
def test_every_step_reads_as_if_it_were_the_first(batch: int) -> None:
    each = SEQUENCES // BATCHES
    for seed in range(batch * each, (batch + 1) * each):
        pick = random.Random(seed)
        plan = side_by_side(seed)
        state = State(plan, dict(in_use(plan, KINDS)))
        figures = solve(*_asked(state))
        for number in range(EDITS):
            state = pick.choice(STEPS)(state, pick, f"Q{number}")
            figures = solve(*_asked(state), figures)
            with nothing_kept():
                cold = solve(*_asked(state))
            check(figures, cold)


def test_findings_kept_from_edit_to_edit_are_those_of_a_first_look() -> None:
    for seed in range(5_000, 5_006):
        pick = random.Random(seed)
        plan = side_by_side(seed)
        state = State(plan, dict(in_use(plan, KINDS)))
        for number in range(EDITS):
            state = pick.choice(STEPS)(state, pick, f"Q{number}")
            kept = looked_at(state)
            with nothing_kept():
                cold = looked_at(state)
            assert kept.joints.edges.keys() == cold.joints.edges.keys()
            for ref, edges in cold.joints.edges.items():
                assert sorted(kept.joints.edges[ref]) == sorted(edges)
            assert [(f.rule, f.what, f.mend) for f in kept.findings] == [
                (f.rule, f.what, f.mend) for f in cold.findings
            ]
            assert kept.runs.keys() == cold.runs.keys()


def looked_at(state: State) -> Situation:
    return examine(*_asked(state), outlooks=False)


def _asked(state: State) -> tuple[Plan, dict, dict[str, str]]:
    return state.plan, KINDS, state.positions


def test_islands_an_edit_does_not_reach_are_not_solved_again(monkeypatch: pytest.MonkeyPatch) -> None:
    streets = [draw_street(prefix) for prefix in ("A", "B")]
    plan = streets[0].with_changes(
        parts={**streets[0].parts, **streets[1].parts}, wires={**streets[0].wires, **streets[1].wires}
    )
    figures = solve(plan, KINDS, {})
    solved: list[int] = []
    from wiring.circuit import direct

    before = direct.core_of_island

    def counted(*asked):
        solved.append(asked[2])
        return before(*asked)

    monkeypatch.setattr(direct, "core_of_island", counted)
    fewer = {name: wire for name, wire in plan.wires.items() if name != next(iter(streets[1].wires))}
    now = solve(plan.with_changes(wires=fewer), KINDS, {}, figures)
    assert len(solved) <= 1
    for part in streets[0].parts:
        assert now.parts[part] == figures.parts[part]


def draw_street(prefix: str) -> Plan:
    from msgspec.structs import replace

    plan = lamp_street(4)

    def moved(ref):
        return ref._replace(part=prefix + ref.part)

    parts = {prefix + k: replace(p, id=prefix + k, designation=prefix + k) for k, p in plan.parts.items()}
    wires = {
        prefix + k: replace(w, id=prefix + k, label=prefix + k, start=moved(w.start), end=moved(w.end))
        for k, w in plan.wires.items()
    }
    return plan.with_changes(parts=parts, wires=wires)


def test_stretches_put_rows_in_and_take_them_out() -> None:
    made = stretches(6, [1, 4], [0, 2, 2, 4, 6])
    assert made.spliced(np.arange(6), np.arange(100, 105)).tolist() == [100, 0, 101, 102, 2, 3, 103, 5, 104]
    assert made.joined("abcdef", "VWXYZ") == tuple("VaWXcdYfZ")
    assert made.places().tolist() == [1, -1, 4, 5, -1, 7]
    inner = made.within(np.array([1, 2, 0, 1, 1, 2]), np.array([0, 1, 1, 1, 2]))
    assert inner.spliced(np.arange(7), np.arange(100, 105)).tolist() == [0, 100, 101, 3, 102, 5, 6, 103, 104]


def test_a_change_of_a_table_names_what_is_gone_new_and_replaced() -> None:
    old = {name: object() for name in "abcdef"}
    new = {**old, "c": object(), "z": object()}
    del new["e"]
    found = table_change(old, new, 9)
    assert found is not None
    assert found.gone == (4,)
    assert found.put_in == ((6, new["z"]),)
    assert found.replaced == ((2, old["c"], new["c"]),)
    assert table_change(old, new, 2) is None
    assert table_change(old, dict(reversed(old.items())), 9) is None


def test_a_plan_taken_apart_to_nothing_and_put_together_again() -> None:
    whole = lamp_street(3)
    ids, plans = list(whole.parts), [whole]
    for count in range(len(ids) - 1, -1, -1):
        left = set(ids[:count])
        wires = {k: w for k, w in whole.wires.items() if {w.start.part, w.end.part} <= left}
        plans.append(whole.with_changes(parts={k: whole.parts[k] for k in ids[:count]}, wires=wires))
    for plan in (*plans, *reversed(plans)):
        figures = solve(plan, KINDS, {})
        with nothing_kept():
            check(figures, solve(plan, KINDS, {}))
