"""Whatever is drawn, solving it gives finite figures that obey Kirchhoff, or names what is left out.

test_many_networks asks the same of two thousand; here a failure shrinks to the least that fails.
"""

from collections.abc import Iterable
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from support.networks import draw, lamp_street
from support.random_networks import networks
from support.solved import check_power, check_problems, solved, unsolved

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.figures import Figures
from wiring.plan.plan import Plan

ANYTHING = settings(max_examples=60, suppress_health_check=list(HealthCheck))
FEWER = settings(ANYTHING, max_examples=50)


@ANYTHING
@given(networks())
def test_figures_are_finite_or_the_part_is_named(plan: Plan) -> None:
    figures = solved(plan)
    assert set(figures.parts) | unsolved(figures) == set(plan.parts)
    check_problems(plan, figures)
    check_power(plan, figures)


def test_power_into_a_converter_counts_as_taken() -> None:
    """One whose output is shorted takes next to nothing for itself and gives all of it to a wire."""
    plan = draw(
        {"P0": "supply-regulated", "P6": "converter-5v"},
        [("P0:+", "P6:+", {"length_m": 5.0}), ("P0:-", "P6:-"), ("P6:O", "P6:-", {"length_m": 0.3})],
    )
    figures = solved(plan)
    assert figures.supplies["P6"].power_w > 0.05
    check_power(plan, figures)


@FEWER
@given(networks(largest=6), st.randoms(use_true_random=False))
def test_the_order_of_parts_and_wires_does_not_matter(plan: Plan, random: "st.Random") -> None:
    first = solved(plan)
    if unsolved(first):
        return
    shuffled = plan.with_changes(
        parts=_shuffled(plan.parts.items(), random), wires=_shuffled(plan.wires.items(), random)
    )
    second = solved(shuffled)
    assert_alike(second, first, 1e-5)


@FEWER
@given(networks(largest=6))
def test_a_start_from_figures_changes_nothing(plan: Plan) -> None:
    cold = solved(plan)
    warm = solved(plan, start=cold)
    assert_alike(warm, cold, 1e-6)


@FEWER
@given(networks(largest=6))
def test_a_start_from_another_plan_changes_nothing(plan: Plan) -> None:
    """As after an edit: the figures to start from are those of the plan with its first wire gone."""
    if not plan.wires:
        return
    before = solved(plan.with_changes(wires=dict(list(plan.wires.items())[1:])))
    cold, warm = solved(plan), solved(plan, start=before)
    assert_alike(warm, cold, 1e-6)


@FEWER
@given(networks(largest=6))
def test_a_loose_part_beside_changes_nothing(plan: Plan) -> None:
    alone = solved(plan)
    extra = draw({"Z1": "lamp-12v"}, [])
    beside = solved(plan.with_changes(parts={**plan.parts, **extra.parts}))
    assert beside.parts["Z1"].current_a == 0.0
    for part, figure in alone.parts.items():
        assert beside.parts[part].volts_v == pytest.approx(figure.volts_v, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("key", builtin_kinds())
def test_every_kind_solves_alone_and_across_a_battery(key: str) -> None:
    kind = builtin_kinds()[key]
    for position in [p.name for p in kind.positions] or [""]:
        alone = solved(draw({"A": (key, {}, position)}, []))
        assert alone.parts["A"].current_a == 0.0
        one, other = kind.terminals[0].name, kind.terminals[-1].name
        both = solved(draw({"A": (key, {}, position), "G": "battery-alkaline"},
                           [("G:+", f"A:{one}"), ("G:-", f"A:{other}")], 0.3))  # fmt: skip
        assert "A" in both.parts


@settings(max_examples=25)
@given(st.integers(1, 40))
def test_lamps_along_a_street_only_get_dimmer(lamps: int) -> None:
    figures = solved(lamp_street(lamps))
    lights = [figures.parts[f"E{n}"].light or 0.0 for n in range(1, lamps + 1)]
    assert all(near >= far > 0 for near, far in pairwise(lights))


def assert_alike(one: Figures, other: Figures, within: float) -> None:
    for part, figure in other.parts.items():
        assert one.parts[part].volts_v == pytest.approx(figure.volts_v, rel=within, abs=within)
        assert one.parts[part].current_a == pytest.approx(figure.current_a, rel=within, abs=within)


def _shuffled(items: "Iterable[tuple[str, object]]", random: "st.Random") -> dict[str, object]:
    listed = list(items)
    random.shuffle(listed)
    return dict(listed)
