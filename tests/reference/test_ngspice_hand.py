"""Hand-made circuits, each solved by ngspice from the exported netlist: same equations, another program."""

from pathlib import Path

import pytest
from support.networks import draw, lamp_street, resistor, stiff
from support.ngspice import needs_ngspice, run
from support.solved import check_figures

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.gathering import figures_of
from wiring.circuit.spice import netlist, node_names
from wiring.circuit.states import settle
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

pytestmark = [pytest.mark.ngspice, needs_ngspice]
HOLDS = ("supply-regulated", {"on_overload": "holds current"})
FOLDS = ("supply-regulated", {"on_overload": "folds back"})


def lamp(kind: str, supply: object = "supply-regulated", count: int = 6) -> Plan:
    return lamp_street(count, kind, supply)


def pair(one: object, other: object, *, crossed: bool = False, length_m: float = 0.5) -> Plan:
    plus, minus = ("-", "+") if crossed else ("+", "-")
    parts = {"G1": one, "G2": other, "R1": resistor(47.0)}
    wires = [("G1:+", f"G2:{plus}"), ("G1:-", f"G2:{minus}"), ("G1:+", "R1:1"), ("R1:2", "G1:-")]
    return draw(parts, wires, length_m)


def loop(part: object, plus: str, minus: str, supply: object, length_m: float = 2.0) -> Plan:
    parts = {"G1": supply, "A1": part}
    return draw(parts, [("G1:+", f"A1:{plus}"), ("G1:-", f"A1:{minus}")], length_m)


PLANS = {
    "white lamps on a street": lamp("led-white"),
    "filaments on a street": lamp("lamp-12v"),
    "filaments overload an unregulated supply": lamp("lamp-12v", "supply-unregulated", 20),
    "filaments overload a supply that holds its current": lamp("lamp-12v", HOLDS, 40),
    "filaments overload a supply that folds back": lamp("lamp-12v", FOLDS, 40),
    "bare leds straight on a battery": lamp("led-red-bare", "battery-alkaline"),
    "bare leds straight on a limiting supply": lamp("led-white-bare", HOLDS),
    "leds on a 9 V block": lamp("led-warm-white", "battery-9v"),
    "flashers": lamp("flasher"),
    "constant-current lights": lamp("constant-current-light"),
    "constant-current lights below their drop-out": lamp(
        "constant-current-light", ("battery-alkaline", {"in_series": 2})
    ),
    "sound modules": lamp("sound-module", "battery-alkaline"),
    "led strips": lamp("led-strip-warm-white"),
    "a short across a supply that holds its current": draw({"G1": HOLDS}, [("G1:+", "G1:-")], 3.0),
    "a short across a battery": draw({"G1": "battery-alkaline"}, [("G1:+", "G1:-")], 3.0),
    "two batteries side by side": pair("battery-alkaline", ("battery-alkaline", {"in_series": 7})),
    "two batteries head to tail": pair("battery-alkaline", "battery-nimh", crossed=True),
    "a supply lifted by a higher one": pair("supply-regulated", ("supply-regulated", {"volts": 15.0})),
    "led the wrong way round": loop("led-green", "K", "A", "supply-regulated"),
    "diode the wrong way round": loop("diode", "K", "A", "battery-9v"),
    "motor": loop("stall-motor", "M1", "M2", "supply-regulated"),
    "servo": loop("servo", "+", "-", ("supply-regulated", {"volts": 5.0})),
    "wheatstone bridge, unbalanced": draw(
        {"G": stiff(10.0), "R1": resistor(12), "R2": resistor(18), "R3": resistor(6), "R4": resistor(18),
         "R5": resistor(12)},
        [("G:+", "R1:1"), ("G:+", "R2:1"), ("R1:2", "R3:1"), ("R2:2", "R3:2"), ("R1:2", "R4:1"),
         ("R2:2", "R5:1"), ("R4:2", "G:-"), ("R5:2", "G:-")],
    ),
    "rectifier on direct current": draw(
        {"G": "battery-alkaline", "T": "rectifier", "E": "led-red"},
        [("G:+", "T:~1"), ("G:-", "T:~2"), ("T:+", "E:A"), ("T:-", "E:K")], 0.5,
    ),
    "loose ends": draw(
        {"G": "battery-9v", "E1": "led-red", "E2": "led-blue", "R": resistor(100)},
        [("G:+", "E1:A"), ("E1:K", "G:-"), ("E1:K", "E2:K"), ("E2:A", "R:1")], 0.5,
    ),
}  # fmt: skip


NOSE_TO_NOSE = draw(
    {"G": "battery-9v", "E1": "led-red", "E2": "led-blue"},
    [("G:+", "E1:A"), ("E1:K", "E2:K"), ("E2:A", "G:-")], 0.5,
)  # fmt: skip


@pytest.mark.parametrize("name", PLANS)
def test_operating_point_is_that_of_ngspice(name: str, tmp_path: Path) -> None:
    agree(PLANS[name], tmp_path)


def test_a_node_that_only_leaks_hold_is_that_of_ngspice(tmp_path: Path) -> None:
    agree(NOSE_TO_NOSE, tmp_path, gmin="1e-15")  # its usual 1e-12 S beside each diode would shift this node


def agree(plan: Plan, folder: Path, gmin: str = "1e-12") -> None:
    kinds = builtin_kinds()
    settled = settle(plan, kinds, in_use(plan, kinds), None)
    check_figures(plan, figures_of(settled))
    theirs = run(netlist(settled).replace("gmin=1e-12", f"gmin={gmin}"), folder)
    names = node_names(settled)
    assert names
    for node, called in names.items():
        ours = settled.reading.nodes[node]
        assert theirs[called] == pytest.approx(ours, rel=1e-6, abs=1e-6), called
