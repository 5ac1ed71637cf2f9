"""What the solver says about plans that go wrong, and about parts that decide for themselves."""

import pytest
from support.networks import draw, lamp_street, resistor, stiff
from support.solved import check_power, solved, unsolved

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.figures import Figures, Problem
from wiring.circuit.solve import solve

HOLDS = ("supply-regulated", {"on_overload": "holds current", "limit_a": 2.0})
FOLDS = ("supply-regulated", {"on_overload": "folds back", "limit_a": 2.0})
SHUTS = ("supply-regulated", {"on_overload": "shuts off", "limit_a": 2.0})


def the(figures: Figures, code: str) -> Problem:
    found = [problem for problem in figures.problems if problem.code == code]
    assert len(found) == 1, figures.problems
    return found[0]


def test_a_short_names_its_path_and_the_supply_stands_in_its_limit() -> None:
    plan = draw({"G1": HOLDS, "X1": "terminal-strip-4", "F1": "fuse", "E1": "led-red"},
                [("G1:+", "F1:1"), ("F1:2", "X1:1"), ("X1:1", "E1:A"), ("E1:K", "G1:-"), ("X1:1", "G1:-"),
                 ("X1:2", "G1:-")], 1.0)  # fmt: skip
    figures = solved(plan)
    problem = the(figures, "shorted")
    assert problem.parts == ("G1", "F1")
    assert set(problem.wires) == {"w1", "w2", "w5"}
    assert problem.words.startswith("-G1 is shorted through wires -W1, -W2 and -W5 and -F1")
    assert figures.supplies["G1"].limited
    assert figures.supplies["G1"].current_a == pytest.approx(2.0, rel=0.011)
    assert figures.supplies["G1"].volts_v < 1.0


def test_a_supply_that_shuts_off_gives_nothing() -> None:
    figures = solved(lamp_street(60, "lamp-12v", SHUTS))
    assert the(figures, "over limit").parts == ("G1",)
    assert figures.supplies["G1"].limited
    assert figures.supplies["G1"].current_a == pytest.approx(0.0, abs=1e-6)
    assert figures.parts["E1"].light == 0.0


def test_a_supply_that_folds_back_gives_less_than_its_limit() -> None:
    held = solved(lamp_street(60, "lamp-12v", HOLDS)).supplies["G1"]
    folded = solved(lamp_street(60, "lamp-12v", FOLDS)).supplies["G1"]
    assert held.limited
    assert folded.limited
    assert folded.volts_v < held.volts_v
    share = 0.3 + 0.7 * folded.volts_v / 12.0
    assert folded.current_a == pytest.approx(2.0 * share, rel=0.011)


def test_parts_no_supply_feeds_float_at_nothing() -> None:
    plan = draw({"G1": "battery-9v", "E1": "led-red", "E2": "lamp-12v", "R1": resistor(100)},
                [("G1:+", "E1:A"), ("G1:-", "E1:K"), ("E2:1", "R1:1"), ("E2:2", "R1:2")])  # fmt: skip
    figures = solved(plan)
    problem = the(figures, "floating")
    assert problem.parts == ("E2", "R1")
    assert problem.wires == ("w3", "w4")
    assert figures.parts["E2"].current_a == 0.0
    assert not [ref for ref in figures.terminals if ref.part == "E2"]


def test_an_open_switch_is_no_problem() -> None:
    plan = draw({"G1": "battery-9v", "S1": "toggle-on-off", "E1": "led-red"},
                [("G1:+", "S1:13"), ("S1:14", "E1:A"), ("E1:K", "G1:-")], 0.5)  # fmt: skip
    off, on = solved(plan, {"S1": "off"}), solved(plan, {"S1": "on"})
    assert off.problems == on.problems == ()
    assert off.parts["E1"].current_a == 0.0
    assert off.supplies["G1"].volts_v > on.supplies["G1"].volts_v
    assert on.parts["E1"].light > 0.1
    assert off.circuits == on.circuits == (("G1", "S1", "E1"),)


def test_a_led_the_wrong_way_round() -> None:
    figures = solved(draw({"G1": "battery-9v", "E1": "led-red"}, [("G1:+", "E1:K"), ("G1:-", "E1:A")], 0.5))
    assert the(figures, "backward").parts == ("E1",)
    assert figures.parts["E1"].light == 0.0
    assert figures.parts["E1"].volts_v < -9.0


def test_batteries_of_unlike_volts_side_by_side() -> None:
    plan = draw({"G1": ("battery-alkaline", {"in_series": 8}), "G2": ("battery-alkaline", {"in_series": 6})},
                [("G1:+", "G2:+"), ("G1:-", "G2:-")], 0.5)  # fmt: skip
    figures = solved(plan)
    assert the(figures, "loop").parts == ("G2", "G1")
    assert figures.supplies["G2"].current_a < -0.1
    assert figures.supplies["G1"].current_a == pytest.approx(-figures.supplies["G2"].current_a)


def test_a_supply_across_a_lower_one_does_not_feed_it() -> None:
    plan = draw({"G1": ("supply-regulated", {"volts": 12.0}), "G2": ("supply-regulated", {"volts": 9.0})},
                [("G1:+", "G2:+"), ("G1:-", "G2:-")], 0.5)  # fmt: skip
    figures = solved(plan)
    assert the(figures, "loop").parts[0] == "G2"
    assert abs(figures.supplies["G2"].current_a) < 1e-5


def test_supplies_head_to_tail_work_against_each_other() -> None:
    plan = draw({"G1": HOLDS, "G2": HOLDS}, [("G1:+", "G2:-"), ("G1:-", "G2:+")], 0.5)
    figures = solved(plan)
    loops = [p for p in figures.problems if p.code == "loop"]
    assert {p.parts[0] for p in loops} == {"G1", "G2"}


def test_a_module_that_cannot_start() -> None:
    settings = {"power": 6.0, "min_v": 8.0}
    weak = ("battery-9v", {})
    plan = draw({"G1": weak, "B1": ("sound-module", settings)}, [("G1:+", "B1:+"), ("G1:-", "B1:-")], 20.0)
    figures = solved(plan)
    assert the(figures, "collapsed").parts == ("B1",)
    assert figures.parts["B1"].state == "starved"
    assert figures.parts["B1"].volts_v < 8.0


@pytest.mark.parametrize("power_w", [10.0, 12.0, 17.0])
def test_a_module_that_can_run_is_shown_running(power_w: float) -> None:
    """12 V behind 2 ohm gives at most 18 W; of two states the running one is shown."""
    supply = (
        "supply-regulated",
        {"volts": 12.0, "ohms": 2.0, "limit_a": 50.0, "on_overload": "holds current"},
    )
    module = ("sound-module", {"power": power_w, "min_v": 4.0})
    figures = solved(draw({"G1": supply, "B1": module}, [("G1:+", "B1:+"), ("G1:-", "B1:-")]))
    assert figures.parts["B1"].volts_v == pytest.approx(6.0 + (36.0 - 2.0 * power_w) ** 0.5, rel=1e-4)
    assert figures.parts["B1"].power_w == pytest.approx(power_w, rel=1e-6)


def test_a_relay_pulls_in_and_lights_a_lamp() -> None:
    plan = draw({"G1": HOLDS, "S1": "toggle-on-off", "K1": "relay", "E1": "led-red", "E2": "led-green"},
                [("G1:+", "S1:13"), ("S1:14", "K1:A1"), ("K1:A2", "G1:-"), ("G1:+", "K1:11"),
                 ("K1:12", "E1:A"), ("K1:14", "E2:A"), ("E1:K", "G1:-"), ("E2:K", "G1:-")], 0.3)  # fmt: skip
    off, on = solved(plan, {"S1": "off"}), solved(plan, {"S1": "on"})
    assert off.parts["K1"].state == "released"
    assert off.parts["E1"].light > 0.5
    assert off.parts["E2"].light == 0.0
    assert on.parts["K1"].state == "operated"
    assert on.parts["E1"].light == 0.0
    assert on.parts["E2"].light > 0.5


def test_a_relay_that_takes_its_own_current_away_buzzes() -> None:
    plan = draw({"G1": "supply-regulated", "K1": "relay"},
                [("G1:+", "K1:11"), ("K1:12", "K1:A1"), ("K1:A2", "G1:-")], 0.3)  # fmt: skip
    assert the(solved(plan), "buzzing").parts == ("K1",)


def test_a_relay_that_holds_itself_stays_as_it_was() -> None:
    plan = draw({"G1": "supply-regulated", "S1": "push-to-make", "K1": "relay"},
                [("G1:+", "S1:13"), ("S1:14", "K1:A1"), ("G1:+", "K1:11"), ("K1:14", "K1:A1"),
                 ("K1:A2", "G1:-")], 0.3)  # fmt: skip
    assert solved(plan, {"K1": "released"}).parts["K1"].state == "released"
    assert solved(plan, {"K1": "operated"}).parts["K1"].state == "operated"
    assert solved(plan, {"K1": "released", "S1": "pressed"}).parts["K1"].state == "operated"


def test_an_unregulated_supply_sags_in_a_straight_line() -> None:
    supply = ("supply-unregulated", {"rated_v": 12.0, "rated_a": 1.0, "open_v": 16.0})
    for amps, volts in ((0.0, 16.0), (0.5, 14.0), (1.0, 12.0)):
        load = resistor(volts / amps if amps else 1e9)
        figure = solved(draw({"G1": supply, "R1": load}, [("G1:+", "R1:1"), ("R1:2", "G1:-")])).supplies["G1"]
        assert figure.volts_v == pytest.approx(volts, rel=1e-4)
        assert figure.current_a == pytest.approx(amps, rel=1e-4, abs=1e-6)


def test_a_wire_to_nowhere_and_a_kind_nobody_knows() -> None:
    plan = draw(
        {"G1": stiff(12.0), "R1": resistor(100)}, [("G1:+", "R1:1"), ("R1:2", "G1:-"), ("R1:1", "Z9:7")]
    )
    lost = draw({"Q1": "no-such-kind"}, [])
    figures = solved(plan)
    assert figures.parts["R1"].current_a == pytest.approx(0.12, rel=1e-4)
    assert figures.wires["w3"].current_a == 0.0
    unknown = solve(lost, builtin_kinds(), {})
    assert the(unknown, "not solved").parts == ("Q1",)


NOUGHT_TO_HUGE = (0.0, -1.0, 1e-300, 1e12, float("inf"), float("nan"), "many")


@pytest.mark.parametrize("ohms", [-5.0, "many", float("nan"), 1e300])
def test_a_setting_that_means_nothing_is_named(ohms: object) -> None:
    resistor_like = ("resistor", {"resistance": ohms})
    plan = draw({"G1": "battery-9v", "R1": resistor_like}, [("G1:+", "R1:1"), ("R1:2", "G1:-")])
    figures = solved(plan)
    problem = the(figures, "not solved")
    assert problem.parts == ("R1",)
    assert problem.words.startswith("-R1 is left out: its resistance ")
    assert "R1" not in figures.parts


@pytest.mark.parametrize("key", builtin_kinds())
def test_no_setting_of_any_kind_breaks_the_solver(key: str) -> None:
    """Every number of every kind, one at a time, at values no form lets through: figures, or left out."""
    kind = builtin_kinds()[key]
    first, last = kind.terminals[0].name, kind.terminals[-1].name
    tried = [(setting.name, value) for setting in kind.settings for value in NOUGHT_TO_HUGE]
    parts, wires = {}, []
    for n, (name, value) in enumerate(tried):  # side by side, each on a battery of its own
        parts |= {f"G{n}": "battery-9v", f"A{n}": (key, {name: value})}
        wires += [(f"G{n}:+", f"A{n}:{first}"), (f"G{n}:-", f"A{n}:{last}")]
    plan = draw(parts, wires, 0.5)
    figures = solved(plan)
    check_power(plan, figures, lambda part: part[1:])
    left_out = unsolved(figures)
    for n, (name, value) in enumerate(tried):
        assert (f"A{n}" in figures.parts) != (f"A{n}" in left_out), (name, value)


@pytest.mark.parametrize("length_m", [-1.0, float("nan"), float("inf"), 1e300])
def test_a_length_that_means_nothing_is_named(length_m: float) -> None:
    plan = draw({"G1": "battery-9v", "E1": "led-red"},
                [("G1:+", "E1:A", {"length_m": length_m}), ("G1:-", "E1:K")])  # fmt: skip
    figures = solved(plan)
    problem = the(figures, "not solved")
    assert problem.wires == ("w1",)
    assert problem.words.startswith("-W1 is left out: its length")
    assert figures.parts["E1"].current_a == 0.0


def test_a_size_nobody_makes_is_named() -> None:
    thick = {"size": "a bit thick"}
    plan = draw({"G1": "battery-9v", "E1": "led-red"}, [("G1:+", "E1:A", thick), ("G1:-", "E1:K")])
    assert the(solved(plan), "not solved").wires == ("w1",)
