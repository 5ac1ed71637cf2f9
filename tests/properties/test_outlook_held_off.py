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
    return {plan.parts[i].designation for i in off}, held_off_words(plan, there, off), reason


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
