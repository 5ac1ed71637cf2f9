"""A step-down converter against the algebra of its own statement: power out, losses, power in.

Behind a source of E volts and R ohms, a load of P watts whatever the volts beside an idle current i0 sees

    (E - v) / R = P / v + i0,   v = ((E - R i0) + sqrt((E - R i0)^2 - 4 R P)) / 2

(the upper root is the stable one), and there is no steady state beyond P = (E - R i0)^2 / (4 R): the maximum
power transfer theorem, in any textbook of circuit theory.
"""

import math
from pathlib import Path

import numpy as np
import pytest
from support.networks import draw, kinds, resistor, stiff
from support.ngspice import needs_ngspice, run
from support.solved import solved

from wiring.circuit.load_line import load_line
from wiring.circuit.spice import netlist, node_names
from wiring.circuit.states import settle
from wiring.plan.plan import Plan

IDEAL = {
    "volts": 5.0, "limit_a": 2.0, "ohms": 0.0, "efficiency": 0.8, "half_efficiency": 0.9, "idle_a": 0.006,
    "drop_out_v": 1.5, "min_v": 4.5,
}  # fmt: skip
WIRE_OHM = 2e-5  # two joints of no length between load and module


def feed(emf_v: float, ohms: float, load: object, settings: dict[str, object] | None = None) -> Plan:
    parts = {
        "G": stiff(emf_v), "R": resistor(ohms), "L": load,
        "T": ("converter-5v", {**IDEAL, **(settings or {})}),
    }  # fmt: skip
    wires = [("G:+", "R:1"), ("R:2", "T:+"), ("G:-", "T:-"), ("T:O", "L:1"), ("L:2", "T:-")]
    return draw(parts, wires)


def over(amps: float) -> float:
    """One over the efficiency: a straight line through 1/0.9 at 1 A and 1/0.8 at 2 A."""
    return 1 / 0.9 + (1 / 0.8 - 1 / 0.9) * (amps - 1.0)


@pytest.mark.parametrize("load_ohm", [2.9, 5.0, 10.0, 50.0, 500.0])
@pytest.mark.parametrize("line_ohm", [0.1, 1.0, 3.0])
def test_volts_at_its_input_are_the_upper_root(load_ohm: float, line_ohm: float) -> None:
    figures = solved(feed(12.0, line_ohm, resistor(load_ohm)))
    amps = figures.supplies["T"].current_a
    assert figures.supplies["T"].volts_v == pytest.approx(5.0 - 1e-3 * amps, rel=1e-6)  # its least ohms
    power_w = figures.supplies["T"].power_w * max(over(amps), 1.0)
    push_v = 12.0 - (line_ohm + 1e-3) * 0.006
    root_v = (push_v + math.sqrt(push_v**2 - 4 * (line_ohm + 1e-3) * power_w)) / 2
    assert figures.parts["T"].volts_v == pytest.approx(root_v, rel=1e-4)
    assert figures.parts["R"].current_a == pytest.approx(power_w / root_v + 0.006, rel=1e-3)


def test_what_goes_in_comes_out_or_heats_it() -> None:
    figures = solved(feed(12.0, 1.0, resistor(5.0)))
    given_w, taken_w = figures.supplies["G"].power_w, figures.supplies["T"].power_w
    assert figures.parts["T"].power_w == pytest.approx(
        given_w - taken_w - figures.parts["R"].power_w - 1e-3 * figures.supplies["G"].current_a ** 2 * 0,
        rel=1e-3,
    )
    assert taken_w == pytest.approx(figures.parts["L"].power_w, rel=1e-4)


@pytest.mark.parametrize(("amps", "efficiency"), [(2.0, 0.8), (1.0, 0.9)])
def test_its_efficiency_is_what_is_stated_at_full_and_half_current(amps: float, efficiency: float) -> None:
    figures = solved(feed(12.0, 0.0, resistor(5.0 / amps - 1e-3), {"idle_a": 1e-5, "limit_a": 2.0}))
    got = figures.supplies["T"].power_w / figures.supplies["G"].power_w
    assert got == pytest.approx(efficiency, rel=1e-2 if amps == 2.0 else 1e-3)  # the limit bends at 2 A


def test_idle_it_takes_its_idle_current() -> None:
    figures = solved(draw({"G": stiff(12.0), "T": ("converter-5v", IDEAL)}, [("G:+", "T:+"), ("G:-", "T:-")]))
    assert figures.supplies["G"].current_a == pytest.approx(0.006, rel=1e-2)
    assert figures.supplies["T"].volts_v == pytest.approx(5.0)


def test_beyond_the_most_a_line_can_carry_it_breaks_down() -> None:
    """12 V behind 10 ohm gives at most 3.6 W at all; 5 V into 5 ohm asks for 5 W and more."""
    figures = solved(feed(12.0, 10.0, resistor(5.0)))
    (problem,) = [p for p in figures.problems if p.code == "collapsed"]
    assert problem.parts == ("T",)
    assert "cannot keep its output up" in problem.words
    assert figures.parts["L"].current_a == pytest.approx(0.0, abs=1e-4)


def test_just_short_of_that_it_runs() -> None:
    """The upper root at 90 % of what the line can carry at most lies at 66 % of the source's volts."""
    push_v, ohms = 12.0 - 4.0 * 0.006, 4.0
    most_w = push_v**2 / (4 * ohms)
    amps = 1.0
    for _ in range(50):  # what goes out at 90 % of it, losses allowed for
        amps = 0.9 * most_w / (5.0 * over(amps))
    figures = solved(feed(12.0, ohms, resistor(5.0 / amps)))
    assert not [p for p in figures.problems if p.code == "collapsed"]
    assert figures.parts["T"].volts_v == pytest.approx(push_v * (1 + math.sqrt(0.1)) / 2, rel=5e-3)


def test_in_drop_out_its_output_follows_its_input() -> None:
    figures = solved(feed(6.0, 0.0, resistor(10.0)))
    assert figures.supplies["T"].volts_v == pytest.approx(6.0 - 1.5, abs=2e-3)


def test_below_its_least_volts_it_gives_nothing() -> None:
    figures = solved(feed(4.0, 0.1, resistor(10.0)))
    assert figures.supplies["T"].volts_v == pytest.approx(0.0, abs=1e-4)
    assert [p.code for p in figures.problems] == ["collapsed"]
    assert "needs 4.5 V" in figures.problems[0].words


def test_without_a_feed_it_gives_nothing_and_says_that_nothing_feeds_it() -> None:
    figures = solved(draw({"T": "converter-5v", "L": resistor(10)}, [("T:O", "L:1"), ("L:2", "T:-")]))
    assert figures.parts["L"].current_a == 0.0
    assert [p.code for p in figures.problems] == ["floating"]


def test_it_holds_its_largest_current() -> None:
    figures = solved(feed(12.0, 0.1, resistor(0.5)))
    assert figures.supplies["T"].current_a == pytest.approx(2.0, rel=0.02)
    assert figures.supplies["T"].limited


def test_one_behind_another() -> None:
    """9 V out of 12, 5 V out of those 9: each takes the power of what is behind it and its own losses."""
    second = {**IDEAL, "volts": 9.0}
    parts = {
        "G": stiff(12.0),
        "T1": ("converter-5v", second),
        "T2": ("converter-5v", IDEAL),
        "L": resistor(5.0),
    }
    wires = [("G:+", "T1:+"), ("G:-", "T1:-"), ("T1:O", "T2:+"), ("T1:-", "T2:-"), ("T2:O", "L:1"),
             ("L:2", "T2:-")]  # fmt: skip
    figures = solved(draw(parts, wires))
    amps = figures.supplies["T2"].current_a
    into_w = figures.supplies["T2"].power_w * over(amps) + figures.parts["T2"].volts_v * 0.006
    assert figures.supplies["T1"].power_w == pytest.approx(into_w, rel=1e-4)


@pytest.mark.ngspice
@needs_ngspice
@pytest.mark.parametrize(
    "plan",
    [feed(12.0, 3.0, resistor(5.0)), feed(9.0, 1.0, resistor(2.2)), feed(6.2, 0.1, resistor(10.0)),
     feed(12.0, 10.0, resistor(5.0))],
    ids=["line", "limit", "drop-out", "broken down"],
)  # fmt: skip
def test_ngspice_couples_input_and_output_to_the_same_point(plan: Plan, tmp_path: Path) -> None:
    settled = settle(plan, kinds(), {}, None)
    theirs = run(netlist(settled), tmp_path)
    for node, called in node_names(settled).items():
        assert theirs[called] == pytest.approx(settled.reading.nodes[node], rel=1e-5, abs=1e-5), called


def test_its_own_figures_are_those_of_its_input() -> None:
    figures = solved(feed(12.0, 1.0, resistor(5.0)))
    assert figures.parts["T"].current_a == pytest.approx(figures.parts["R"].current_a, rel=1e-3)


def test_behind_a_smoothed_rectifier_it_gives_what_its_load_takes() -> None:
    parts = {"G": "supply-ac", "B": "smoothed-rectifier", "T": ("converter-5v", IDEAL), "L": resistor(10.0)}
    wires = [
        ("G:~1", "B:~1"),
        ("G:~2", "B:~2"),
        ("B:+", "T:+"),
        ("B:-", "T:-"),
        ("T:O", "L:1"),
        ("L:2", "T:-"),
    ]
    figures = solved(draw(parts, wires))
    assert figures.supplies["T"].current_a == pytest.approx(0.5, rel=1e-3)
    assert figures.supplies["T"].volts_v == pytest.approx(5.0, rel=1e-3)
    assert figures.supplies["T"].power_w == pytest.approx(2.5, rel=1e-3)


def test_a_battery_behind_it_gives_more_current_the_emptier_it_is() -> None:
    """Its load line is a hyperbola: amperes times volts one power, plus its idle current."""
    parts = {"G": "battery-alkaline", "T": ("converter-5v", IDEAL), "L": resistor(5.0)}
    plan = draw(parts, [("G:+", "T:+"), ("G:-", "T:-"), ("T:O", "L:1"), ("L:2", "T:-")])
    volts = np.array([7.0, 8.0, 10.0, 12.0])
    line = load_line(plan, kinds(), {}, "G", volts)
    assert line.solved.all()
    power_w = volts * (line.amps - 0.006)
    assert power_w == pytest.approx(np.full(4, 5.0 * over(1.0)), rel=1e-3)
