"""Each rule about lamps, motors, coils and loose ends speaks where it should and else is silent."""

import msgspec
import pytest
from support.findings import found, rules, situation
from support.networks import draw, kinds, resistor, stiff

from wiring.findings.finding import Rank
from wiring.plan.scene import Scene
from wiring.studies.pulses import pulses_of

LAMP, LED, BARE = "lamp-12v", "led-warm-white", "led-white-bare"


def pair(supply, part, first="A", second="K"):
    return draw({"G1": supply, "E1": part}, [("G1:+", f"E1:{first}"), ("G1:-", f"E1:{second}")])


def through(supply, before, part, first="A", second="K", enters="1", leaves="2"):
    """A resistor or diode ahead of a part."""
    return draw(
        {"G1": supply, "R1": before, "E1": part},
        [("G1:+", f"R1:{enters}"), (f"R1:{leaves}", f"E1:{first}"), (f"E1:{second}", "G1:-")],
    )


def strip(wires):
    """So many wires on one terminal of a strip."""
    lamps = [f"E{i}" for i in range(1, wires)]
    joined = [w for lamp in lamps for w in (("X1:1", f"{lamp}:1"), (f"{lamp}:2", "G1:-"))]
    parts = {"G1": "supply-regulated", "X1": "terminal-strip-4", **dict.fromkeys(lamps, LAMP)}
    return draw(parts, [("G1:+", "X1:1"), *joined])


def coils(switch, closing, supply="supply-regulated", **fields):
    fields = {"size": "26 AWG", **fields}
    return draw(
        {"G1": supply, "S1": switch, "M1": "twin-coil"},
        [("G1:+", "S1:13", fields), (f"S1:{closing}", "M1:N", fields), ("M1:C", "G1:-", fields)],
    )


def relay(volts):
    return draw({"G1": stiff(volts), "K1": "relay"}, [("G1:+", "K1:A1"), ("G1:-", "K1:A2")])


BUZZER = draw(
    {"G1": "supply-regulated", "K1": "relay"}, [("G1:+", "K1:11"), ("K1:12", "K1:A1"), ("K1:A2", "G1:-")]
)
SOUND = "sound-module"

CASES = {
    "led-without-resistor": (
        pair("supply-regulated", BARE),
        through("supply-regulated", resistor(470), BARE),
    ),
    "led-current": (
        through("supply-regulated", resistor(100), BARE),
        through("supply-regulated", resistor(470), BARE),
    ),
    "led-backward": (pair("supply-regulated", LED, "K", "A"), pair("supply-regulated", LED)),
    "wrong-polarity": (pair("supply-regulated", SOUND, "-", "+"), pair("supply-regulated", SOUND, "+", "-")),
    "lamp-over-volts": (pair(stiff(16), LAMP, "1", "2"), pair(stiff(12), LAMP, "1", "2")),
    "lamp-dim": (pair(stiff(5), LAMP, "1", "2"), pair(stiff(12), LAMP, "1", "2")),
    "resistor-power": (
        pair(stiff(12), ("resistor", {"resistance": 100.0, "rated_power": 0.25}), "1", "2"),
        pair(stiff(12), ("resistor", {"resistance": 1000.0, "rated_power": 0.25}), "1", "2"),
    ),
    "coil-held": (coils("toggle-on-off", "14"), coils("push-to-make", "14")),
    "pulse-weak": (coils("push-to-make", "14", length_m=12.0), coils("push-to-make", "14", length_m=1.0)),
    "pulse-over-limit": (
        coils("push-to-make", "14", ("supply-regulated", {"limit_a": 0.5})),
        coils("push-to-make", "14", ("supply-regulated", {"limit_a": 2.0})),
    ),
    "relay-weak": (relay(6.0), relay(12.0)),
    "relay-buzzing": (BUZZER, relay(12.0)),
    "motor-weak": (pair(stiff(5), "stall-motor", "M1", "M2"), pair(stiff(12), "stall-motor", "M1", "M2")),
    "part-over-volts": (
        pair(stiff(12), "servo", "+", "-"),
        pair(stiff(5), "servo", "+", "-"),
    ),
    "module-starved": (pair(stiff(3), "flasher", "+", "-"), pair(stiff(12), "flasher", "+", "-")),
    "collapsed": (
        through("supply-regulated", resistor(60), SOUND, "+", "-"),
        through("supply-regulated", resistor(1), SOUND, "+", "-"),
    ),
    "floating": (
        draw({"E1": LAMP, "E2": LAMP}, [("E1:1", "E2:1"), ("E1:2", "E2:2")]),
        pair("supply-regulated", LAMP, "1", "2"),
    ),
    "terminal-free": (
        draw({"G1": "supply-regulated", "E1": LAMP}, [("G1:+", "E1:1")]),
        pair("supply-regulated", LAMP, "1", "2"),
    ),
    "not-wired": (draw({"E1": LAMP}, []), pair("supply-regulated", LAMP, "1", "2")),
    "wire-loose": (
        draw({"G1": "supply-regulated", "X1": "terminal-strip-4"}, [("G1:+", "X1:1"), ("G1:-", "X1:2")]),
        draw(
            {"G1": "supply-regulated", "X1": "terminal-strip-4", "E1": LAMP},
            [("G1:+", "X1:1"), ("G1:-", "X1:2"), ("X1:1", "E1:1"), ("X1:2", "E1:2")],
        ),
    ),
    "wire-nowhere": (
        draw({"G1": "supply-regulated", "E1": LAMP}, [("G1:+", "E1:1"), ("G1:-", "E1:2"), ("G1:+", "E1:9")]),
        pair("supply-regulated", LAMP, "1", "2"),
    ),
    "unknown-kind": (draw({"E1": "gas-lantern"}, []), pair("supply-regulated", LAMP, "1", "2")),
    "dc-part-on-ac": (
        draw({"G1": "supply-ac", "E1": LED}, [("G1:~1", "E1:A"), ("G1:~2", "E1:K")]),
        draw(
            {"G1": "supply-ac", "T1": "rectifier", "E1": LED},
            [("G1:~1", "T1:~1"), ("G1:~2", "T1:~2"), ("T1:+", "E1:A"), ("T1:-", "E1:K")],
        ),
    ),
    "diode-current": (
        through(stiff(12), "diode", resistor(6), "1", "2", "A", "K"),
        through(stiff(12), "diode", resistor(60), "1", "2", "A", "K"),
    ),
    "terminal-crowded": (strip(3), strip(2)),
    "setting-odd": (
        pair("supply-regulated", ("lamp-12v", {"rated_v": "many"}), "1", "2"),
        pair("supply-regulated", ("lamp-12v", {"rated_v": 14.0}), "1", "2"),
    ),
    "not-solved": (
        draw({"G1": "supply-regulated", "E1": LAMP}, [("G1:+", "E1:1", {"size": "thick"}), ("G1:-", "E1:2")]),
        pair("supply-regulated", LAMP, "1", "2"),
    ),
}


@pytest.mark.parametrize("rule", CASES)
def test_the_rule_speaks(rule):
    assert rule in rules(CASES[rule][0])


@pytest.mark.parametrize("rule", CASES)
def test_the_rule_is_silent(rule):
    assert rule not in rules(CASES[rule][1])


def street(*ohms):
    """Lamps of one kind in one scene, each behind its own resistance."""
    names = [f"E{i}" for i in range(len(ohms))]
    parts = {"G1": stiff(12), **dict.fromkeys(names, LAMP)}
    wires = []
    for i, (name, ohm) in enumerate(zip(names, ohms, strict=True)):
        parts[f"R{i}"] = resistor(ohm)
        wires += [("G1:+", f"R{i}:1"), (f"R{i}:2", f"{name}:1"), (f"{name}:2", "G1:-")]
    plan = draw(parts, wires)
    scene = Scene(id="s", name="quay")
    lit = {k: msgspec.structs.replace(p, scene="s") if k in names else p for k, p in plan.parts.items()}
    return plan.with_changes(parts=lit, scenes={"s": scene})


def test_uneven_lamps_of_a_scene_are_told_once():
    assert rules(street(1, 1, 60))["lamps-uneven"] == 1
    assert "lamps-uneven" not in rules(street(1, 2, 1))
    assert found(street(1, 1, 60), "lamps-uneven").parts == ("E2", "E0")


def test_a_switched_off_lamp_is_not_called_dim():
    plan = draw(
        {"G1": "supply-regulated", "S1": "toggle-on-off", "E1": LAMP},
        [("G1:+", "S1:13"), ("S1:14", "E1:1"), ("E1:2", "G1:-")],
    )
    assert "lamp-dim" not in rules(plan, {"S1": "off"})


def test_an_led_behind_an_open_switch_is_still_found_bare():
    plan = draw(
        {"G1": "supply-regulated", "S1": "toggle-on-off", "E1": BARE},
        [("G1:+", "S1:13"), ("S1:14", "E1:A"), ("E1:K", "G1:-")],
    )
    assert "led-without-resistor" in rules(plan, {"S1": "off"})


def test_the_resistor_that_is_advised_puts_the_led_right():
    mend = found(pair("supply-regulated", BARE), "led-without-resistor").mend
    assert "470 Ω" in mend
    assert not {r for r in rules(through("supply-regulated", resistor(470), BARE)) if r.startswith("led")}


def test_the_gravest_come_first():
    findings = situation(CASES["led-without-resistor"][0]).findings
    assert [f.rank for f in findings] == sorted((f.rank for f in findings), reverse=True)


def test_parts_without_wires_make_one_finding():
    plan = draw({f"E{i}": LAMP for i in range(9)}, [])
    assert rules(plan)["not-wired"] == 1
    assert len(found(plan, "not-wired").parts) == 9


def test_a_fault_is_told_once_only():
    assert "not-solved" not in rules(CASES["setting-odd"][0])
    assert "not-solved" not in rules(CASES["unknown-kind"][0])


def test_free_terminals_of_many_parts_make_one_finding():
    names = [f"E{i}" for i in range(8)]
    parts = {"G1": "supply-regulated", **dict.fromkeys(names, LAMP)}
    plan = draw(parts, [(f"{name}:1", "G1:+") for name in names])
    assert rules(plan)["terminal-free"] == 1
    assert set(found(plan, "terminal-free").parts) == {"G1", *names}


def test_the_pulse_is_what_the_solver_gives_with_the_button_held():
    plan = coils("push-to-make", "14", length_m=12.0)
    held = situation(plan, {"S1": "pressed"})
    (pulse,) = pulses_of(plan, kinds(), held.figures, situation(plan).joints)
    assert pulse.coil_v == pytest.approx(held.figures.parts["M1"].volts_v, rel=0.01)
    assert pulse.current_a == pytest.approx(held.figures.wires["w1"].current_a, rel=0.01)


def test_the_size_that_is_advised_for_a_pulse_would_do():
    mend = found(coils("push-to-make", "14", length_m=12.0), "pulse-weak").mend
    size = mend.split("Use ")[1].split(" for")[0]
    assert "pulse-weak" not in rules(coils("push-to-make", "14", length_m=12.0, size=size))


@pytest.mark.parametrize(
    ("volts", "part", "ends", "rank"),
    [
        (18, "stall-motor", ("M1", "M2"), Rank.WEAK),
        (12, "servo", ("+", "-"), Rank.DANGER),
        (16, "relay", ("A1", "A2"), Rank.WEAK),
        (30, "constant-current-light", ("+", "-"), Rank.WEAK),
    ],
)
def test_over_volts_rank_by_what_they_do(volts, part, ends, rank):
    assert found(pair(stiff(volts), part, *ends), "part-over-volts").rank is rank


def test_a_servo_short_of_volts_is_told_once():
    seen = rules(pair(stiff(2.5), "servo", "+", "-"))
    assert seen["module-starved"] == 1
    assert seen["motor-weak"] == 0
