"""Rules about which way current goes: a plan that earns each, and one like it that does not."""

import pytest
from support.findings import rules
from support.networks import draw

LAMP = ("lamp-12v", {})


def tied(other):
    return draw(
        {"G1": ("battery-alkaline", {"in_series": 8}), "G2": other, "E1": LAMP},
        [("G1:+", "E1:1"), ("G1:-", "E1:2"), ("G2:+", "G1:+"), ("G2:-", "G1:-")],
    )


def leds(*ways):
    ends = [("A", "K") if way == "+" else ("K", "A") for way in ways]
    wires = [w for n, (a, b) in enumerate(ends, 1) for w in (("G1:+", f"E{n}:{a}"), ("G1:-", f"E{n}:{b}"))]
    return draw({"G1": "supply-regulated", **{f"E{n}": "led-red" for n in range(1, len(ways) + 1)}}, wires)


def behind_reverser(position):
    wires = [("G1:+", "S1:14"), ("S1:14", "S1:22"), ("G1:-", "S1:24"), ("S1:24", "S1:12")]
    parts = {"G1": "supply-regulated", "S1": ("toggle-on-on-2p", {}, position), "P1": "indicator-red"}
    return draw(parts, [*wires, ("S1:11", "P1:A"), ("S1:21", "P1:K")])


def behind_diode(light):
    one, other = ("A", "K") if light.startswith("led") else ("1", "2")
    return draw(
        {"G1": "supply-ac", "D1": "diode", "E1": light},
        [("G1:~1", "D1:A"), ("D1:K", f"E1:{one}"), (f"E1:{other}", "G1:~2")],
    )


def switched(plus):
    before, after = ("+", "-") if plus else ("-", "+")
    wires = [(f"G1:{before}", "S1:13"), ("S1:14", "E1:1"), (f"G1:{after}", "E1:2")]
    return draw({"G1": "supply-regulated", "S1": "toggle-on-off", "E1": LAMP}, wires)


def sharing(second):
    wires = [("G1:+", "R1:1"), *(w for n in "12" for w in (("R1:2", f"E{n}:A"), ("G1:-", f"E{n}:K")))]
    held = ("resistor", {"resistance": 560.0})
    return draw({"G1": "supply-regulated", "R1": held, "E1": "led-red-bare", "E2": second}, wires)


CASES = {
    "battery-charged": (
        tied(("battery-nimh", {"in_series": 10})),
        tied(("battery-alkaline", {"in_series": 8})),
    ),
    "supply-backward": (leds("-", "-", "-"), leds("-", "-", "+")),
    "turned-round": (behind_reverser("down"), behind_reverser("up")),
    "half-waves": (behind_diode("led-red"), behind_diode("lamp-16v")),
    "switch-in-return": (switched(plus=False), switched(plus=True)),
    "leds-share-resistor": (sharing("led-white-bare"), sharing("led-red-bare")),
}


@pytest.mark.parametrize("rule", CASES)
def test_the_rule_speaks_where_it_should_and_else_is_silent(rule):
    earns, does_not = CASES[rule]
    assert rules(earns)[rule] == 1 and rules(does_not)[rule] == 0
