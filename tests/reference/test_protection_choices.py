"""Fuses, wire sizes and resistors that are advised, against published tables and worked examples.

Sources: MOROP NEM 604 (2013), table 2: a single wire that loses 0.5 V at 1 A; FAA AC 43.13-1B table 11-9,
currents of wires in a bundle; IEC 60127 preferred ratings; IEC 60063 series E24.
"""

import math

import msgspec
import pytest
from support.findings import situation
from support.networks import draw, kinds, stiff

from wiring.circuit.solve import solve
from wiring.standards.cells import CELLS
from wiring.studies.fault_current import fault_current_a
from wiring.studies.protection import rating_for
from wiring.studies.resistor_choice import series_resistor
from wiring.studies.sizing import offered_by_thickness, size_for_current, size_for_run
from wiring.studies.wire_limits import limit_a

# NEM 604 table 2: stranded wire, metres at 0.5 V and 1 A. It takes copper at 1/56; the largest resistance
# IEC 60228 allows, which is used here, is up to 12 % more, so that the lengths here come out shorter.
NEM_604 = {"0.14 mm²": 3.9, "0.75 mm²": 21.0, "1.5 mm²": 42.0}

DRAWN = {"0.14 mm²": "0.08 mm²", "0.75 mm²": "0.5 mm²", "1.5 mm²": "0.75 mm²"}


def _one_ampere(length_m, size):
    """A module of 1 A at the end of two wires; 1 V of 12 V may be lost, half a volt on each."""
    plan = draw(
        {"G1": stiff(12.0), "E1": ("constant-current-light", {"set_a": 1.0, "min_v": 8.0})},
        [("G1:+", "E1:+"), ("G1:-", "E1:-")],
    )
    wires = {k: msgspec.structs.replace(w, length_m=length_m, size=size) for k, w in plan.wires.items()}
    habits = msgspec.structs.replace(plan.habits, wire_size="0.14 mm²", drop_limit=1.0 / 12.0)
    return plan.with_changes(wires=wires, habits=habits)


def _advised(length_m, drawn="0.34 mm²"):
    answer = situation(_one_ampere(length_m, drawn))
    run = answer.runs["E1"]
    assert run.drop_v > 1.0
    return size_for_run(answer.plan, kinds(), answer.figures, run, run.wires)


@pytest.mark.parametrize("size", NEM_604)
def test_advised_size_follows_the_table_of_nem_604(size):
    assert _advised(0.88 * NEM_604[size], DRAWN[size]) == size
    thicker = offered_by_thickness()[offered_by_thickness().index(size) + 1 :]
    assert _advised(1.02 * NEM_604[size], DRAWN[size]) in thicker


def test_a_run_that_no_wire_can_carry_gets_no_size():
    assert _advised(400.0) is None


def test_volts_lost_on_a_run_are_those_of_ohms_law():
    # 22 AWG: 53.0 ohm/km by ASTM B258 at 1/58, 2 % more for the lay of strands; 10 m out and back at 0.1 A.
    plan = draw({"G1": stiff(12.0), "E1": ("constant-current-light", {"set_a": 0.1, "min_v": 8.0})},
                [("G1:+", "E1:+", {"length_m": 10.0}), ("G1:-", "E1:-", {"length_m": 10.0})])  # fmt: skip
    run = situation(plan).runs["E1"]
    assert run.drop_v == pytest.approx(2 * 10 * 0.0530 * 1.02 * 0.1, rel=0.01)
    assert run.share == pytest.approx(run.drop_v / 12.0, rel=1e-3)


@pytest.mark.parametrize(
    ("size", "amps"), [("24 AWG", 2.5), ("22 AWG", 3.0), ("18 AWG", 6.0), ("14 AWG", 10.0)]
)
def test_wire_limits_are_those_of_the_bundle_column(size, amps):
    assert limit_a(size) == amps


def test_thinnest_wire_for_a_current():
    plan = draw({"E1": "lamp-12v"}, [])
    assert size_for_current(plan, 2.9) == "22 AWG"
    assert size_for_current(plan, 3.1) == "20 AWG"
    assert limit_a("no size") == math.inf


def test_advised_fuse_is_a_preferred_rating_between_load_and_wire():
    assert rating_for(0.1, 3.0) == 0.5
    assert rating_for(0.9, 3.0) == 2.0
    assert rating_for(2.0, 3.0) == 2.5  # twice the load would be too much for the wire
    assert rating_for(2.9, 3.0) is None


@pytest.mark.parametrize("load_a", [0.05, 0.3, 0.7, 1.1, 2.0])
@pytest.mark.parametrize("wire_a", [0.5, 1.0, 3.0, 6.0])
def test_advised_fuse_carries_the_load_and_guards_the_wire(load_a, wire_a):
    rating = rating_for(load_a, wire_a)
    assert rating is None or 1.25 * load_a <= rating <= wire_a


@pytest.mark.parametrize(
    "feed",
    [
        ("supply-unregulated", {}),
        ("supply-regulated", {"on_overload": "holds current", "limit_a": 1.5}),
        ("battery-9v", {}),
        ("battery-alkaline", {"in_series": 8, "in_parallel": 2}),
        ("battery-nimh", {"capacity": 1.0}),
    ],
)
def test_fault_current_is_what_the_solver_pushes_through_a_short(feed):
    plan = draw({"G1": feed, "R1": ("resistor", {"resistance": 1e-4})}, [("G1:+", "R1:1"), ("R1:2", "G1:-")])
    figures = solve(plan, kinds(), {})
    part = plan.parts["G1"]
    assert fault_current_a(part, kinds()[part.kind]) == pytest.approx(
        figures.supplies["G1"].current_a, rel=0.02
    )


def test_a_fresh_nine_volt_block_pushes_a_few_amperes():
    # A handbook takes such a block as 9 V behind 3 ohm; makers' impedance at 1 kHz is 1.7 ohm.
    cell = CELLS["alkaline 9 V"]
    assert 9.0 / 3.0 < cell.fresh_v / cell.r0_ohm < 9.0 / 1.7


@pytest.mark.parametrize(
    ("supply_v", "forward_v", "current_a", "ohms", "rated_w"),
    [(12.0, 3.2, 0.020, 470.0, 0.5), (12.0, 2.0, 0.010, 1000.0, 0.25), (5.0, 2.0, 0.020, 150.0, 0.25)],
)
def test_series_resistor_is_the_next_preferred_value_up(supply_v, forward_v, current_a, ohms, rated_w):
    choice = series_resistor(supply_v, forward_v, current_a)
    assert (choice.ohms, choice.rated_w) == (ohms, rated_w)
    assert choice.power_w == pytest.approx((supply_v - forward_v) ** 2 / ohms)


def test_no_resistor_helps_where_the_volts_are_too_few():
    assert series_resistor(3.0, 3.2, 0.02) is None
