"""Feeding over switches of two poles, twin coils over contacts that let go, servos; colours by rule."""

import pytest
from support.editing import KINDS

from wiring.circuit.solve import solve
from wiring.edits.edit import EditRefused
from wiring.edits.feed import feed
from wiring.edits.feed_colours import feed_colours
from wiring.edits.place_part import place
from wiring.edits.recolour import recolour, set_circuit_colours
from wiring.edits.set_built import set_built
from wiring.edits.set_wire import set_wire
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.plan.soundness import unsound


def bench(*kinds: str) -> Plan:
    """Return a plan with a supply and those parts in a row; ids p1, p2 ..."""
    plan = place(KINDS["supply-regulated"], 0, 300).apply(Plan())
    for i, kind in enumerate(kinds):
        plan = place(KINDS[kind], 150 + 120 * i, 100 + 60 * (i % 2)).apply(plan)
    return plan


def fed(plan: Plan, **how) -> Plan:
    return feed(plan.parts, **how).apply(plan)


def ends(plan: Plan) -> set[frozenset[tuple[str, str]]]:
    return {frozenset((tuple(w.start), tuple(w.end))) for w in plan.wires.values()}


def lit(plan: Plan, part: str, **thrown: str) -> bool:
    figures = solve(plan, KINDS, {**in_use(plan, KINDS), **thrown})
    return abs(figures.parts[part].current_a) > 1e-4


def test_an_on_off_switch_of_two_poles_breaks_both_conductors():
    plan = fed(bench("toggle-on-off-2p", "lamp-12v"))
    assert frozenset((("p1", "+"), ("p2", "13"))) in ends(plan)
    assert frozenset((("p1", "-"), ("p2", "23"))) in ends(plan)
    assert frozenset((("p2", "24"), ("p3", "2"))) in ends(plan)
    assert lit(plan, "p3", p2="on") and not lit(plan, "p3", p2="off")


def test_it_can_be_told_to_break_plus_only_and_a_changeover_to_break_both():
    plan = fed(bench("toggle-on-off-2p", "lamp-12v"), wanted_poles=1)
    assert not any(("p2", "23") in pair for pair in ends(plan)) and lit(plan, "p3", p2="on")
    plan = fed(bench("toggle-on-on-2p", "lamp-12v"))
    assert not any(("p2", "21") in pair for pair in ends(plan))
    plan = fed(bench("toggle-on-on-2p", "lamp-12v"), wanted_poles=2)
    assert frozenset((("p1", "-"), ("p2", "21"))) in ends(plan)
    assert lit(plan, "p3", p2="up") and not lit(plan, "p3", p2="down")


def test_a_second_lamp_behind_a_fed_two_pole_switch_returns_through_it():
    plan = fed(bench("toggle-on-off-2p", "lamp-12v"))
    plan = place(KINDS["lamp-12v"], 600, 100).apply(plan)
    lamp = list(plan.parts)[-1]
    plan = feed(["p2", lamp]).apply(plan)
    assert lit(plan, lamp, p2="on") and not lit(plan, lamp, p2="off")
    to_lamp = {r for pair in ends(plan) if any(p == lamp for p, _ in pair) for r in pair if r[0] != lamp}
    assert to_lamp == {("p2", "14"), ("p2", "24")}


@pytest.mark.parametrize(
    ("throwers", "pulses"),
    [
        (("push-to-make", "push-to-make"), ({"p2": "pressed"}, {"p3": "pressed"})),
        (("toggle-centre-off",), ({"p2": "up"}, {"p2": "down"})),
    ],
)
def test_a_twin_coil_gets_a_return_and_a_contact_that_lets_go_for_each_coil(throwers, pulses):
    plan = bench(*throwers, "twin-coil")
    coil = list(plan.parts)[-1]
    plan = fed(plan)
    assert unsound(plan, KINDS) == ()
    at_coil = {r for pair in ends(plan) for r in pair if r[0] == coil}
    assert at_coil == {(coil, "N"), (coil, "C"), (coil, "R")}
    rest = {p: ("off" if "centre" in plan.parts[p].kind else "") for p in ("p2", "p3") if p != coil}
    resting = {p: v for p, v in rest.items() if v}
    figures = solve(plan, KINDS, {**in_use(plan, KINDS), **resting})
    assert abs(figures.supplies["p1"].current_a) < 1e-6
    for pulse in pulses:
        figures = solve(plan, KINDS, {**in_use(plan, KINDS), **resting, **pulse})
        assert figures.supplies["p1"].current_a > 0.2


def test_two_coils_share_one_return_and_take_the_buttons_beside_them():
    plan = bench("push-to-make", "push-to-make", "twin-coil", "twin-coil", "push-to-make", "push-to-make")
    plan = fed(plan)
    returns = {r for pair in ends(plan) if ("p4", "C") in pair or ("p5", "C") in pair for r in pair}
    assert returns <= {("p4", "C"), ("p5", "C"), ("p1", "-")}
    by_button = {r[0]: other[0] for pair in ends(plan) for r, other in (sorted(pair), sorted(pair)[::-1])
                 if r[1] == "14"}  # fmt: skip
    assert by_button == {"p2": "p4", "p3": "p4", "p6": "p5", "p7": "p5"}


def test_a_coil_without_such_contacts_is_refused_in_one_sentence():
    with pytest.raises(EditRefused, match="two push buttons"):
        fed(bench("twin-coil", "toggle-on-off"))


def test_a_servo_gets_plus_and_minus_and_its_signal_is_left_alone():
    plan = fed(bench("servo", "servo"))
    assert {r for pair in ends(plan) for r in pair if r[0] == "p2"} == {("p2", "+"), ("p2", "-")}


def test_the_rule_of_a_supply_colours_what_is_fed_and_what_stands():
    plan = bench("toggle-on-off", "lamp-12v", "lamp-12v")
    plan = set_circuit_colours("p1", plus="bu", minus="WH", switched="VT").apply(plan)
    assert decode(encode(plan)) == plan
    plan = fed(plan)
    colours = {frozenset((w.start[0], w.end[0])): w.colour for w in plan.wires.values()}
    assert colours[frozenset(("p1", "p2"))] == "BU"
    assert "VT" in {w.colour for w in plan.wires.values() if ("p2", "14") in (w.start, w.end)}
    assert {w.colour for w in plan.wires.values()} == {"BU", "VT", "WH"}
    back = set_circuit_colours("p1", plus="", minus="", switched="").apply(plan)
    assert not back.circuit_colours
    again = set_circuit_colours("p1", plus="OG", minus="GY", switched="").apply(plan)
    done = recolour(kinds=KINDS).apply(again)
    assert {w.colour for w in done.wires.values()} == {"OG", "OGWH", "GY"}
    assert recolour(kinds=KINDS).apply(done) is done


def test_wires_marked_as_built_keep_their_colour_unless_asked_for():
    plan = fed(bench("toggle-on-off", "lamp-12v"))
    first = next(iter(plan.wires))
    plan = set_wire([first], colour="PK").apply(plan)
    plan = set_built([first], built=True).apply(set_circuit_colours("p1", plus="BN").apply(plan))
    kept = recolour(kinds=KINDS).apply(plan)
    assert kept.wires[first].colour == "PK" and "BNWH" in {w.colour for w in kept.wires.values()}
    assert recolour(built_too=True, kinds=KINDS).apply(plan).wires[first].colour == "BN"
    assert recolour([first], kinds=KINDS).apply(plan) is plan


def test_a_wrong_colour_is_refused_and_ac_keeps_its_own():
    with pytest.raises(EditRefused, match="earth"):
        set_circuit_colours("p1", plus="GNYE").apply(bench())
    plan = place(KINDS["supply-ac"], 0, 0).apply(bench()) if "supply-ac" in KINDS else None
    if plan is None:
        ac = next(
            k for k in KINDS.values() if k.purpose == "feed" and [t.mark for t in k.terminals] == ["~", "~"]
        )
        plan = place(ac, 0, 0).apply(bench())
    assert feed_colours(plan, KINDS, list(plan.parts)[-1])[:2] == ("BU", "BUWH")
