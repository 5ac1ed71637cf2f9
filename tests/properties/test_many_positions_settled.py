"""Sets that need more than one solve, on AC or with relays, are read side by side as each is alone."""

import itertools
from time import process_time

import pytest
from support.networks import draw, kinds, resistor, stiff

from tests.properties.test_many_positions import check, every_set
from wiring.circuit import many_positions
from wiring.circuit.many_positions import solve_positions
from wiring.plan.plan import Plan
from wiring.studies.positions.worst import worst_case


def lamps_on_ac(number: int, rectified: bool = True) -> Plan:
    """Lamps, rectified LEDs (if wished) and resistors on a transformer, each behind a switch of its own."""
    parts = {"G": "supply-ac", "X1": "distribution-block-12", "X2": "distribution-block-12"}
    wires = [("G:~1", "X1:1", {"length_m": 3.0}), ("G:~2", "X2:1", {"length_m": 3.0})]
    for n in range(number):
        parts[f"S{n}"] = "toggle-on-off"
        wires.append((f"X1:{n + 2}", f"S{n}:13"))
        if n % 3 == 2 and rectified:
            parts |= {f"T{n}": "rectifier", f"E{n}": ("led-white", {"series_ohm": 1000.0})}
            wires += [(f"S{n}:14", f"T{n}:~1"), (f"X2:{n + 2}", f"T{n}:~2")]
            wires += [(f"T{n}:+", f"E{n}:A"), (f"T{n}:-", f"E{n}:K")]
        else:
            parts[f"E{n}"] = resistor(60.0) if n % 3 else "lamp-16v"
            wires += [(f"S{n}:14", f"E{n}:1"), (f"E{n}:2", f"X2:{n + 2}")]
    return draw(parts, wires, 0.4)


def chain_of_relays(number: int) -> Plan:
    """Each relay's contact feeds the next one's coil; a switch feeds the first, a lamp hangs on the last."""
    parts, wires = {"G": stiff(12.0, 0.5), "S0": "toggle-on-off"}, [("G:+", "S0:13")]
    feed = "S0:14"
    for n in range(number):
        parts |= {f"K{n}": "relay", f"S{n + 1}": "toggle-on-off"}
        wires += [(feed, f"K{n}:A1"), (f"K{n}:A2", "G:-"), ("G:+", f"K{n}:11")]
        wires += [(f"K{n}:14", f"S{n + 1}:13")]
        feed = f"S{n + 1}:14"
    parts["E"] = "lamp-12v"
    return draw(parts, [*wires, (feed, "E:1"), ("E:2", "G:-")], 0.3)


def behind_a_converter(ohms: float, feed_ohm: float = 0.2) -> Plan:
    """Loads on five volts and one on twelve, each switched; a weak feed lets the converter's input sag."""
    parts = {"G": stiff(12.0, feed_ohm), "C": "converter-5v", "X": "distribution-block-6"}
    wires = [("G:+", "C:+"), ("G:-", "X:1"), ("C:-", "X:2"), ("G:+", "S2:13")]
    for n in range(3):
        parts |= {f"S{n}": "toggle-on-off", f"R{n}": resistor(ohms * (n + 1))}
        wires += [(f"S{n}:14", f"R{n}:1"), (f"R{n}:2", f"X:{n + 3}")]
        wires += [] if n == 2 else [("C:O", f"S{n}:13")]
    return draw(parts, wires, 0.3)


SETTLED = {
    "ac": lamps_on_ac(4),
    "relays": chain_of_relays(2),
    "converter": behind_a_converter(8.0),
    "converter at its limit": behind_a_converter(1.5),
    "converter that breaks down": behind_a_converter(3.0, 8.0),
}


@pytest.mark.parametrize("plan", SETTLED.values(), ids=SETTLED)
def test_each_set_reads_as_it_does_alone(plan: Plan, monkeypatch: pytest.MonkeyPatch) -> None:
    sets = every_set(plan, 16)
    alone: list[object] = []
    settle = many_positions.settle
    monkeypatch.setattr(many_positions, "settle", lambda *given: alone.append(given) or settle(*given))
    check(plan, sets)
    assert not alone  # every set was read beside the others


def test_many_sets_on_ac_cost_far_less_than_one_by_one() -> None:
    plan = lamps_on_ac(6, rectified=False)
    sets = [
        dict(zip([f"S{n}" for n in range(6)], stands, strict=True))
        for stands in itertools.product(("on", "off"), repeat=6)
    ]
    solve_positions(plan, kinds(), sets[:2])
    begin = process_time()
    solve_positions(plan, kinds(), sets)
    together = process_time() - begin
    begin = process_time()
    for given in sets[:8]:
        solve_positions(plan, kinds(), [given])
    assert together < 8 * (process_time() - begin) / 3


def test_a_buzzing_relay_is_read_as_it_is_alone() -> None:
    parts = {"G": stiff(12.0), "K": "relay", "S": "toggle-on-off"}
    plan = draw(parts, [("G:+", "S:13"), ("S:14", "K:11"), ("K:12", "K:A1"), ("K:A2", "G:-")], 0.2)
    check(plan, every_set(plan, 8))


def test_a_relay_that_holds_itself_is_met_holding() -> None:
    """Nothing but its own contact feeds the coil: started from rest it never pulls in."""
    parts = {"G": stiff(12.0), "K": "relay", "R": resistor(100.0)}
    wires = [("G:+", "K:11"), ("K:14", "K:A1"), ("K:A2", "G:-"), ("K:14", "R:1"), ("R:2", "G:-")]
    found = worst_case(draw(parts, wires, 0.2), kinds(), {})
    coil_ohm = kinds()["relay"].values({})["coil_ohm"]
    assert found.exact
    assert found.supplies["G"].amps == pytest.approx(12.0 / 100.0 + 12.0 / coil_ohm, rel=0.01)
    assert found.supplies["G"].positions == {"K": "operated"}
