"""Solve a plan and never trust it: Kirchhoff's laws are checked from the plan itself, not by the solver."""

import math
from collections import defaultdict
from collections.abc import Callable, Mapping

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.figures import Figures
from wiring.circuit.solve import solve
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

CODES = {
    "shorted",
    "floating",
    "loop",
    "not solved",
    "backward",
    "turned",
    "collapsed",
    "buzzing",
    "over limit",
}


def solved(plan: Plan, positions: Mapping[str, str] | None = None, start: Figures | None = None) -> Figures:
    kinds = builtin_kinds()
    wanted = {**in_use(plan, kinds), **(positions or {})}
    figures = solve(plan, kinds, wanted, start)
    check_figures(plan, figures)
    return figures


def check_figures(plan: Plan, figures: Figures) -> None:
    largest = max([abs(w.current_a) for w in figures.wires.values()] + [1e-9])
    # The last digit of 100 V across a joint of 10 µΩ is 1.4e-9 A already.
    assert figures.residual_a <= 1e-6 * largest + 1e-8
    numbers = [
        n for record in (figures.parts, figures.wires, figures.supplies) for f in record.values() for n in f
    ]
    numbers += figures.terminals.values()
    for number in numbers:
        if isinstance(number, float) and number is not math.inf:
            assert math.isfinite(number)
    _check_wires(plan, figures)
    _check_two_terminal_parts(plan, figures, largest)


def _check_wires(plan: Plan, figures: Figures) -> None:
    """Each wire's drop is what its two terminals say (on DC), and its heat is drop times current."""
    for wire_id, figure in figures.wires.items():
        wire = plan.wires[wire_id]
        heat_w = abs(figure.current_a) * figure.drop_v
        assert math.isclose(figure.power_w, heat_w, rel_tol=1e-9, abs_tol=1e-15)
        if wire.start in figures.terminals and not {wire.start.part, wire.end.part} & figures.alternating:
            between = figures.terminals[wire.start] - figures.terminals[wire.end]
            assert math.isclose(between, math.copysign(figure.drop_v, figure.current_a), abs_tol=1e-7)


def _check_two_terminal_parts(plan: Plan, figures: Figures, largest: float) -> None:
    """What the wires bring to one of a part's two terminals they take from the other: its figure."""
    kinds = builtin_kinds()
    brought: dict[TerminalRef, float] = defaultdict(float)
    for wire_id, figure in figures.wires.items():
        wire = plan.wires[wire_id]
        if wire.start != wire.end:
            brought[wire.start] -= figure.current_a
            brought[wire.end] += figure.current_a
    for part_id, taken in figures.parts.items():
        terminals = kinds[plan.parts[part_id].kind].terminals
        if len(terminals) != 2 or part_id in figures.alternating:
            continue
        into, out = (brought[TerminalRef(part_id, terminal.name)] for terminal in terminals)
        assert abs(into + out) <= 1e-6 * largest + 1e-8
        assert abs(abs(into) - abs(taken.current_a)) <= 1e-6 * largest + 1e-8


def unsolved(figures: Figures) -> set[str]:
    """The parts that are named as left out of the figures."""
    return {part for problem in figures.problems if problem.code == "not solved" for part in problem.parts}


def check_problems(plan: Plan, figures: Figures) -> None:
    """Each is of a known code, in words, and names parts and wires there are."""
    for problem in figures.problems:
        assert problem.code in CODES
        assert set(problem.parts) <= set(plan.parts)
        assert set(problem.wires) <= set(plan.wires)
        assert problem.words.endswith(".")
        assert "None" not in problem.words
        assert "nan" not in problem.words


def check_power(plan: Plan, figures: Figures, whose: Callable[[str], str] = lambda part: "") -> None:
    """Tellegen: what supplies give is what parts and wires turn into heat and light.

    `whose` tells the network a part belongs to, where several lie side by side: it holds in each.
    """
    given, taken, turned = (defaultdict(float) for _ in range(3))
    for part, supply in figures.supplies.items():
        given[whose(part)] += supply.power_w
        turned[whose(part)] += abs(supply.power_w)
    for wire_id, wire in figures.wires.items():
        for sums in (taken, turned):
            sums[whose(plan.wires[wire_id].start.part)] += wire.power_w
    for part in figures.parts:
        taken[whose(part)] += _taken_w(plan, figures, part)
    for network in {whose(part) for part in plan.parts} - {whose(part) for part in unsolved(figures)}:
        within = 1e-6 + 1e-6 * turned[network]
        assert math.isclose(given[network], taken[network], rel_tol=1e-6, abs_tol=within), network


def _taken_w(plan: Plan, figures: Figures, part: str) -> float:
    """What goes into a part; of a converter the figure is what is left of that after what it gives."""
    if part not in figures.supplies:
        return figures.parts[part].power_w
    if builtin_kinds()[plan.parts[part].kind].behaviour == "converter":
        return figures.parts[part].power_w + figures.supplies[part].power_w
    return 0.0
