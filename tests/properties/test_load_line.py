"""The load line of a battery is what the plan reads with that battery at those volts."""

import numpy as np
import pytest
from support.networks import draw, lamp_street, resistor

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.load_line import LoadLine, load_line
from wiring.circuit.solve import solve
from wiring.plan.plan import Plan

EIGHT = ("battery-alkaline", {"in_series": 8})


def line(plan: Plan, volts: object, battery: str = "G1", positions: dict[str, str] | None = None) -> LoadLine:
    return load_line(plan, builtin_kinds(), positions or {}, battery, np.asarray(volts, dtype=float))


@pytest.mark.parametrize(
    "kind", ["led-white", "lamp-12v", "flasher", "constant-current-light", "sound-module"]
)
def test_it_passes_through_the_operating_point(kind: str) -> None:
    plan = lamp_street(7, kind, EIGHT)
    figures = solve(plan, builtin_kinds(), {})
    there = figures.supplies["G1"]
    found = line(plan, [there.volts_v])
    assert found.solved.all()
    assert found.amps[0] == pytest.approx(there.current_a, rel=1e-6)
    for part, light in found.lights.items():
        assert light[0] == pytest.approx(figures.parts[part].light, rel=1e-6)


def test_a_resistor_follows_ohm() -> None:
    plan = draw({"G1": EIGHT, "R1": resistor(24)}, [("G1:+", "R1:1"), ("R1:2", "G1:-")])
    volts = np.linspace(0.5, 12.0, 33)
    found = line(plan, volts)
    assert found.amps == pytest.approx(volts / 24, rel=1e-5)
    assert found.lights == {}
    assert found.parts == ("G1", "R1")


def test_light_and_current_fall_with_the_volts() -> None:
    found = line(lamp_street(12, "led-warm-white", EIGHT), np.linspace(2.0, 13.0, 33))
    assert set(found.lights) == {f"E{n}" for n in range(1, 13)}
    assert (np.diff(found.amps) > 0).all()
    assert all((np.diff(light) >= 0).all() for light in found.lights.values())
    assert (found.lights["E1"] >= found.lights["E12"]).all()


def test_other_circuits_are_left_out() -> None:
    plan = draw({"G1": EIGHT, "E1": "led-red", "G2": "battery-9v", "E2": "led-red"},
                [("G1:+", "E1:A"), ("G1:-", "E1:K"), ("G2:+", "E2:A"), ("G2:-", "E2:K")], 0.5)  # fmt: skip
    assert line(plan, [9.0]).parts == ("G1", "E1")
    assert set(line(plan, [9.0], "G2").lights) == {"E2"}


def test_an_open_switch_takes_nothing() -> None:
    plan = draw({"G1": EIGHT, "S1": "toggle-on-off", "E1": "led-red"},
                [("G1:+", "S1:13"), ("S1:14", "E1:A"), ("E1:K", "G1:-")], 0.5)  # fmt: skip
    found = line(plan, [6.0, 12.0], positions={"S1": "off"})
    assert found.solved.all()
    assert found.amps.tolist() == [0.0, 0.0]
    assert line(plan, [12.0], positions={"S1": "on"}).amps[0] > 1e-3


def test_a_relay_must_pull_in_from_rest_at_each_voltage() -> None:
    """From rest it pulls in at its pull-in volts; below, its lamp is dark and only the coil takes current."""
    plan = draw({"G1": EIGHT, "K1": "relay", "E1": "lamp-12v"},
                [("G1:+", "K1:A1"), ("K1:A2", "G1:-"), ("G1:+", "K1:11"), ("K1:14", "E1:1"),
                 ("E1:2", "G1:-")], 0.2)  # fmt: skip
    found = line(plan, [6.0, 8.0, 9.0, 12.0])
    assert (found.lights["E1"] > 0.05).tolist() == [False, False, True, True]
    assert found.amps[0] == pytest.approx(6.0 / 270, rel=1e-2)


def test_a_second_battery_stays_fresh() -> None:
    plan = draw({"G1": EIGHT, "G2": EIGHT, "R1": resistor(100)},
                [("G1:+", "R1:1"), ("G1:-", "G2:+"), ("R1:2", "G2:-")], 0.0)  # fmt: skip
    fresh = solve(plan, builtin_kinds(), {}).supplies
    found = line(plan, [fresh["G1"].volts_v])
    assert found.amps[0] == pytest.approx(fresh["G2"].current_a, rel=1e-5)


def test_a_short_gives_large_honest_amperes() -> None:
    found = line(draw({"G1": EIGHT}, [("G1:+", "G1:-")], 1.0), [6.0])
    assert found.amps[0] == pytest.approx(6.0 / 0.054, rel=0.03)
