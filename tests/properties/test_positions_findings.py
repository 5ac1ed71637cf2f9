"""Too much in some positions only: found when asked for, with the switches that bring it about."""

from support.networks import draw, kinds, resistor

from wiring.findings.situation import examine
from wiring.plan.plan import Plan

RULES = ("supply-worst-case", "fuse-worst-case", "wire-worst-case")


def two_loads(
    rating_a: float, size: str = "16 AWG", supply: dict[str, object] | None = None, ohms: float = 11.9
) -> Plan:
    """Two loads on 12 V behind one fuse, each with its switch; an ampere unless told."""
    parts = {
        "G1": ("supply-regulated", {"limit_a": 5.0, "on_overload": "holds current", **(supply or {})}),
        "F1": ("fuse", {"rating_a": rating_a, "cold_ohm": 0.01}),
        "S1": "toggle-on-off", "S2": "toggle-on-off", "R1": resistor(ohms), "R2": resistor(ohms),
    }  # fmt: skip
    wide = {"size": size}
    wires = [("G1:+", "F1:1", wide), ("F1:2", "S1:13", wide), ("F1:2", "S2:13", wide),
             ("S1:14", "R1:1", wide), ("S2:14", "R2:1", wide), ("R1:2", "G1:-", wide),
             ("R2:2", "G1:-", wide)]  # fmt: skip
    return draw(parts, wires, 0.2)


def found(plan: Plan, positions: dict[str, str]):
    findings = examine(plan, kinds(), positions, every_position=True).findings
    return {f.rule: f for f in findings if f.rule in RULES}


def test_a_fuse_that_holds_one_load_but_not_two() -> None:
    finding = found(two_loads(1.25), {"S1": "on", "S2": "off"})["fuse-worst-case"]
    assert finding.parts == ("F1", "S2")
    assert finding.what == "-F1 is 1.25 A and carries 1.99 A when -S2 stands at “on”."


def test_both_switches_are_named_when_both_must_be_thrown() -> None:
    finding = found(two_loads(1.25), {"S1": "off", "S2": "off"})["fuse-worst-case"]
    assert finding.parts == ("F1", "S1", "S2")
    assert "when -S1 and -S2 stand at “on”" in finding.what


def test_nothing_new_is_said_of_what_is_wrong_already() -> None:
    assert "fuse-worst-case" not in found(two_loads(1.25), {"S1": "on", "S2": "on"})


def test_nothing_is_found_where_all_positions_are_right() -> None:
    assert found(two_loads(4.0), {"S1": "off", "S2": "off"}) == {}


def test_a_supply_that_only_both_loads_overload() -> None:
    finding = found(two_loads(4.0, supply={"limit_a": 1.5}), {"S1": "on", "S2": "off"})["supply-worst-case"]
    assert finding.parts == ("G1", "S2")
    assert finding.what == "-G1 is made for 1.5 A and is asked for more when -S2 stands at “on”."


def test_a_wire_that_both_loads_overload() -> None:
    finding = found(two_loads(4.0, "26 AWG", ohms=40.0), {"S1": "off", "S2": "on"})["wire-worst-case"]
    assert finding.wires == ("w1",) and finding.parts == ("S1",)


def test_it_is_not_asked_for_in_every_keystroke() -> None:
    plan = two_loads(1.25)
    assert not {f.rule for f in examine(plan, kinds(), {"S1": "on", "S2": "off"}).findings} & set(RULES)
