"""Parts by keys and clicks alone: searched, set down in rows and curves, arranged, kept together as a set."""

import math
from itertools import pairwise

from support.surfaces import SHIFT

from app.canvas.painting.label_room import LabelRoom


def parts(hands, kind=""):
    return [p for p in hands.editor.session.plan.parts.values() if p.kind.startswith(kind)]


def places(hands, kind=""):
    return [(p.x_mm, p.y_mm) for p in parts(hands, kind)]


def test_a_search_a_key_and_clicks_set_down_part_after_part(hands):
    hands.place("white warm", (200, 300), (300, 300))
    hands.key("R")
    hands.click(400, 300)
    hands.key("Esc")
    hands.click(600, 500)
    assert [p.turn_deg for p in parts(hands, "led-warm-white")] == [0, 0, 90]
    assert places(hands) == [(200, 300), (300, 300), (400, 300)]


def test_a_row_goes_along_a_curve_at_a_spacing(hands):
    hands.place("warm white")
    hands.drag((100, 300), (400, 300), SHIFT)
    hands.click(400, 300, SHIFT)
    hands.click(600, 500)
    hands.words("70 mm")
    hands.key("Return")
    row = places(hands)
    gaps = [math.dist(a, b) for a, b in pairwise(row)]
    assert len(row) >= 8 and all(60 < gap < 71 for gap in gaps)  # as the crow flies, on a curve
    assert min(math.dist(at, (400, 300)) for at in row) < 36  # by way of the second click
    hands.act("undo")
    assert not parts(hands)


def test_parts_are_lined_up_spaced_mirrored_and_doubled_each_in_one_step(hands):
    hands.place("warm white", (200, 300), (260, 345), (500, 325))
    hands.key("Esc")
    hands.act("select_all")
    done = []
    for act, label in (
        ("top", "Line up"),
        ("space_across", "Space"),
        ("mirror_across", "Mirror"),
        ("duplicate", "Duplicate"),
    ):
        hands.act(act)
        assert hands.editor.session.undo_label.startswith(label)
        done.append(places(hands))
    assert len({y for _, y in done[0]}) == 1
    assert [x for x, _ in done[1]] == [200, 350, 500]
    assert [x for x, _ in done[2]] == [500, 350, 200]
    assert len(done[3]) == 6 and hands.editor.selection.ids == {p.id for p in parts(hands)[3:]}


def test_a_lit_building_with_all_it_has_is_kept_and_placed_as_one_thing_in_another_plan(hands):
    hands.place("plug", (200, 450))
    hands.place("building led", (300, 300))
    hands.place("warm white", (450, 300))
    hands.place("resistor", (450, 400))
    hands.key("Esc")
    hands.act("wire")
    joints = ("E1:A X1:1a", "E1:K X1:2a", "E1:A R1:1", "R1:2 E2:A", "E1:K E2:K")
    for joint in joints:
        for end in joint.split():
            hands.click(*hands.at(*end.split(":")))
    hands.key("Esc")
    wires = len(hands.editor.session.plan.wires)
    assert wires == len(joints)
    hands.act("select_all")
    hands.act("keep_set")
    hands.key("Ctrl+A")
    hands.words("Lit bakery")
    hands.key("Return")
    hands.act("new")
    assert not parts(hands)
    hands.place("bakery", (300, 300), (700, 300))
    hands.key("Esc")
    hands.key("Esc")
    assert len(parts(hands, "building")) == len(parts(hands, "resistor")) == len(parts(hands, "plug")) == 2
    assert len(hands.editor.session.plan.wires) == 2 * wires
    designations = [p.designation for p in parts(hands)]
    assert len(set(designations)) == len(designations)
    assert hands.editor.session.undo_label == "Place Lit bakery"
    hands.act("undo")
    assert len(parts(hands, "building")) == 1


def test_labels_of_parts_set_down_close_together_overlap_neither_each_other_nor_the_parts(hands, monkeypatch):
    written = []
    from app.canvas.painting import label_painter

    place = label_painter.label_places
    monkeypatch.setattr(
        label_painter, "label_places", lambda *given: written.append(place(*given)) or written[-1]
    )
    hands.place("warm white")
    hands.drag((200, 300), (320, 300), SHIFT)
    hands.word("7")
    hands.key("Return")
    hands.key("Esc")
    hands.key("Esc")
    hands.window.grab()
    room, boxes = LabelRoom(), [box for box in written[-1] if box is not None]
    assert len(boxes) >= 3
    for box in boxes:
        assert room.is_free(box)
        room.take(box)
