"""Circuits of textbooks: sources, bridges, ladders and distributors, each with where its numbers are from."""

from itertools import pairwise

import pytest
from support.bare import load, ohms, solve_branches, volts
from support.networks import draw, resistor, stiff
from support.solved import solved


def test_weak_source_is_charged() -> None:
    """Lessons in Electric Circuits I, ch. 10: 28 V + 4 ohm, 2 ohm, 7 V + 1 ohm: 8 V printed; 5, 4, -1 A."""
    nodes, amps = solve_branches([volts("n", "0", 28, 4), ohms("n", "0", 2), volts("n", "0", 7, 1)])
    assert nodes["n"] == pytest.approx(8.0)
    assert amps == pytest.approx([-5.0, 4.0, 1.0])


def test_short_circuit_current_of_the_same_sources() -> None:
    """Same chapter, Norton: 14 A (printed) through a short in place of the 2 ohm."""
    _, amps = solve_branches([volts("n", "0", 28, 4), ohms("n", "0", 1e-5), volts("n", "0", 7, 1)])
    assert amps[1] == pytest.approx(14.0, rel=1e-4)


def test_unbalanced_bridge() -> None:
    """Lessons in Electric Circuits I, delta-Y: nodes 5.294 and 4.706 V printed; 98.04 mA computed."""
    parts = {"G": stiff(10.0), "R1": resistor(12), "R2": resistor(18), "R3": resistor(6), "R4": resistor(18),
             "R5": resistor(12)}  # fmt: skip
    wires = [("G:+", "R1:1"), ("G:+", "R2:1"), ("R1:2", "R3:1"), ("R2:2", "R3:2"), ("R1:2", "R4:1"),
             ("R2:2", "R5:1"), ("R4:2", "G:-"), ("R5:2", "G:-")]  # fmt: skip
    figures = solved(draw(parts, wires))
    assert figures.parts["R4"].volts_v == pytest.approx(5.294, abs=2e-3)
    assert figures.parts["R5"].volts_v == pytest.approx(4.706, abs=2e-3)
    assert figures.parts["R3"].current_a == pytest.approx(0.09804, rel=1e-3)
    assert figures.supplies["G"].current_a == pytest.approx(0.6863, rel=1e-3)


def test_bridge_of_kilohms() -> None:
    """1k over 2k, 3k over 1k, bridge 1k, 10 V: 5.517241 and 3.793103 V, computed by direct solve."""
    nodes, amps = solve_branches(
        [volts("s", "0", 10), ohms("s", "l", 1e3), ohms("l", "0", 2e3), ohms("s", "r", 3e3),
         ohms("r", "0", 1e3), ohms("l", "r", 1e3)]
    )  # fmt: skip
    assert nodes["l"] == pytest.approx(5.517241, abs=1e-6)
    assert nodes["r"] == pytest.approx(3.793103, abs=1e-6)
    assert amps[5] == pytest.approx(1.724138e-3, rel=1e-6)
    assert amps[0] == pytest.approx(-6.551724e-3, rel=1e-6)


@pytest.mark.parametrize(
    ("inner", "outer", "amps", "terminal_v"),
    [(0.1, 10.0, 1.188, 11.9), (0.1, 0.5, 20.0, 10.0), (0.5, 0.5, 12.0, 6.0)],
)
def test_battery_with_inner_resistance(inner: float, outer: float, amps: float, terminal_v: float) -> None:
    """OpenStax College Physics 21.2: 12.0 V behind r, and its load."""
    supply = (
        "supply-regulated",
        {"volts": 12.0, "ohms": inner, "limit_a": 1e3, "on_overload": "holds current"},
    )
    figures = solved(draw({"G": supply, "R": resistor(outer)}, [("G:+", "R:1"), ("R:2", "G:-")]))
    assert figures.supplies["G"].current_a == pytest.approx(amps, rel=1e-3)
    assert figures.supplies["G"].volts_v == pytest.approx(terminal_v, rel=2e-3)


def test_series_and_parallel() -> None:
    """Teaching page "Kirchhoff practice review": 4 + (6 and 12 side by side) ohm on 12 V: 1.5 A in all."""
    parts = {"G": stiff(12.0), "R1": resistor(4), "R2": resistor(6), "R3": resistor(12)}
    wires = [("G:+", "R1:1"), ("R1:2", "R2:1"), ("R1:2", "R3:1"), ("R2:2", "G:-"), ("R3:2", "G:-")]
    figures = solved(draw(parts, wires))
    assert figures.supplies["G"].current_a == pytest.approx(1.5, rel=3e-4)
    assert figures.parts["R2"].current_a == pytest.approx(1.0, rel=3e-4)
    assert figures.parts["R3"].current_a == pytest.approx(0.5, rel=3e-4)


@pytest.mark.parametrize(
    ("sections", "ratio"), [(1, 2.0), (2, 5 / 3), (3, 13 / 8), (4, 34 / 21), (30, 1.6180339887)]
)
def test_ladder_of_equal_resistors(sections: int, ratio: float) -> None:
    """Ratios of Fibonacci numbers, to the golden ratio; classic, from memory, confirmed by computing."""
    names = ["s", *(f"n{i}" for i in range(sections))]
    rungs = [ohms(one, other, 1.0) for one, other in pairwise(names)]
    shunts = [ohms(name, "0", 1.0) for name in names[1:]]
    _, amps = solve_branches([volts("s", "0", 1.0), *rungs, *shunts])
    assert -1.0 / amps[0] == pytest.approx(ratio, rel=2e-6)


def test_distributor_with_lumped_loads() -> None:
    """V. K. Mehta, Principles of Power System, ex. 13.1: 300 V, 0.01 ohm per km, loads at four places."""
    places, amps, expected = (0, 500, 1000, 1600, 2000), (100, 150, 200, 50), (295.0, 291.0, 288.0, 287.6)
    branches = [volts("p0", "m0", 300.0)]
    for near, (one, other) in enumerate(pairwise(places)):
        piece = 0.01 * (other - one) / 1000 * 1.0
        branches += [ohms(f"p{near}", f"p{near + 1}", piece), ohms(f"m{near + 1}", f"m{near}", piece)]
        branches.append(load(f"p{near + 1}", f"m{near + 1}", amps[near], 200.0))
    nodes, _ = solve_branches(branches, ground="m0")
    found = [nodes[f"p{n}"] - nodes[f"m{n}"] for n in range(1, 5)]
    assert found == pytest.approx(expected, abs=0.05)


def test_two_sections() -> None:
    """Textbook page on distribution: 500 V, 0.02 ohm per km, 100 A at 2, 200 A at 4 km: 476, 460 V."""
    branches = [volts("p0", "0", 500.0), ohms("p0", "p1", 0.08), ohms("p1", "p2", 0.08)]
    nodes, _ = solve_branches([*branches, load("p1", "0", 100, 400.0), load("p2", "0", 200, 400.0)])
    assert nodes["p1"] == pytest.approx(476.0, abs=0.01)
    assert nodes["p2"] == pytest.approx(460.0, abs=0.01)


def test_even_load_fed_from_both_ends() -> None:
    """Mehta ex. 13.15: 1 A/m over 500 m, 0.1 ohm per km, 255 and 250 V: least 246 V at 300 m; computed."""
    pieces = 500
    branches = [volts("n0", "0", 255.0), volts(f"n{pieces}", "0", 250.0)]
    branches += [ohms(f"n{i}", f"n{i + 1}", 2 * 0.1e-3) for i in range(pieces)]
    branches += [load(f"n{i}", "0", 1.0, 200.0) for i in range(1, pieces)]
    nodes, amps = solve_branches(branches)
    lowest = min(range(1, pieces), key=lambda i: nodes[f"n{i}"])
    assert lowest == pytest.approx(300, abs=1)
    assert nodes[f"n{lowest}"] == pytest.approx(246.0, abs=0.01)
    assert -amps[0] == pytest.approx(300.0, abs=1.0)
    assert -amps[1] == pytest.approx(200.0, abs=1.0)


def test_lighting_bus() -> None:
    """Five 120 ohm loads 2 m apart on 0.5 mm2 class 5 (IEC 60228: 39.0 ohm/km); computed by direct solve."""
    parts, wires = {"G": stiff(12.0)}, []
    plus, minus = "G:+", "G:-"
    for n in range(1, 6):
        parts |= {f"X{n}": "distribution-block-6", f"Y{n}": "distribution-block-6", f"R{n}": resistor(120)}
        run = {"length_m": 2.0, "size": "0.5 mm²"}
        wires += [
            (plus, f"X{n}:1", run),
            (minus, f"Y{n}:1", run),
            (f"X{n}:3", f"R{n}:1"),
            (f"Y{n}:3", f"R{n}:2"),
        ]
        plus, minus = f"X{n}:2", f"Y{n}:2"
    figures = solved(draw(parts, wires))
    volts_there = [figures.parts[f"R{n}"].volts_v for n in range(1, 6)]
    assert volts_there == pytest.approx([11.92310, 11.86170, 11.81571, 11.78509, 11.76979], abs=6e-4)
    assert figures.supplies["G"].current_a == pytest.approx(0.492962, rel=1e-4)


@pytest.mark.parametrize(
    ("supply_v", "forward_v", "milliamps", "ohms_"),
    [(12, 1.8, 5, 2040), (9, 1.8, 5, 1440), (12, 7.2, 20, 240), (9, 3.0, 20, 300), (6, 3.0, 20, 150)],
)
def test_led_resistor_of_the_rule(supply_v: float, forward_v: float, milliamps: float, ohms_: float) -> None:
    """Encyclopaedia page "LED circuit" and teaching pages: R = (V - Vf) / I gives the wished current."""
    led = {"forward_v": forward_v, "forward_a": milliamps / 1000, "slope_v": 0.05, "series_ohm": 0.0}
    plan = draw({"G": stiff(supply_v), "R": resistor(ohms_), "E": ("led-red-bare", led)},
                [("G:+", "R:1"), ("R:2", "E:A"), ("E:K", "G:-")])  # fmt: skip
    assert solved(plan).parts["E"].current_a == pytest.approx(milliamps / 1000, rel=1e-4)
