"""What a plan may choose for its circuit drawings, what poles drawn apart tell, and how they become SVG."""

import xml.etree.ElementTree as ET
from collections import Counter

import pytest
from msgspec.structs import replace
from support.drawn import crossings, lines_through_words, outside, words_on_words
from support.networks import draw, lamp_street
from support.solved import solved

from wiring.catalogue.shelf import builtin_kinds
from wiring.drawings.circuit_drawing import LARGER, SHEET_MM, circuit_drawings
from wiring.drawings.circuit_facts import SMALL_MM
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable
from wiring.findings.situation import examine
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.picture import Disc, Path, Words
from wiring.pictures.svg import svg_text
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.sheets.drawing_sheets import drawing_sections

KINDS = builtin_kinds()
SVG = "{http://www.w3.org/2000/svg}"


def drawings(plan, symbols=None, **positions):
    stand = {**in_use(plan, KINDS), **positions}
    return circuit_drawings(plan, KINDS, stand, solved(plan, positions), symbols)


def texts(*found):
    return [i.text for d in found for i in d.picture.items if isinstance(i, Words)]


def faults(drawing):
    checks = (words_on_words, lines_through_words, crossings, outside)
    return [fault for check in checks for fault in check(drawing.picture)]


RELAYS = draw(
    {"G1": "supply-regulated", "S1": "toggle-on-off", "K1": "relay", "K2": "relay", "R1": "resistor"}
    | {"E1": "lamp-12v", "E2": "led-red", "F1": "fuse"},
    [
        ("G1:+", "F1:1"), ("F1:2", "S1:13"), ("S1:14", "K1:A1"), ("K1:A2", "G1:-"), ("F1:2", "K1:11"),
        ("K1:14", "K2:A1"), ("K2:A2", "G1:-"), ("K2:11", "F1:2"), ("K2:14", "E1:1"), ("E1:2", "G1:-"),
        ("K1:12", "R1:1"), ("R1:2", "E2:A"), ("E2:K", "G1:-"),
    ],
)  # fmt: skip
REVERSING = draw(
    {"G1": "supply-regulated", "S1": "toggle-on-on-2p", "M1": "stall-motor"},
    [
        ("G1:+", "S1:14"), ("G1:-", "S1:12"), ("S1:14", "S1:22"), ("S1:12", "S1:24"), ("S1:11", "M1:M1"),
        ("S1:21", "M1:M2"),
    ],
)  # fmt: skip


def test_a_plan_s_own_set_of_symbols_is_drawn_unless_another_is_asked_for():
    american = RELAYS.with_changes(habits=replace(RELAYS.habits, symbols="ieee"))
    assert drawings(american) == drawings(RELAYS, "ieee") != drawings(RELAYS)
    assert drawings(american, "iec") == drawings(RELAYS)
    with pytest.raises(ValueError, match="no set of symbols"):
        drawings(RELAYS, "din")


@pytest.mark.parametrize("plan", [RELAYS, REVERSING], ids=["relays", "reversing"])
def test_both_sets_lay_the_same_circuit_out_without_fault(plan):
    one, other = drawings(plan, "iec"), drawings(plan, "ieee")
    assert Counter(texts(*one)) == Counter(texts(*other))
    assert [d.parts for d in one] == [d.parts for d in other]
    assert [fault for d in (*one, *other) for fault in faults(d)] == []


def test_the_choice_is_kept_in_the_file_and_not_written_where_it_is_the_usual_one():
    bare = Plan()
    american = bare.with_changes(habits=replace(bare.habits, symbols="ieee"))
    assert decode(encode(american)).habits.symbols == "ieee"
    assert b"symbols" not in encode(bare)
    with pytest.raises(NotReadable, match="symbols"):
        decode(encode(american).replace(b'"ieee"', b'"din"'))


def test_poles_of_a_switch_name_each_other():
    (drawing,) = drawings(REVERSING)
    assert texts(drawing).count("see 21-22-24") == texts(drawing).count("see 11-12-14") == 1


def test_a_coil_names_its_contact_and_the_contact_its_coil():
    found = Counter(texts(*drawings(RELAYS)))
    assert found["see 11-12-14"] == found["see A1-A2"] == 2  # two relays, a contact each


def test_a_part_in_one_piece_and_coils_that_meet_name_nothing():
    plan = draw(
        {"G1": "supply-ac", "S1": "push-to-make", "S2": "push-to-make", "M1": "twin-coil"},
        [("G1:~1", "S1:13"), ("S1:13", "S2:13"), ("S1:14", "M1:N"), ("S2:14", "M1:R"), ("M1:C", "G1:~2")],
    )
    assert [t for t in texts(*drawings(plan)) if t.startswith("see ")] == []


def test_a_throw_that_no_wire_reaches_is_told_to_be_free():
    plan = draw(
        {"G1": "supply-regulated", "S1": "toggle-on-on", "E1": "lamp-12v"},
        [("G1:+", "S1:11"), ("S1:14", "E1:1"), ("E1:2", "G1:-")],
    )
    closes = {p.name: p.closes for p in KINDS["toggle-on-on"].positions}
    made = next(name for name, pairs in closes.items() if ("11", "14") in pairs or ("14", "11") in pairs)
    found = texts(*drawings(plan, S1=made))
    assert found.count("12 free") == 1
    assert not any("→" in t for t in found)


@pytest.mark.parametrize("plan", [RELAYS, REVERSING, lamp_street(40)], ids=["relays", "reversing", "street"])
def test_every_part_and_wire_has_its_place_and_each_ink_of_a_symbol_lies_in_one(plan):
    found = drawings(plan)
    assert {p.id for d in found for p in d.places} == {p for d in found for p in (*d.parts, *d.wires)}
    for drawing in found:
        picture = drawing.picture
        right, bottom = picture.left_mm + picture.width_mm, picture.top_mm + picture.height_mm
        for place in drawing.places:
            assert picture.left_mm <= place.box[0] < place.box[2] <= right
            assert picture.top_mm <= place.box[1] < place.box[3] <= bottom
        rings = [i.centre for i in picture.items if isinstance(i, Disc) and i.radius_x_mm > 2]
        assert all(any(holds(p.box, at) for p in drawing.places) for at in rings)
        blades = [i.points[1] for i in picture.items if isinstance(i, Path) and i.pen.width_mm == 0.35]
        assert all(any(holds(p.box, at) for p in drawing.places) for at in blades)


def holds(box, at):
    return box[0] <= at[0] <= box[2] and box[1] <= at[1] <= box[3]


def test_places_of_two_parts_never_cover_each_other():
    for drawing in drawings(lamp_street(40)):
        boxes = [(p.id, p.box) for p in drawing.places]
        for i, (one, box) in enumerate(boxes):
            assert [o for o, other in boxes[i + 1 :] if o != one and overlap(box, other, 0.6)] == []


def test_nothing_is_written_smaller_than_two_millimetres():
    for plan in (RELAYS, REVERSING, lamp_street(20)):
        sizes = [i.size_mm for d in drawings(plan) for i in d.picture.items if isinstance(i, Words)]
        assert min(sizes) >= SMALL_MM == 2.2


def test_six_lamps_stand_in_one_row_and_longer_rows_are_of_like_length():
    (six,) = drawings(lamp_street(6))
    assert len({i.at[1] for i in six.picture.items if isinstance(i, Words) and i.text[:2] == "-E"}) == 1
    (twelve,) = drawings(lamp_street(12))  # in rows, so in short ones, that it can be printed larger
    assert twelve.picture.width_mm <= SHEET_MM[0] / LARGER[-1] + 5
    found = drawings(lamp_street(60))
    assert sum(d.picture.width_mm for d in found) / len(found) > 0.75 * SHEET_MM[0]
    heights = [d.picture.height_mm for d in found]
    assert min(heights[:-2]) > 0.6 * SHEET_MM[1]
    assert min(heights[-2:]) > 0.4 * SHEET_MM[1]  # the last two share their rows: none stands alone


@pytest.mark.parametrize("label", ['<&">', "🙂 lamp", "מנורה", "l" * 200, "]]>", "a\u202eb", "tab\tnew"])
def test_strange_labels_stay_text_in_an_svg(label):
    plan = draw({"G1": ("supply-regulated", {}), "E1": "lamp-12v"}, [("G1:+", "E1:1"), ("E1:2", "G1:-")])
    parts = {i: replace(p, label=label) for i, p in plan.parts.items()}
    (drawing,) = drawings(plan.with_changes(parts=parts, title=label))
    root = ET.fromstring(svg_text(drawing.picture))
    assert root.find(f"{SVG}title").text.startswith("-G1")
    said = [t.text for t in root.iter(f"{SVG}text")]
    assert {"-G1", "-E1", "W1 BK"} <= set(said)
    assert len(root.findall(f".//{SVG}script")) == 0
    assert not [fault for check in (words_on_words, outside) for fault in check(drawing.picture)]


def small_circuits(count):
    """Battery and lamp, again and again: a circuit each."""
    parts, wires = {}, []
    for n in range(1, count + 1):
        parts |= {f"G{n}": "battery-9v", f"E{n}": "lamp-12v"}
        wires += [(f"G{n}:+", f"E{n}:1"), (f"E{n}:2", f"G{n}:-")]
    return draw(parts, wires)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_small_circuits_share_a_sheet_each_under_its_title(paper):
    plan = small_circuits(4)
    (section,) = drawing_sections(examine(plan, KINDS, outlooks=False), paper)
    titles = [
        [i.text for i in leaf.items if isinstance(i, Words) and i.size_mm == 4.6] for leaf in section.leaves
    ]
    assert [t.split()[0] for some in titles for t in some] == ["-G1", "-G2", "-G3", "-G4"]
    assert len(titles) == 2
    for leaf in section.leaves:
        left, top, right, bottom = leaf.sheet.body
        boxes = [words_box(i) for i in leaf.items if isinstance(i, Words)]
        assert all(left <= b[0] and top <= b[1] and b[2] <= right and b[3] <= bottom for b in boxes)
        assert not [1 for n, one in enumerate(boxes) for other in boxes[n + 1 :] if overlap(one, other)]


def test_a_large_drawing_has_a_sheet_to_itself():
    plan = lamp_street(30)
    drawn = drawings(plan)
    (section,) = drawing_sections(examine(plan, KINDS, outlooks=False), "A4")
    assert len(section.leaves) == len(drawn)
