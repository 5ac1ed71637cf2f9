"""Relays that switch, hold, buzz and let go; supplies that sag, hold, fold back and shut off: by hand."""

import pytest
from support.networks import draw, kinds, resistor, stiff
from support.solved import solved

from wiring.circuit.behaviours.feeding import FOLDED_SHARE
from wiring.circuit.spice import spice_netlist
from wiring.findings.situation import examine
from wiring.plan.plan import Plan

RELAY = {"coil_ohm": 270.0, "pull_in_v": 8.4, "rated_v": 12.0}


def coil_at(volts: float, drop_out_v: float = 0.0) -> Plan:
    """A relay whose coil has so many volts and whose contact switches a load."""
    relay = ("relay", {**RELAY, "drop_out_v": drop_out_v})
    parts = {"G1": stiff(volts), "G2": stiff(12.0), "K": relay, "R": resistor(100.0)}
    wires = [("G1:+", "K:A1"), ("K:A2", "G1:-"), ("G2:+", "K:11"), ("K:14", "R:1"), ("R:2", "G2:-")]
    return draw(parts, wires)


@pytest.mark.parametrize(("volts", "stood", "stands"), [
    (12.0, "released", "operated"), (8.5, "released", "operated"), (8.3, "released", "released"),
    (8.3, "operated", "operated"), (1.3, "operated", "operated"), (1.1, "operated", "released"),
])  # fmt: skip
def test_it_pulls_in_at_pull_in_and_lets_go_at_a_tenth_of_rated(
    volts: float, stood: str, stands: str
) -> None:
    figures = solved(coil_at(volts), {"K": stood})
    assert figures.parts["K"].state == stands
    assert (figures.parts["R"].current_a > 0.1) == (stands == "operated")


@pytest.mark.parametrize(("volts", "stands"), [(3.7, "operated"), (3.5, "released")])
def test_it_lets_go_where_its_setting_says(volts: float, stands: str) -> None:
    assert solved(coil_at(volts, drop_out_v=3.6), {"K": "operated"}).parts["K"].state == stands


@pytest.mark.parametrize("wrong", ["much", float("nan"), float("inf"), -1.0, 0.0, None, [8.4], {"v": 8.4}])
@pytest.mark.parametrize("setting", ["pull_in_v", "rated_v", "coil_ohm"])
def test_a_setting_that_means_nothing_is_named_and_the_rest_is_solved(setting: str, wrong: object) -> None:
    plan = coil_at(12.0)
    parts = {**plan.parts, "K": draw({"K": ("relay", {**RELAY, setting: wrong})}, []).parts["K"]}
    plan = plan.with_changes(parts=parts)
    figures = solved(plan, {})
    (problem,) = [p for p in figures.problems if p.parts == ("K",)]
    assert problem.code == "not solved" and "-K is left out" in problem.words
    assert figures.supplies["G1"].current_a == 0.0
    assert spice_netlist(plan, kinds(), {})
    assert [f for f in examine(plan, kinds()).findings if "K" in f.parts]


def test_letting_go_above_pull_in_means_nothing() -> None:
    figures = solved(coil_at(12.0, drop_out_v=9.0))
    assert [p.code for p in figures.problems] == ["not solved"]
    assert "must be less than the voltage it pulls in at" in figures.problems[0].words


def test_a_relay_that_feeds_its_own_coil_through_its_rest_contact_buzzes() -> None:
    plan = draw(
        {"G": stiff(12.0), "K": ("relay", RELAY)}, [("G:+", "K:11"), ("K:12", "K:A1"), ("K:A2", "G:-")]
    )
    (problem,) = [p for p in solved(plan).problems if p.code == "buzzing"]
    assert problem.parts == ("K",)


def test_a_latched_relay_holds_itself_once_thrown() -> None:
    """Its working contact bridges the button: with the button let go it stays, if it was operated."""
    parts = {"G": stiff(12.0), "K": ("relay", RELAY), "S": "push-to-make"}
    wires = [("G:+", "S:13"), ("S:14", "K:A1"), ("K:A2", "G:-"), ("G:+", "K:11"), ("K:14", "K:A1")]
    plan = draw(parts, wires)
    assert solved(plan, {"S": "pressed", "K": "released"}).parts["K"].state == "operated"
    assert solved(plan, {"S": "released", "K": "operated"}).parts["K"].state == "operated"
    assert solved(plan, {"S": "released", "K": "released"}).parts["K"].state == "released"


def test_relays_in_a_row_settle_one_after_the_other() -> None:
    """Each one's contact feeds the next one's coil."""
    parts = {"G": stiff(12.0), **{f"K{n}": ("relay", RELAY) for n in range(5)}}
    wires = [("G:+", "K0:A1"), ("K0:A2", "G:-")]
    for n in range(4):
        wires += [("G:+", f"K{n}:11"), (f"K{n}:14", f"K{n + 1}:A1"), (f"K{n + 1}:A2", "G:-")]
    figures = solved(draw(parts, wires))
    assert [figures.parts[f"K{n}"].state for n in range(5)] == ["operated"] * 5


@pytest.mark.parametrize("amps", [0.0, 0.25, 0.5, 1.0, 1.5])
def test_an_unregulated_supply_sags_in_a_straight_line(amps: float) -> None:
    """Open volts at no load and rated volts at rated current, as printed on it; a straight line between."""
    load = resistor((16.5 - 4.5 * amps) / amps - 2e-5) if amps else resistor(1e8)
    figures = solved(draw({"G": "supply-unregulated", "R": load}, [("G:+", "R:1"), ("R:2", "G:-")]))
    assert figures.supplies["G"].volts_v == pytest.approx(16.5 - 4.5 * amps, rel=1e-5)
    assert figures.supplies["G"].current_a == pytest.approx(amps, rel=1e-5, abs=1e-6)


def overloaded(style: str, load_ohm: float) -> Plan:
    supply = ("supply-regulated", {"volts": 12.0, "limit_a": 2.0, "ohms": 0.0, "on_overload": style})
    return draw({"G": supply, "R": resistor(load_ohm)}, [("G:+", "R:1"), ("R:2", "G:-")])


@pytest.mark.parametrize("style", ["holds current", "folds back", "shuts off"])
def test_all_styles_give_their_volts_below_the_limit(style: str) -> None:
    figures = solved(overloaded(style, 7.0))
    assert figures.supplies["G"].volts_v == pytest.approx(12.0, rel=1e-3)
    assert not figures.supplies["G"].limited


@pytest.mark.parametrize("load_ohm", [3.0, 1.0, 0.1])
def test_one_that_holds_its_current_gives_it_into_any_load(load_ohm: float) -> None:
    figures = solved(overloaded("holds current", load_ohm))
    assert figures.supplies["G"].current_a == pytest.approx(2.0, rel=0.012)  # it still rises by 1 %
    assert figures.supplies["G"].volts_v == pytest.approx(2.0 * load_ohm, rel=0.02)
    assert figures.supplies["G"].limited


@pytest.mark.parametrize("load_ohm", [3.0, 1.0, 0.1])
def test_one_that_folds_back_gives_less_the_lower_its_volts(load_ohm: float) -> None:
    """limit (s + (1 - s) v / V) and v = i R: i = limit s / (1 - limit (1 - s) R / V)."""
    expected = 2.0 * FOLDED_SHARE / (1.0 - 2.0 * (1.0 - FOLDED_SHARE) * load_ohm / 12.0)
    assert solved(overloaded("folds back", load_ohm)).supplies["G"].current_a == pytest.approx(
        expected, rel=0.02
    )


def test_one_that_shuts_off_gives_nothing_and_says_so() -> None:
    figures = solved(overloaded("shuts off", 3.0))
    assert figures.supplies["G"].current_a == pytest.approx(0.0, abs=1e-4)
    assert [p.code for p in figures.problems] == ["over limit"]
