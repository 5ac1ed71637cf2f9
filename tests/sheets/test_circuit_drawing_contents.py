"""What a person finds on a circuit drawing, and where."""

from itertools import pairwise
from pathlib import Path as FilePath

import pytest
from support.drawn import crossings, lines_through_words, outside, words_on_words
from support.networks import draw, lamp_street
from support.solved import solved

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.solve import solve
from wiring.drawings.circuit_drawing import SHEET_MM, circuit_drawings, not_fed
from wiring.files.store import load
from wiring.pictures.picture import Path, Words
from wiring.plan.positions import in_use

KINDS = builtin_kinds()
DEMOS = sorted((FilePath(__file__).parents[2] / "demo_layouts").glob("*.underboard"))


def drawings(plan, **positions):
    stand = {**in_use(plan, KINDS), **positions}
    return circuit_drawings(plan, KINDS, stand, solved(plan, positions))


def words(*found):
    return [item for d in found for item in d.picture.items if isinstance(item, Words)]


def texts(*found):
    return [item.text for item in words(*found)]


def at(drawing, text):
    (found,) = [w.at for w in words(drawing) if w.text == text]
    return found


def faults(drawing):
    checks = (words_on_words, lines_through_words, crossings, outside)
    return [fault for check in checks for fault in check(drawing.picture)]


QUAY = draw(
    {"G1": "battery-alkaline", "F1": "fuse", "S1": "toggle-on-off"}
    | {f"E{n}": ("led-warm-white", {}) for n in range(1, 7)},
    [("G1:+", "F1:1", {"colour": "RD"}), ("F1:2", "S1:13"), ("S1:14", "E1:A")]
    + [(f"E{n}:A", f"E{n + 1}:A") for n in range(1, 6)]
    + [(f"E{n + 1}:K", f"E{n}:K") for n in range(1, 6)]
    + [("E1:K", "G1:-", {"colour": "BK"})],
)


def test_six_lamps_on_a_battery_are_one_drawing_from_left_to_right():
    (quay,) = drawings(QUAY)
    assert set(quay.parts) == set(QUAY.parts)
    assert set(quay.wires) == set(QUAY.wires)
    order = ["-G1", "-F1", "-S1", *(f"-E{n}" for n in range(1, 7))]
    assert all(at(quay, a)[0] < at(quay, b)[0] for a, b in pairwise(order))
    assert faults(quay) == []


def test_plus_lies_above_minus_and_wires_tell_their_colours():
    (quay,) = drawings(QUAY)
    assert at(quay, "+")[1] < at(quay, "-")[1]
    assert "W1 RD" in texts(quay)
    assert at(quay, "W1 RD")[1] < at(quay, "W14 BK")[1]


def test_a_wire_that_loops_from_lamp_to_lamp_lies_on_the_rail_between_them():
    (quay,) = drawings(QUAY)
    assert at(quay, "-E3")[0] - 10 < at(quay, "W6 BK")[0] < at(quay, "-E4")[0]
    assert abs(at(quay, "W4 BK")[1] - at(quay, "W6 BK")[1]) < 0.01


def test_values_and_solved_figures_stand_beside_the_symbols():
    (quay,) = drawings(QUAY)
    figures = solved(QUAY)
    assert "8 × alkaline AA" in texts(quay)
    lamp_ma = figures.parts["E1"].current_a * 1000
    shown = [float(t.removesuffix(" mA")) for t in texts(quay) if t.endswith(" mA")]
    assert any(value == pytest.approx(lamp_ma, rel=0.01) for value in shown)


@pytest.mark.parametrize(("position", "slanting"), [("on", 0), ("off", 1)])
def test_a_contact_is_drawn_as_it_stands(position, slanting):
    (quay,) = drawings(QUAY, S1=position)
    blades = [i for i in quay.picture.items if isinstance(i, Path) and i.pen.width_mm == 0.35]
    steps = [(abs(b[0] - a[0]), abs(b[1] - a[1])) for a, b in (i.points for i in blades)]
    # a closed blade rests on the other contact; an open one stands well off it
    assert sum(min(step) > 0.25 * max(step) for step in steps) == slanting


def test_a_reversing_switch_shows_the_live_way_and_names_the_other():
    plan = draw(
        {"G1": "supply-regulated", "S1": "toggle-on-on-2p", "M1": "stall-motor"},
        [
            ("G1:+", "S1:14"), ("G1:-", "S1:12"), ("S1:14", "S1:22"), ("S1:12", "S1:24"),
            ("S1:11", "M1:M1"), ("S1:21", "M1:M2"),
        ],
    )  # fmt: skip
    for position in ("up", "down"):
        (drawing,) = drawings(plan, S1=position)
        assert set(drawing.parts) == set(plan.parts)
        assert set(drawing.wires) == set(plan.wires)
        assert texts(drawing).count("-S1") == 2  # one for each pole
        for name in ("-G1:+", "-G1:-"):  # told at the idle throw, and at the net it leads to
            assert name in texts(drawing)
            assert any(name in t and "→" in t for t in texts(drawing))
        assert faults(drawing) == []


def test_the_coils_of_a_pair_meet_at_their_common_terminal():
    plan = draw(
        {"G1": "supply-ac", "S1": "push-to-make", "S2": "push-to-make", "M1": "twin-coil"},
        [("G1:~1", "S1:13"), ("S1:13", "S2:13"), ("S1:14", "M1:N"), ("S2:14", "M1:R"), ("M1:C", "G1:~2")],
    )
    (drawing,) = drawings(plan)
    assert texts(drawing).count("-M1") == 2
    assert [t for t in texts(drawing) if t == "C"] == ["C"]
    assert texts(drawing).count("W5 BK") == 1
    assert faults(drawing) == []


def test_a_relay_s_contact_stands_as_its_coil_is_fed():
    plan = draw(
        {"G1": "supply-regulated", "S1": "toggle-on-off", "K1": "relay", "E1": "lamp-12v", "E2": "lamp-12v"},
        [
            ("G1:+", "S1:13"), ("S1:14", "K1:A1"), ("K1:A2", "G1:-"), ("S1:13", "K1:11"),
            ("K1:14", "E1:1"), ("K1:12", "E2:1"), ("E1:2", "G1:-"), ("E2:2", "E1:2"),
        ],
    )  # fmt: skip
    for position, idle in (("on", "12 → -E2:1"), ("off", "14 → -E1:1")):
        (drawing,) = drawings(plan, S1=position)
        assert idle in texts(drawing)
        assert set(drawing.parts) == set(plan.parts)
        assert faults(drawing) == []


def test_two_supplies_with_a_common_return_feed_a_group_each():
    plan = draw(
        {"G1": "supply-regulated", "G2": "battery-9v", "E1": "lamp-12v", "E2": "lamp-12v"},
        [("G1:+", "E1:1"), ("E1:2", "G1:-"), ("G2:+", "E2:1"), ("E2:2", "G2:-"), ("G2:-", "G1:-")],
    )
    (drawing,) = drawings(plan)
    assert at(drawing, "-G1")[0] < at(drawing, "-E1")[0] < at(drawing, "-G2")[0] < at(drawing, "-E2")[0]
    assert texts(drawing).count("-G1:-") == 2  # the common return is named at both supplies
    assert faults(drawing) == []


def test_strips_blocks_and_plugs_stand_in_the_line():
    plan = draw(
        {"G1": "supply-regulated", "X1": "terminal-strip-4", "X2": "plug-2", "X3": "distribution-block-6"}
        | {"E1": "lamp-12v", "E2": "lamp-12v"},
        [
            ("G1:+", "X1:1"), ("X1:1", "X2:1a"), ("X2:1b", "X3:1"), ("X3:2", "E1:1"), ("X3:3", "E2:1"),
            ("E1:2", "X2:2b"), ("E2:2", "E1:2"), ("X2:2a", "G1:-"),
        ],
    )  # fmt: skip
    (drawing,) = drawings(plan)
    for name in ("-X1:1", "-X2:1a", "-X2:1b", "-X3:1", "-X3:2", "-X3:3", "-X2:2b", "-X2:2a"):
        assert texts(drawing).count(name) == 1
    assert set(drawing.parts) == set(plan.parts)
    assert faults(drawing) == []


def test_a_wire_that_leads_nowhere_and_one_that_closes_a_ring_are_told():
    plan = draw(
        {"G1": "supply-regulated", "X1": "terminal-strip-4", "E1": "lamp-12v", "E2": "lamp-12v"},
        [
            ("G1:+", "E1:1"), ("E1:1", "E2:1"), ("E2:1", "G1:+"), ("E1:2", "G1:-"), ("E2:2", "G1:-"),
            ("E2:1", "X1:3"),
        ],
    )  # fmt: skip
    (drawing,) = drawings(plan)
    assert set(drawing.wires) == set(plan.wires)
    assert "-X1:3" in texts(drawing)
    assert faults(drawing) == []


def test_what_no_supply_reaches_is_left_out_and_listed():
    plan = draw(
        {"G1": "supply-regulated", "E1": "lamp-12v", "E2": "lamp-12v", "E3": "lamp-12v"},
        [("G1:+", "E1:1"), ("E1:2", "G1:-"), ("E2:1", "E3:1")],
    )
    found = drawings(plan)
    assert [d.parts for d in found] == [("G1", "E1")]
    assert set(not_fed(plan, KINDS, solved(plan))) == {"E2", "E3"}


def test_a_short_circuit_is_drawn_like_anything_else():
    plan = draw({"G1": "supply-regulated", "E1": "lamp-12v"}, [("G1:+", "G1:-"), ("E1:1", "G1:+")])
    drawn = circuit_drawings(plan, KINDS, in_use(plan, KINDS), solve(plan, KINDS, in_use(plan, KINDS)))
    assert {p for d in drawn for p in d.parts} == {"G1", "E1"}
    assert [fault for d in drawn for fault in faults(d)] == []


def test_a_street_of_120_lamps_keeps_to_the_sheet_and_shows_each_lamp_once():
    plan = lamp_street(120)
    found = drawings(plan)
    parts = [p for d in found for p in d.parts]
    assert sorted(parts) == sorted(plan.parts)
    for drawing in found:
        assert drawing.picture.width_mm <= SHEET_MM[0] + 10
        assert drawing.picture.height_mm <= SHEET_MM[1] + 10
        assert faults(drawing) == []


@pytest.mark.parametrize("path", DEMOS, ids=[p.stem for p in DEMOS])
def test_a_demo_layout_is_drawn_whole_and_without_overlap(path):
    plan = load(path)
    stand = in_use(plan, KINDS)
    figures = solve(plan, KINDS, stand)
    found = circuit_drawings(plan, KINDS, stand, figures)
    parts = [p for d in found for p in d.parts]
    assert len(parts) == len(set(parts))
    assert set(parts) == set(plan.parts) - set(not_fed(plan, KINDS, figures))
    for drawing in found:
        assert faults(drawing) == []
        assert drawing.picture.width_mm <= SHEET_MM[0] + 10
        assert {w.size_mm for w in words(drawing)} >= {2.6, 2.3, 2.2}
    assert circuit_drawings(plan, KINDS, stand, figures) == found
