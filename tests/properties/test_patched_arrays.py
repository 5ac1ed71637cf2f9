"""Branch arrays patched after edits are those that the plan gives afresh, and so are the figures."""

import random

import msgspec
import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from support.networks import kinds, lamp_street
from support.random_networks import networks, settings_of

from wiring.circuit.assembly import assemble
from wiring.circuit.building import build
from wiring.circuit.folding import fold
from wiring.circuit.solve import solve
from wiring.plan.plan import Plan

SOME = settings(max_examples=60, suppress_health_check=list(HealthCheck))


def edited(plan: Plan, pick: random.Random) -> Plan:
    """One edit of a kind a person makes: settings, place, length, size, or a wire or part gone."""
    part = pick.choice(list(plan.parts.values()))
    if not plan.wires or pick.random() < 0.4:
        changes = (
            {"settings": settings_of(kinds()[part.kind], pick)}
            if pick.random() < 0.6
            else {"x_mm": part.x_mm + 900.0}
        )
        return plan.with_changes(parts={**plan.parts, part.id: msgspec.structs.replace(part, **changes)})
    wire = pick.choice(list(plan.wires.values()))
    if pick.random() < 0.2:
        return plan.with_changes(wires={k: w for k, w in plan.wires.items() if k != wire.id})
    changes = {
        "length_m": pick.choice((None, 0.2, 9.0)),
        "size": pick.choice(("18 AWG", "0.5 mm²", "no size")),
    }
    if pick.random() < 0.2:
        changes["end"] = pick.choice(list(plan.wires.values())).start
    return plan.with_changes(wires={**plan.wires, wire.id: msgspec.structs.replace(wire, **changes)})


@SOME
@given(networks(largest=8), st.integers(0, 2**32))
def test_patched_arrays_are_built_arrays(plan: Plan, seed: int) -> None:
    pick, known = random.Random(seed), kinds()
    figures = solve(plan, known, {})
    for _ in range(6):
        plan = edited(plan, pick)
        patched, built = assemble(plan, known, {}), build(plan, known, {})
        for name in ("node_of", "laws", "a", "b", "values", "alternating", "conducting", "sources"):
            assert np.array_equal(getattr(patched, name), getattr(built, name)), name
        for name in ("roles", "owners", "spans", "wires", "troubles", "parts", "first_terminal"):
            assert getattr(patched, name) == getattr(built, name), name
        assert tuple(patched.refs) == tuple(built.refs)
        figures = solve(plan, known, {}, figures)
        afresh = solve(msgspec.structs.replace(plan, habits=msgspec.structs.replace(plan.habits)), known, {})
        assert set(figures.parts) == set(afresh.parts)
        assert figures.problems == afresh.problems
        for part, figure in afresh.parts.items():
            assert figures.parts[part].volts_v == pytest.approx(figure.volts_v, rel=1e-6, abs=1e-6)
            assert figures.parts[part].current_a == pytest.approx(figure.current_a, rel=1e-6, abs=1e-6)


def test_a_change_of_value_is_patched_and_a_change_of_wiring_is_not() -> None:
    plan, known = lamp_street(5), kinds()
    first = assemble(plan, known, {})
    lamp = msgspec.structs.replace(plan.parts["E2"], settings={"series_ohm": 700.0})
    second = assemble(plan.with_changes(parts={**plan.parts, "E2": lamp}), known, {})
    assert second.kept is first.kept
    assert second.values[second.spans["E2"][0], 2] != first.values[first.spans["E2"][0], 2]
    fewer = dict(list(plan.wires.items())[:-1])
    assert assemble(plan.with_changes(wires=fewer), known, {}).kept is not first.kept


def test_a_lamp_with_its_wires_is_folded_into_one_branch() -> None:
    """A ring 0-1-2-3 of source, resistor, junction and resistor: only the source's two nodes are left."""
    laws, a, b = np.array([1, 0, 2, 0]), np.array([0, 0, 2, 3]), np.array([3, 1, 1, 2])
    folded = fold(laws, a, b, np.array([9.0, 5.0, -20.0, 7.0]), 4, np.array([3]))
    assert sorted(folded.left.tolist()) == [0, 2]
    assert np.flatnonzero(folded.passed).tolist() == [1, 2]
    assert {int(folded.into[n]) for n in (1, 2, 3)} == {2}
    assert folded.sense[1] == -1.0  # runs from 0 to 1 where the junction runs from 2 to 1
    assert folded.sense[3] == 1.0
