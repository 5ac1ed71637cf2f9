"""A reversed LED is excused where switches can turn plus and minus round for it, and nowhere else."""

import time

import pytest
from support.findings import found, rules
from support.networks import draw

PAIR = {"P1": "indicator-red", "P2": "indicator-green"}
MOTOR = {"M1": "stall-motor"}


def across(plus, minus, *ways):
    """Indicators P1, P2 ... across two conductors, "+" the right way round."""
    ends = [("A", "K") if way == "+" else ("K", "A") for way in ways]
    return [
        wire
        for n, (one, other) in enumerate(ends, 1)
        for wire in ((plus, f"P{n}:{one}"), (minus, f"P{n}:{other}"))
    ]


# A changeover of two poles crossed over: the commons 11 and 21 give plus and minus either way round.
CROSSED = [("G1:+", "S1:14"), ("S1:14", "S1:22"), ("G1:-", "S1:24"), ("S1:24", "S1:12")]
REVERSER = {"G1": "supply-regulated", "S1": "toggle-on-on-2p"}
BIPOLAR = {"G1": ("battery-alkaline", {"in_series": 6}), "G2": ("battery-alkaline", {"in_series": 6})}


def reversed_pair(*ways):
    return draw({**REVERSER, **PAIR}, [*CROSSED, *across("S1:11", "S1:21", *ways)])


def bipolar_pair():
    """Two batteries in series with their middle as return; a plain changeover gives plus or minus of it."""
    return draw(
        {**BIPOLAR, "S1": "toggle-on-on", **MOTOR, **PAIR},
        [("G1:-", "G2:+"), ("G1:+", "S1:14"), ("G2:-", "S1:12"), ("S1:11", "M1:M1"), ("G2:+", "M1:M2"),
         *across("S1:11", "G1:-", "+", "-")],
    )  # fmt: skip


def in_series_with_the_motor():
    """The pair back to back in one lead of the motor, as many panels have it."""
    return draw(
        {**REVERSER, **MOTOR, **PAIR},
        [*CROSSED, ("S1:11", "M1:M1"), *across("M1:M2", "S1:21", "+", "-")],
    )


MEANT = {
    "reverser": lambda: reversed_pair("+", "-"),
    "bipolar": bipolar_pair,
    "in series": in_series_with_the_motor,
}


@pytest.mark.parametrize("position", ["up", "down"])
@pytest.mark.parametrize("name", MEANT)
def test_a_pair_that_lights_in_turn_is_left_as_it_is(name, position):
    said = rules(MEANT[name](), {"S1": position})
    assert "led-backward" not in said and "turned-round" not in said


PLAIN = {
    "supply": [*across("G1:+", "G1:-", "+", "-")],
    "on-off switch": [("G1:+", "S2:13"), *across("S2:14", "G1:-", "+", "-")],
    # The changeover chooses which of two runs has plus; minus stays minus.
    "changeover": [("G1:+", "S1:11"), *across("S1:14", "G1:-", "+", "-")],
}


@pytest.mark.parametrize("name", PLAIN)
def test_on_plain_dc_the_reversed_one_never_lights_and_that_is_said(name):
    plan = draw({**REVERSER, "S2": "toggle-on-off", **PAIR}, PLAIN[name])
    finding = found(plan, "led-backward", {"S1": "up", "S2": "on"})
    assert finding.parts == ("P2",) and finding.act.words == "Swap the wires of -P2"
    assert "a pair wants a switch that turns plus and minus round" in finding.mend


def test_a_switch_that_turns_round_something_else_excuses_nothing():
    parts = {**REVERSER, **MOTOR, **PAIR}
    plan = draw(parts, [*CROSSED, ("S1:11", "M1:M1"), ("S1:21", "M1:M2"), *across("G1:+", "G1:-", "+", "-")])
    for position in ("up", "down"):
        assert found(plan, "led-backward", {"S1": position}).parts == ("P2",)


# Its second switch gives the second pole either side, but only while the first pole has minus.
SECOND = [("S1:22", "S2:11"), ("S2:14", "G1:+"), ("S2:12", "G1:-")]
NEVER_ROUND = [("G1:+", "S1:14"), ("G1:+", "S1:24"), ("G1:-", "S1:12"), *SECOND]


@pytest.mark.parametrize("other", ["up", "down"])
def test_poles_that_move_together_excuse_nothing_where_they_never_turn_it_round(other):
    plan = draw({**REVERSER, "S2": "toggle-on-on", "P1": "indicator-red"},
                [*NEVER_ROUND, *across("S1:11", "S1:21", "+")])  # fmt: skip
    positions = {"S1": "down", "S2": other}
    if other == "up":
        assert found(plan, "led-backward", positions).parts == ("P1",)
    else:
        assert not {"led-backward", "turned-round"} & set(rules(plan, positions))


def test_two_switches_that_move_by_themselves_can_turn_it_round():
    sides = [(end, f"{switch}:{n}") for switch in ("S2", "S3") for end, n in (("G1:+", 14), ("G1:-", 12))]
    plan = draw({"G1": "supply-regulated", "S2": "toggle-on-on", "S3": "toggle-on-on", **PAIR},
                [*sides, *across("S2:11", "S3:11", "+", "-")])  # fmt: skip
    for one, other in (("up", "down"), ("down", "up"), ("up", "up")):
        assert not {"led-backward", "turned-round"} & set(rules(plan, {"S2": one, "S3": other}))


def test_a_maze_of_switches_is_looked_through_in_good_time_and_excuses_what_it_can_turn():
    """So many ways that contacts count each by itself; plus and minus crossed over lie beyond the maze."""
    parts = {**REVERSER, **PAIR} | {f"S{n}": "toggle-on-on-2p" for n in range(2, 26)}
    wires = [*CROSSED]
    for n in range(2, 26):
        wires += [
            (f"S{n}:{end}", f"S{n - 1}:{to}") for to, ends in ((11, (14, 22)), (21, (12, 24))) for end in ends
        ]
    plan = draw(parts, [*wires, *across("S25:11", "S25:21", "+", "-")])
    began = time.thread_time()
    said = rules(plan, {part: "up" for part in parts if part.startswith("S")})
    assert not {"led-backward", "turned-round"} & set(said)
    assert time.thread_time() - began < 2.0


def test_a_resistor_as_a_load_across_the_supply_makes_no_way_round():
    plan = draw(
        {"G1": "supply-regulated", "R1": "resistor", **PAIR},
        [("G1:+", "R1:1"), ("G1:-", "R1:2"), *across("G1:+", "G1:-", "+", "-")],
    )
    assert found(plan, "led-backward").parts == ("P2",)


def test_a_lone_led_behind_a_reverser_is_told_of_as_it_stands_and_not_called_miswired():
    plan = draw({**REVERSER, "P1": "indicator-red"}, [*CROSSED, *across("S1:11", "S1:21", "+")])
    assert not {"led-backward", "turned-round"} & set(rules(plan, {"S1": "up"}))
    finding = found(plan, "turned-round", {"S1": "down"})
    assert finding.parts == ("P1",) and finding.act is None
    assert "led-backward" not in rules(plan, {"S1": "down"})


def test_the_words_about_a_pair_are_left_out_where_there_is_none():
    plan = draw({"G1": "supply-regulated", **PAIR, "P3": "led-red"},
                across("G1:+", "G1:-", "+", "+", "-"))  # fmt: skip
    assert found(plan, "led-backward").mend == "Swap its two wires: A goes to plus, K to minus."
