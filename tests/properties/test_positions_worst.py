"""The worst case over positions against going through every set by hand, and against its own bounds."""

import random
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from support.networks import draw, kinds, resistor, stiff

from wiring.circuit.solve import solve
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.studies.positions.options import HELD, MOVING, options
from wiring.studies.positions.sets import count, every, turns
from wiring.studies.positions.worst import Worst, worst_case


def house(ohms: tuple[float, ...], supply: object) -> Plan:
    """Loads on one pair of wires, each behind a switch of its own."""
    parts, wires = {"G": supply, "X1": "distribution-block-12", "X2": "distribution-block-12"}, []
    wires += [("G:+", "X1:1", {"length_m": 3.0}), ("G:-", "X2:1", {"length_m": 3.0})]
    for n, value in enumerate(ohms, 2):
        parts[f"S{n}"], parts[f"R{n}"] = "toggle-on-off", resistor(value)
        wires += [(f"X1:{n}", f"S{n}:13"), (f"S{n}:14", f"R{n}:1"), (f"R{n}:2", f"X2:{n}")]
    return draw(parts, wires, 0.5)


def by_hand(plan: Plan, reach: list[dict[str, str]]) -> dict[str, float]:
    worst: dict[str, float] = {}
    for positions in reach:
        figures = solve(plan, kinds(), positions)
        for name, figure in {**figures.wires, **figures.supplies}.items():
            worst[name] = max(worst.get(name, 0.0), abs(figure.current_a))
    return worst


def test_every_set_of_a_small_circuit_is_met() -> None:
    plan = house((20.0, 33.0, 47.0), "supply-unregulated")
    found = worst_case(plan, kinds(), in_use(plan, kinds()))
    switches = [p for p in plan.parts if p.startswith("S")]
    reach = [dict(zip(switches, how, strict=True)) for how in product(("off", "on"), repeat=3)]
    expected = by_hand(plan, reach)
    assert found.exact
    for name, worst in {**found.wires, **found.supplies}.items():
        assert worst.amps == pytest.approx(expected[name], rel=1e-9)
        again = solve(plan, kinds(), worst.positions)
        figure = {**again.wires, **again.supplies}[name]
        assert abs(figure.current_a) == pytest.approx(worst.amps, rel=1e-9)


@pytest.mark.parametrize(
    ("button", "ends", "together"), [("push-to-make", "34", 1), ("push-off-delay", "78", 3)]
)
def test_buttons_that_fall_back_late_run_together_and_others_one_at_a_time(
    button: str, ends: str, together: int
) -> None:
    parts, wires = {"G": stiff(12.0)}, []
    for n in range(3):
        parts[f"S{n}"], parts[f"R{n}"] = button, resistor(100.0)
        wires += [("G:+", f"S{n}:1{ends[0]}"), (f"S{n}:1{ends[1]}", f"R{n}:1"), (f"R{n}:2", "G:-")]
    plan = draw(parts, wires)
    most = worst_case(plan, kinds(), in_use(plan, kinds())).supplies["G"]
    assert most.amps == pytest.approx(0.12 * together, rel=1e-3)


def test_a_branch_wire_is_worst_when_the_others_are_off() -> None:
    """On a sagging supply a load has most when it is alone: the worst case of its wire is not "all on"."""
    plan = house((20.0, 33.0, 47.0), "supply-unregulated")
    worst = worst_case(plan, kinds(), in_use(plan, kinds()))
    own = next(w.id for w in plan.wires.values() if w.start.part == "S2")
    assert worst.wires[own].positions == {"S2": "on", "S3": "off", "S4": "off"}
    assert worst.supplies["G"].positions == {"S2": "on", "S3": "on", "S4": "on"}


def test_a_large_circuit_is_put_together_from_its_parts_and_says_so() -> None:
    """Six switches with room for eight sets: the same as all 64, but not called exact."""
    plan = house((20.0, 33.0, 47.0, 56.0, 68.0, 82.0), "supply-unregulated")
    whole = worst_case(plan, kinds(), {}, most_sets=64)
    put_together = worst_case(plan, kinds(), {}, most_sets=8)
    assert whole.exact and not put_together.exact
    assert put_together.sets_solved < whole.sets_solved
    for name, worst in whole.wires.items():
        assert put_together.wires[name].amps == pytest.approx(worst.amps, rel=1e-9)
    assert put_together.supplies["G"].amps == pytest.approx(whole.supplies["G"].amps, rel=1e-9)


def test_one_button_is_held_at_a_time() -> None:
    parts = {"G": stiff(16.0, 1.0), "X1": "distribution-block-6", "X2": "distribution-block-6"}
    wires = [("G:+", "X1:1"), ("G:-", "X2:1")]
    for n in (2, 3, 4):
        parts[f"S{n}"], parts[f"R{n}"] = "push-to-make", resistor(10.0 * n)
        wires += [(f"X1:{n}", f"S{n}:13"), (f"S{n}:14", f"R{n}:1"), (f"R{n}:2", f"X2:{n}")]
    plan = draw(parts, wires)
    found = worst_case(plan, kinds(), {})
    assert found.exact
    assert found.supplies["G"].amps == pytest.approx(16.0 / 21.02, rel=1e-4)
    assert [p for p in found.supplies["G"].positions.values() if p == "pressed"] == ["pressed"]


def test_one_turnout_moves_at_a_time() -> None:
    plan = turnouts(3)
    motor = {"rated_v": 12.0, "stalled_a": 0.015, "running_a": 0.05}
    parts = {k: replace(p, settings=motor) if k.startswith("M") else p for k, p in plan.parts.items()}
    plan = plan.with_changes(parts=parts)
    found = worst_case(plan, kinds(), {})
    moving = [p for p, position in found.supplies["G"].positions.items() if position == "moving"]
    assert len(moving) == 1
    assert found.supplies["G"].amps == pytest.approx(0.05 + 2 * 0.015, rel=1e-2)


def turnouts(number: int) -> Plan:
    """Stall motors, each reversed by a switch of two poles."""
    parts = {"G": stiff(12.0), "X1": "distribution-block-12", "X2": "distribution-block-12"}
    wires = [("G:+", "X1:1"), ("G:-", "X2:1")]
    for n in range(number):
        parts[f"M{n}"], parts[f"S{n}"] = "stall-motor", "toggle-on-on-2p"
        wires += [(f"X1:{2 * n + 2}", f"S{n}:14"), (f"X2:{2 * n + 2}", f"S{n}:24"), (f"S{n}:14", f"S{n}:22"),
                  (f"S{n}:24", f"S{n}:12"), (f"S{n}:11", f"M{n}:M1"), (f"S{n}:21", f"M{n}:M2")]  # fmt: skip
    return draw(parts, wires)


def test_halves_that_meet_at_an_ideal_supply_are_gone_through_apart() -> None:
    """Twice five switches on a stiff supply: 32 + 32 sets, then what they add up to, not 1024."""
    parts, wires = {"G": stiff(12.0)}, []
    for half in "AB":
        parts |= {f"X{half}1": "distribution-block-12", f"X{half}2": "distribution-block-12"}
        wires += [("G:+", f"X{half}1:1", {"length_m": 2.0}), ("G:-", f"X{half}2:1", {"length_m": 2.0})]
        for n in range(2, 7):
            parts |= {f"S{half}{n}": "toggle-on-off", f"R{half}{n}": resistor(12.0 * n)}
            wires += [(f"X{half}1:{n}", f"S{half}{n}:13"), (f"S{half}{n}:14", f"R{half}{n}:1"),
                      (f"R{half}{n}:2", f"X{half}2:{n}")]  # fmt: skip
    plan = draw(parts, wires, 0.3)
    found = worst_case(plan, kinds(), {})
    assert found.exact and found.sets_solved <= 80
    all_on = {p: "on" for p in plan.parts if p.startswith("S")}
    assert found.supplies["G"].amps == pytest.approx(solve(plan, kinds(), all_on).supplies["G"].current_a)
    assert found.supplies["G"].positions == all_on


def test_what_changes_nothing_is_not_gone_through() -> None:
    """A motor's spare contacts without wires, and blown fuses, are no positions of use."""
    parts = {"G": stiff(12.0), "M": "stall-motor", "F": "fuse"}
    plan = draw(parts, [("G:+", "F:1"), ("F:2", "M:M1"), ("M:M2", "G:-")])
    (only,) = options(plan, kinds(), in_use(plan, kinds()))
    assert [c.how for c in only.choices] == ["lasting", MOVING]


@given(st.integers(0, 10_000))
@settings(max_examples=25, deadline=None)
def test_sets_are_counted_as_they_are_listed_and_keep_the_rules(seed: int) -> None:
    pick = random.Random(seed)
    some = (
        "toggle-on-off",
        "push-to-make",
        "toggle-centre-off",
        "stall-motor",
        "push-to-break",
        "toggle-on-on",
    )
    parts, wires = {"G": "supply-regulated"}, []
    for n in range(pick.randint(1, 5)):
        key = parts[f"P{n}"] = pick.choice(some)
        wires += [(f"P{n}:{t.name}", pick.choice(("G:+", "G:-"))) for t in kinds()[key].terminals]
    plan = draw(parts, wires)
    found = options(plan, kinds(), {})
    sets = list(every(found))
    assert len(sets) == count(found) == len({tuple(s.items()) for s in sets})
    for one in sets:
        how = [c.how for o in found for c in o.choices if c.position == one[o.part]]
        assert how.count(HELD) <= 1 and how.count(MOVING) <= 1
        assert turns(found, one) == set(how) & {HELD, MOVING}


def test_no_plan_without_a_supply_fails() -> None:
    plan = draw({"S": "toggle-on-off", "R": resistor(10)}, [("S:13", "R:1"), ("S:14", "R:2")])
    found = worst_case(plan, kinds(), {})
    assert not found.supplies
    assert found.wires["w1"] == Worst(0.0, {"S": "on"}, True, 0.0)
