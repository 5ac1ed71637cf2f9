"""A battery that nothing draws from: the switches that keep it so are named, and only those."""

import pytest
from support.networks import draw, kinds, resistor

from wiring.plan.positions import in_use
from wiring.studies.forecast import forecast
from wiring.studies.held_off import held_off, held_off_words

PACK = ("battery-alkaline", {"in_series": 4})


def two_switches():
    """A battery, a switch, a lamp, and a second switch in the return; a third one that leads nowhere."""
    return draw(
        {
            "G1": PACK,
            "S1": "toggle-on-off",
            "E1": resistor(60.0),
            "S2": "toggle-on-on",
            "S3": "toggle-on-off",
        },
        [("G1:+", "S1:13"), ("S1:14", "E1:1"), ("E1:2", "S2:14"), ("S2:11", "G1:-"), ("G1:+", "S3:13")],
    )


def named(plan, **positions):
    ids = {p.designation: p.id for p in plan.parts.values()}
    there = {**in_use(plan, kinds()), **{ids[name]: position for name, position in positions.items()}}
    off = held_off(plan, kinds(), there, ids["G1"])
    reason = forecast(plan, kinds(), there, ids["G1"]).end_reason
    return {plan.parts[i].designation for i in off}, held_off_words(plan, kinds(), there, off), reason


@pytest.mark.parametrize(
    ("positions", "expected", "words"),
    [
        ({"S1": "off", "S2": "up"}, {"S1"}, "-S1 is off"),
        ({"S1": "on", "S2": "down"}, {"S2"}, "-S2 stands at “down”"),
        ({"S1": "off", "S2": "down"}, {"S1", "S2"}, "-S1 is off and -S2 stands at “down”"),
    ],
)
def test_the_switches_that_are_off_are_named_in_the_reason(positions, expected, words):
    found, said, reason = named(two_switches(), S3="off", **positions)
    assert found == expected and said == words
    assert reason.startswith(f"{words} in this use, so nothing draws from it; ")


def test_with_all_on_none_is_named_and_where_nothing_hangs_neither():
    found, _, reason = named(two_switches(), S1="on", S2="up")
    assert found == set() and "in this use" not in reason
    bare = draw({"G1": PACK, "S1": "toggle-on-off"}, [("G1:+", "S1:13")])
    found, _, reason = named(bare, S1="off")
    assert found == set() and reason.startswith("Nothing draws from it as things stand; ")


def test_of_many_three_are_named_and_the_others_counted():
    parts = {"G1": PACK} | {f"S{n}": "toggle-on-off" for n in range(1, 6)} | {"E1": resistor(60.0)}
    wires = [("E1:2", "G1:-"), *((f"S{n}:14", "E1:1") for n in range(1, 6))]
    plan = draw(parts, [*wires, *(("G1:+", f"S{n}:13") for n in range(1, 6))])
    _, said, _ = named(plan, **{f"S{n}": "off" for n in range(1, 6)})
    assert said == "-S1 is off, -S2 is off, -S3 is off and 2 more keep it off"


def behind(kind, one, other, **more):
    """A battery that feeds a lamp over two terminals of a part, and what else hangs on that part."""
    parts = {"G1": PACK, "X1": kind, "E1": resistor(60.0), **more.pop("parts", {})}
    return draw(parts, [("G1:+", f"X1:{one}"), (f"X1:{other}", "E1:1"), ("E1:2", "G1:-"), *more["wires"]])


COIL = {"G2": "supply-regulated", "S2": "toggle-on-off"}
COIL_WIRES = [("G2:+", "S2:13"), ("S2:14", "X1:A1"), ("G2:-", "X1:A2")]


@pytest.mark.parametrize(
    ("kind", "one", "other", "coil", "stands", "words"),
    [
        ("push-to-make", "13", "14", False, {"X1": "released"}, "-X1 is not pressed"),
        ("relay", "11", "14", True, {"S2": "off"}, "-X1 has not pulled in"),
        ("relay", "11", "12", True, {"S2": "on"}, "-X1 has pulled in"),
        ("stall-motor", "11", "14", False, {"X1": "normal"}, "the contacts of -X1 stand at “normal”"),
        ("plug-2", "1a", "1b", False, {"X1": "apart"}, "-X1 is apart"),
    ],
)
def test_contacts_that_are_no_switches_are_named_as_what_they_are(kind, one, other, coil, stands, words):
    more = {"parts": COIL, "wires": COIL_WIRES} if coil else {"wires": []}
    found, said, reason = named(behind(kind, one, other, **more), **stands)
    assert found == {"X1"} and said == words
    assert reason.startswith(f"{words} in this use, so nothing draws from it; ".replace("the c", "The c", 1))


def test_a_relay_that_another_supply_holds_in_keeps_nothing_off():
    """Its contact 11-14 is closed then, whatever the plan says of it; the lamp draws."""
    plan = behind("relay", "11", "14", parts=COIL, wires=COIL_WIRES)
    found, _, reason = named(plan, S2="on")
    assert found == set() and "in this use" not in reason
