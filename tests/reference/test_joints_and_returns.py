"""Joints, plugs and common returns against Ohm's law by hand; wire and LEDs against published tempcos."""

import math

import pytest
from support.networks import draw, kinds, resistor, stiff
from support.solved import solved

from wiring.circuit.figures import Figures
from wiring.plan.plan import Habits, Plan
from wiring.standards.conductors import ohm_per_m

STIFF_OHM = 1e-3  # the least resistance of a supply


def amps(figures: Figures, wire: str) -> float:
    return abs(figures.wires[wire].current_a)


@pytest.mark.parametrize("joint_ohm", [0.0, 0.005, 0.05])
def test_each_end_under_a_screw_adds_its_joint(joint_ohm: float) -> None:
    """Four joints at 12 V and 5.9 ohm: the wires to and from two ways of a terminal strip."""
    strip = ("terminal-strip-4", {"joint_ohm": joint_ohm})
    plan = draw(
        {"G": stiff(12.0), "X": strip, "R": resistor(5.9)},
        [("G:+", "X:1"), ("X:1", "R:1"), ("R:2", "X:2"), ("X:2", "G:-")], 1.0,
    )  # fmt: skip
    metre_ohm = ohm_per_m("22 AWG")
    expected = 12.0 / (5.9 + 4 * (metre_ohm + joint_ohm) + STIFF_OHM)
    figures = solved(plan)
    assert amps(figures, "w1") == pytest.approx(expected, rel=1e-9)
    assert figures.wires["w1"].ohms == pytest.approx(metre_ohm + joint_ohm, rel=1e-12)


def test_a_joint_that_is_no_number_is_named() -> None:
    plan = draw(
        {"G": stiff(12.0), "X": ("terminal-strip-4", {"joint_ohm": "loose"}), "R": resistor(10)},
        [("G:+", "X:1"), ("X:1", "R:1"), ("R:2", "G:-")],
    )
    words = [p.words for p in solved(plan).problems if p.code == "not solved"]
    assert len(words) == 2 and all("a joint of -X must have" in w for w in words)


def test_a_plug_is_two_contacts_in_the_way() -> None:
    """Through pair 1 and back through pair 2, 20 milliohm each."""
    plug = ("plug-2", {"contact_ohm": 0.02}, "joined")
    plan = draw(
        {"G": stiff(5.0), "X": plug, "R": resistor(1.0)},
        [("G:+", "X:1a"), ("X:1b", "R:1"), ("R:2", "X:2b"), ("X:2a", "G:-")],
    )
    assert amps(solved(plan), "w1") == pytest.approx(5.0 / (1.0 + 0.04 + STIFF_OHM + 4e-5), rel=1e-6)
    apart = solved(plan, {"X": "apart"})
    assert amps(apart, "w1") == 0.0


def shared_return(own_return: bool) -> Plan:
    """Two loads on two supplies, their returns common over ten metres, or each with one of its own."""
    parts = {
        "G1": stiff(12.0),
        "G2": stiff(12.0),
        "R1": resistor(6.0),
        "R2": resistor(3.0),
        "X": "distribution-block-6",
    }
    far, near = {"length_m": 10.0}, {"length_m": 0.0}
    wires = [("G1:+", "R1:1", near), ("G2:+", "R2:1", near), ("R1:2", "X:1", near),
             ("R2:2", "G2:-" if own_return else "X:2", far if own_return else near),
             ("X:3", "G1:-", far)]  # fmt: skip
    if not own_return:
        wires.append(("G1:-", "G2:-", near))
    return draw(parts, wires)


def test_the_drop_on_a_common_return_is_felt_by_every_circuit_on_it() -> None:
    """Millman's theorem for the far end: v = (12/6 + 12/3) / (1/6 + 1/3 + 1/r)."""
    r = 10.0 * ohm_per_m("22 AWG")
    figures = solved(shared_return(False))
    far_v = (12 / 6 + 12 / 3) / (1 / 6 + 1 / 3 + 1 / r)
    assert figures.wires["w5"].drop_v == pytest.approx(far_v, rel=1e-3)
    assert figures.parts["R1"].volts_v == pytest.approx(12.0 - far_v, rel=1e-3)
    alone = solved(shared_return(True))
    assert alone.parts["R1"].volts_v == pytest.approx(12.0 * 6.0 / (6.0 + r), rel=1e-3)
    assert figures.parts["R1"].volts_v < alone.parts["R1"].volts_v - 0.8


def test_what_one_circuit_switches_moves_the_lamps_of_the_other() -> None:
    plan = shared_return(False)
    parts = {**plan.parts, "S": draw({"S": "toggle-on-off"}, []).parts["S"]}
    wires = dict(plan.wires)
    between = wires.pop("w2")
    extra = draw(
        {"G2": "fuse", "S": "toggle-on-off", "R2": "fuse"}, [("G2:+", "S:13"), ("S:14", "R2:1")]
    ).wires
    wires |= {f"v{n}": w for n, w in enumerate(extra.values())}
    plan = plan.with_changes(parts=parts, wires={k: _with_id(w, k) for k, w in wires.items()})
    assert between.start.part == "G2"
    off, on = solved(plan, {"S": "off"}), solved(plan, {"S": "on"})
    assert off.parts["R1"].volts_v > on.parts["R1"].volts_v + 1.0


def _with_id(wire, key):
    from msgspec.structs import replace

    return replace(wire, id=key, label=key.upper())


@pytest.mark.parametrize("celsius", [-10.0, 20.0, 45.0])
def test_copper_gains_four_tenths_of_a_per_cent_a_kelvin(celsius: float) -> None:
    """IEC 60228: the coefficient at 20 degrees is 0.00393 per kelvin."""
    plan = draw({"G": stiff(12.0), "R": resistor(10.0)}, [("G:+", "R:1"), ("R:2", "G:-")], 20.0)
    warm = solved(plan.with_changes(habits=Habits(ambient_c=celsius))).wires["w1"].ohms
    cold = solved(plan).wires["w1"].ohms
    assert warm / cold == pytest.approx(1.0 + 0.00393 * (celsius - 20.0), rel=2e-4)


@pytest.mark.parametrize("celsius", [0.0, 20.0, 40.0])
@pytest.mark.parametrize(("kind", "in_series"), [("led-red-bare", 1), ("led-white-bare", 3)])
def test_a_junction_needs_two_millivolts_less_a_kelvin(celsius: float, kind: str, in_series: int) -> None:
    """At the stated current each LED of a chain has its stated volts less 2 mV a kelvin above 20 degrees."""
    values = kinds()[kind].values({})
    chain = (kind, {"in_series": in_series})
    at_v = in_series * (values["forward_v"] - 0.002 * (celsius - 20.0))
    supply_v = at_v + 1000.0 * values["forward_a"]
    plan = draw({"G": stiff(supply_v), "R": resistor(1000.0), "E": chain},
                [("G:+", "R:1"), ("R:2", "E:A"), ("E:K", "G:-")])  # fmt: skip
    figure = solved(plan.with_changes(habits=Habits(ambient_c=celsius))).parts["E"]
    assert figure.current_a == pytest.approx(values["forward_a"], rel=1e-4)
    assert figure.volts_v == pytest.approx(at_v, rel=1e-4)


@pytest.mark.parametrize("duty", [0.1, 0.5, 0.9])
def test_a_flasher_takes_its_duty_on_average_and_its_whole_current_at_peak(duty: float) -> None:
    """Mean = peak x duty (definition of a duty cycle); the supply feels the mean."""
    flasher = ("flasher", {"on_a": 0.02, "min_v": 3.0, "duty": duty, "period": 1.0})
    figures = solved(draw({"G": stiff(12.0), "E": flasher}, [("G:+", "E:+"), ("E:-", "G:-")]))
    assert figures.parts["E"].current_a == pytest.approx(0.02 * duty, rel=5e-4)
    assert figures.parts["E"].peak_a == pytest.approx(0.02, rel=5e-4)
    assert figures.supplies["G"].current_a == pytest.approx(0.02 * duty, rel=5e-4)
    assert math.isclose(figures.parts["E"].light, 1.0, rel_tol=1e-3)
