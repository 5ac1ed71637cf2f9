"""What the bench paints and when: rulers in true units, both sides, a new plug in sight, nothing twice."""

import pytest
from PySide6.QtCore import Qt
from support.benches import LAMP, PANEL, SWITCH, BenchDesk
from support.editing import KINDS
from support.surfaces import CTRL

from app.bench.face_sight import part_box, surrounding
from wiring.edits.face_items import add_line, add_text
from wiring.edits.panel_harness import bring_out
from wiring.edits.set_plan import set_habits
from wiring.plan.panel_bodies import body_of
from wiring.plan.panel_places import plugs_of
from wiring.quantities.face_lengths import length_words

Key = Qt.Key


@pytest.fixture
def bench(qtbot):
    return BenchDesk(qtbot)


def test_the_face_is_painted_anew_when_it_looks_otherwise_and_not_for_the_pointer(bench):
    def painted():
        bench.face.grab()
        return bench.face.still.painted

    before = painted()
    for x in (20, 40, 41, 100):
        bench.face_move(x, 50)
        assert painted() == before
    bench.face_click(40, 50)  # thrown
    thrown = painted()
    assert thrown == before + 1
    bench.face_click(140, 30)
    chosen = painted()
    bench.face_key(Key.Key_B)
    turned = painted()
    bench.face_key(Key.Key_Right)
    moved = painted()
    bench.view.zoom(1.5)
    assert thrown < chosen < turned < moved < painted()


@pytest.mark.parametrize(
    ("mm", "us", "words"),
    [
        (300, False, "300 mm"),
        (12.5, False, "12.5 mm"),
        (120.25, False, "120.2 mm"),
        (25.4, True, '1"'),
        (120.65, True, '4 3/4"'),
        (12.7, True, '1/2"'),
        (0, True, '0"'),
        (100, True, '3.937"'),
    ],
)
def test_lengths_on_a_face_are_written_as_rules_and_drills_count_them(mm, us, words):
    assert length_words(mm, us=us) == words


def test_the_rulers_follow_units_and_side(bench):
    shots = {bytes(bench.face.grab().toImage().constBits())}
    bench.face_key(Key.Key_B)
    shots.add(bytes(bench.face.grab().copy(0, 0, bench.face.width(), 22).toImage().constBits()))
    bench.session.do(set_habits(units="us"))
    shots.add(bytes(bench.face.grab().copy(0, 0, bench.face.width(), 22).toImage().constBits()))
    assert len(shots) == 3


def test_a_frame_in_front_goes_round_the_body_and_from_behind_round_the_lugs_too(bench):
    part = bench.plan.parts[SWITCH]
    body = body_of(part, KINDS[part.kind]).box
    left, _, right, _ = part_box(bench.face.sight(), part)
    assert (left, right) == (body[0] - 100, body[2] - 100)
    bench.face_key(Key.Key_B)
    assert part_box(bench.face.sight(), part)[0] < left


def test_a_plug_that_comes_beside_the_face_comes_into_sight_on_both_sides_of_the_mirror(bench):
    bench.face.fit()
    bench.face_key(Key.Key_B)
    bench.session.do(bring_out(PANEL))
    (plug,) = plugs_of(bench.plan, KINDS, PANEL)
    at = bench.on_face(plug.x_mm - 100, plug.y_mm - 300)
    assert bench.face.rect().contains(at)
    assert surrounding(bench.face.sight())[1] < -40
    bench.face_click(plug.x_mm - 100, plug.y_mm - 300)
    assert bench.selection.ids == {plug.id}
    bench.face_key(Key.Key_B)
    assert surrounding(bench.face.sight()) == (0, 0, 200, 100)


def test_the_pointer_stands_where_the_plate_says(bench):
    bench.face_key(Key.Key_B)
    bench.face_move(140, 30)
    assert bench.face.pointer_here("move").at == pytest.approx((140, 30))
    assert bench.face.pointer_here("move").hit.part == LAMP


def test_what_is_chosen_is_described_for_those_who_do_not_see_it(bench):
    bench.session.do(add_line(PANEL, [(10, 10), (90, 10)], 5, "RD"))
    bench.session.do(add_text(PANEL, "QUAY", 40, 75))
    said = []
    for _ in range(5):
        bench.face_key(Key.Key_Tab)
        said.append(bench.face.accessibleDescription().split(" selected")[0])
    assert said[0].endswith("-S1, 40 mm from the left, 50 mm from the top")
    assert said[3:] == [
        "Track line 1, 5 mm wide, RD",
        "Legend “QUAY”, 40 mm from the left, 75 mm from the top",
    ]
    bench.face_key(Key.Key_A, CTRL)
    assert bench.face.accessibleDescription().startswith("3 parts and 1 track line and 1 legend selected")
    bench.face_key(Key.Key_Escape)
    bench.face_key(Key.Key_B)
    assert bench.face.accessibleDescription().startswith("Quay panel from behind")
    bench.face_drag((40, 50), (81, 50))
    assert "needs 2 mm between its body" not in bench.face.accessibleDescription()
    bench.selection.select((SWITCH,))
    assert "-S1 needs 2 mm between its body and that of -S2." in bench.face.accessibleDescription()
