"""What is made for DC and hangs on AC gets a rectifier by one act: one behind the supply, or one each."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.findings import found, rules, situation
from support.mending import dangers, findings, mended, sound
from support.networks import draw, kinds

from wiring.plan.soundness import unsound

DC = (
    "led-red",
    "led-warm-white",
    "building-led",
    "indicator-green",
    "flasher",
    "sound-module",
    "constant-current-light",
    "led-strip-warm-white",
)


def on_ac(*rows, more=()):
    """Parts side by side on 16 V AC, plus on the first leg or with "-" on the second."""
    parts = {"G1": "supply-ac", "F1": ("fuse", {"rating_a": 1.0})}
    wires = [("G1:~1", "F1:1")]
    for n, (kind, way) in enumerate([*rows, *((lamp, "+") for lamp in more)], 1):
        parts[f"E{n}"] = kind
        plus, minus = (t.name for t in kinds()[kind].terminals[:2])
        plus, minus = (plus, minus) if way == "+" else (minus, plus)
        wires += [("F1:2", f"E{n}:{plus}"), ("G1:~2", f"E{n}:{minus}")]
    return sound(draw(parts, wires))


def bridges(plan):
    return [p for p in plan.parts.values() if p.kind == "rectifier"]


@given(
    st.lists(st.tuples(st.sampled_from(DC), st.sampled_from("+-")), min_size=1, max_size=4),
    st.lists(st.sampled_from(["lamp-16v", "twin-coil"]), max_size=1),
)
@settings(max_examples=6, deadline=None)
def test_afterwards_all_of_it_works_the_right_way_round_and_nothing_new_is_dangerous(rows, more):
    plan = on_ac(*rows, more=more)
    new = mended(plan, found(plan, "dc-part-on-ac"))
    after = findings(new)
    assert "dc-part-on-ac" not in {f.rule for f in after} and unsound(new, kinds()) == ()
    assert dangers(after) <= dangers(findings(plan))
    one_way = len({way for _, way in rows}) == 1 and not more
    assert len(bridges(new)) == (1 if one_way else len(rows))
    figures = situation(new).figures
    assert all(figures.parts[f"E{n}"].current_a > 1e-3 for n in range(1, len(rows) + 1))
    assert not [p for p in figures.problems if p.code in ("backward", "turned")]


def test_one_behind_the_supply_takes_its_two_wires_with_their_size_and_its_own_place():
    plan = on_ac(("led-red", "-"), ("flasher", "-"))
    assert found(plan, "dc-part-on-ac").act.words == "Put in a rectifier"
    new = mended(plan, found(plan, "dc-part-on-ac"))
    (bridge,) = bridges(new)
    at_supply = [w for w in new.wires.values() if "G1" in (w.start.part, w.end.part)]
    assert len(at_supply) == 2 and all(bridge.id in (w.start.part, w.end.part) for w in at_supply)
    assert {w.size for w in at_supply} == {w.size for w in plan.wires.values()}
    fuse = next(w for w in new.wires.values() if ("F1", "1") in (tuple(w.start), tuple(w.end)))
    assert (bridge.id, "-") in (tuple(fuse.start), tuple(fuse.end))  # their minus hangs on the first leg


def test_bare_leds_back_to_back_behind_one_resistor_bear_ac():
    """Each conducts while the other is in reverse, which so sees its forward volts only: common practice, no
    source. LEDs with resistors of their own see the whole peak instead.
    """
    pair = [("G1:~1", "R1:1"), ("R1:2", "E1:A"), ("R1:2", "E2:K"), ("E1:K", "G1:~2"), ("E2:A", "G1:~2")]
    held = {"G1": "supply-ac", "R1": ("resistor", {"resistance": 1000.0, "rated_power": 1.0})}
    bare = draw({**held, "E1": "led-red-bare", "E2": "led-green-bare"}, pair)
    assert "dc-part-on-ac" not in rules(bare)
    own = draw({**held, "E1": "led-red", "E2": "led-green"}, pair)
    assert found(own, "dc-part-on-ac").parts == ("E1", "E2")
    same_way = [*pair[:2], ("R1:2", "E2:A"), ("E1:K", "G1:~2"), ("E2:K", "G1:~2")]
    assert found(draw({**held, "E1": "led-red-bare", "E2": "led-green-bare"}, same_way), "dc-part-on-ac")


@pytest.mark.parametrize("ways", ["++", "+-"])
def test_a_row_in_series_is_rectified_as_a_whole_or_left_to_the_builder(ways):
    parts = {"G1": "supply-ac", **{f"E{n}": "led-white" for n in range(1, 5)}}
    wires = []
    for row, way in enumerate(ways):
        one, other = ("~1", "~2") if way == "+" else ("~2", "~1")
        first, second = f"E{2 * row + 1}", f"E{2 * row + 2}"
        wires += [(f"G1:{one}", f"{first}:A"), (f"{first}:K", f"{second}:A"), (f"{second}:K", f"G1:{other}")]
    plan = sound(draw(parts, wires))
    finding = found(plan, "dc-part-on-ac")
    assert finding.parts == ("E1", "E2", "E3", "E4")
    assert (finding.act is None) == (ways == "+-")
    if finding.act is not None:
        figures = situation(mended(plan, finding)).figures
        assert all(figures.parts[f"E{n}"].current_a > 1e-4 for n in range(1, 5))
