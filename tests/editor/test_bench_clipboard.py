"""Copy, cut, paste, duplicate, line up, space and mirror on the bench, by the keys the plan has for them."""

import pytest
from PySide6.QtCore import QKeyCombination, Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QApplication
from support.benches import BUTTON, LAMP, PANEL, SWITCH, BenchDesk, panel_plan
from support.editing import KINDS
from support.surfaces import CTRL, SHIFT

from app.bench.bench import FaceItem
from app.bench.face_keys import TO_CHOSEN
from app.window.actions import ACTS
from wiring.edits.face_items import add_line, add_text
from wiring.edits.fragment import read_fragment
from wiring.edits.panels import add_panel
from wiring.plan.panel_bodies import bodies_on, clashes, reaches_over

Key = Qt.Key
ITEMS = frozenset({FaceItem("line", 0), FaceItem("text", 0)})


@pytest.fixture
def bench(qtbot):
    QApplication.clipboard().clear()
    bench = BenchDesk(qtbot)
    bench.session.do(add_line(PANEL, [(20, 20), (60, 20)], 5, "RD"))
    bench.session.do(add_text(PANEL, "QUAY", 40, 75))
    return bench


def choose(bench, ids, items=frozenset()):
    bench.bench.choose(items)
    bench.selection.select(ids)


def press(bench, name):
    """Press the key that the bench has for an act."""
    bench.face_key(*next(keys for keys, act in TO_CHOSEN.items() if act == name))


def paste_at(bench, x, y):
    bench.face_move(x, y)
    bench.face_key(Key.Key_V, CTRL)


def test_parts_lines_and_legends_are_copied_together_and_pasted_at_the_pointer_in_one_step(bench):
    choose(bench, {SWITCH}, ITEMS)
    bench.face_key(Key.Key_C, CTRL)
    before = bench.plan
    paste_at(bench, 101, 49)
    (copy,) = bench.plan.parts.keys() - before.parts.keys()
    shift = bench.where(copy)[0] - 40, bench.where(copy)[1] - 50
    assert shift[0] % 10 == shift[1] % 10 == 0 and shift != (0, 0)
    line, text = bench.panel.lines[1], bench.panel.texts[1]
    assert line.points == ((20 + shift[0], 20 + shift[1]), (60 + shift[0], 20 + shift[1]))
    assert (text.x_mm, text.y_mm) == (40 + shift[0], 75 + shift[1])
    assert (line.width_mm, line.colour, text.text) == (5, "RD", "QUAY")
    assert bench.selection.ids == {copy} and bench.bench.items == {FaceItem("line", 1), FaceItem("text", 1)}
    bench.session.undo()
    assert bench.plan is before


def test_wires_between_the_copied_parts_come_with_them(bench):
    choose(bench, {SWITCH, BUTTON})
    bench.face_key(Key.Key_C, CTRL)
    before = bench.plan
    paste_at(bench, 100, 80)
    assert len(bench.plan.wires) == len(before.wires) + 1


def test_what_is_cut_is_gone_in_one_step_and_comes_back_where_it_is_pasted(bench):
    choose(bench, {LAMP}, ITEMS)
    before = bench.plan
    bench.face_key(Key.Key_X, CTRL)
    assert LAMP not in bench.plan.parts and not bench.panel.lines and not bench.panel.texts
    paste_at(bench, 150, 60)
    assert (
        len(bench.panel.lines) == 1
        and bench.plan.parts[next(reversed(bench.plan.parts))].kind == "indicator-red"
    )
    bench.session.undo()
    bench.session.undo()
    assert bench.plan is before


def test_no_body_is_pasted_onto_another_or_over_the_edge(bench):
    choose(bench, {SWITCH, BUTTON, LAMP})
    bench.face_key(Key.Key_C, CTRL)
    for place in ((100, 50), (199, 99), (1, 1)):
        paste_at(bench, *place)
        bodies = bodies_on(bench.plan, KINDS, bench.panel)
        assert not list(clashes(bodies))
        assert not any(reaches_over(body, bench.panel) for body in bodies)


def test_where_there_is_no_room_it_lies_where_it_was_wished_and_is_marked(bench):
    choose(bench, {SWITCH, BUTTON, LAMP})
    bench.face_key(Key.Key_C, CTRL)
    for _ in range(14):
        paste_at(bench, 100, 50)
    bodies = bodies_on(bench.plan, KINDS, bench.panel)
    assert len(bodies) == 45 and list(clashes(bodies))
    assert bench.face.sight().misfits()


def test_it_is_pasted_on_another_panel_and_in_another_plan(qtbot, bench):
    choose(bench, {SWITCH}, ITEMS)
    bench.face_key(Key.Key_C, CTRL)
    bench.session.do(add_panel("Yard", 600, 600, 150, 90))
    other = next(reversed(bench.plan.panels))
    bench.view.bench.open(other)
    bench.face_key(Key.Key_V, CTRL)
    panel = bench.plan.panels[other]
    assert len(panel.lines) == len(panel.texts) == 1 and len(bench.panel.lines) == 1
    assert bench.plan.parts[next(reversed(bench.plan.parts))].panel == other
    assert all(0 <= x <= 150 and 0 <= y <= 90 for x, y in panel.lines[0].points)
    elsewhere = BenchDesk(qtbot, panel_plan())
    elsewhere.face_key(Key.Key_V, CTRL)
    assert len(elsewhere.panel.lines) == 1 and len(elsewhere.plan.parts) == 5


def test_parts_copied_on_the_plan_are_pasted_on_the_face_and_the_other_way_round(bench):
    choose(bench, {LAMP})
    bench.face_key(Key.Key_C, CTRL)
    assert [p.id for p in read_fragment(QApplication.clipboard().text()).parts] == [LAMP]
    bench.view.bench.open("")
    bench.selection.select((BUTTON,))
    bench.key(Key.Key_C, CTRL)
    bench.view.bench.open(PANEL)
    paste_at(bench, 100, 80)
    assert bench.plan.parts[next(reversed(bench.plan.parts))].kind == "push-to-make"


def test_what_is_no_piece_of_a_plan_is_refused_in_a_sentence(bench):
    said = []
    bench.session.refused.connect(said.append)
    QApplication.clipboard().setText("milk, bread")
    before = bench.plan
    paste_at(bench, 100, 50)
    assert said == ["The clipboard holds nothing for a panel; copy parts, track lines or legends first."]
    choose(bench, (), ITEMS)
    bench.face_key(Key.Key_C, CTRL)
    bench.view.bench.open("")
    bench.key(Key.Key_V, CTRL)
    assert said[-1].endswith("pasted onto a panel’s face.") and bench.plan is before


def test_copies_of_all_that_is_chosen_are_made_at_once_clear_of_the_rest(bench):
    choose(bench, {LAMP}, {FaceItem("text", 0)})
    before = bench.plan
    bench.face_key(Key.Key_D, CTRL)
    (copy,) = bench.selection.ids
    shift = bench.where(copy)[0] - 140, bench.where(copy)[1] - 30
    assert bench.panel.texts[1].x_mm - 40 == shift[0] and not bench.face.sight().misfits()
    bench.session.undo()
    assert bench.plan is before


def test_things_are_lined_up_spaced_and_mirrored_by_the_keys_of_the_plan(bench):
    choose(bench, {SWITCH, LAMP}, {FaceItem("text", 0)})
    press(bench, "column")
    assert bench.where(SWITCH)[0] == bench.where(LAMP)[0] == bench.panel.texts[0].x_mm == 90
    assert bench.session.undo_label == "Line up 3 items"
    press(bench, "space_down")
    assert bench.session.undo_label == "Space 3 items evenly"
    spots = sorted([bench.where(SWITCH)[1], bench.where(LAMP)[1], bench.panel.texts[0].y_mm])
    assert spots[1] - spots[0] == pytest.approx(spots[2] - spots[1], abs=0.01)
    bench.session.undo()
    bench.session.undo()
    choose(bench, {SWITCH, LAMP}, {FaceItem("line", 0)})
    press(bench, "mirror_across")
    assert (bench.where(SWITCH)[0], bench.where(LAMP)[0]) == (120, 20)
    assert bench.panel.lines[0].points == ((140, 20), (100, 20))
    assert bench.session.undo_label == "Mirror on the face"


def test_the_bench_has_the_keys_of_the_window_for_what_both_do():
    window = {act.name: QKeySequence(act.keys) for act in ACTS if act.keys}
    both = [(keys, name) for keys, name in TO_CHOSEN.items() if name in window]
    assert len(both) >= 12
    bench = {}
    for (key, modifiers), name in both:
        bench.setdefault(name, []).append(QKeySequence(QKeyCombination(modifiers, key)))
    assert not [name for name, keys in bench.items() if window[name] not in keys]


def test_left_is_left_on_the_screen_on_both_sides(bench):
    choose(bench, {SWITCH, LAMP})
    press(bench, "left")
    assert bench.where(SWITCH)[0] == 40 and bench.where(LAMP)[0] < 60
    bench.session.undo()
    bench.face_key(Key.Key_B)
    press(bench, "left")
    assert bench.where(LAMP)[0] == 140 and bench.where(SWITCH)[0] > 120


def test_too_few_things_to_arrange_are_refused_in_a_sentence(bench):
    said = []
    bench.session.refused.connect(said.append)
    choose(bench, {SWITCH})
    for name in ("top", "space_across"):
        press(bench, name)
    assert [s.split(" to ")[0] for s in said] == [
        "Choose at least two things on the face",
        "Choose at least three things on the face",
    ]


def test_arrows_step_by_the_spacing_with_shift_finely_and_never_off_the_face(bench):
    choose(bench, {LAMP})
    bench.face_key(Key.Key_Right)
    bench.face_key(Key.Key_Down, SHIFT)
    assert bench.where(LAMP) == (150, 31) and bench.session.undo_label == "Nudge -P1"
    for _ in range(9):
        bench.face_key(Key.Key_Right)
    assert bench.where(LAMP)[0] == 200
    bench.session.undo()
    assert bench.where(LAMP) == (140, 30)


def test_a_drag_off_the_face_stops_at_its_edge(bench):
    bench.face_drag((140, 30), (240, -40))
    assert bench.where(LAMP) == (200, 0)
    assert bench.plan.parts[LAMP].panel == PANEL


def test_a_part_is_not_placed_beside_the_face_and_the_strip_says_why(bench):
    bench.view.begin_place("indicator-green")
    before = bench.plan
    bench.face_click(215, 50)
    assert bench.plan is before and bench.hints[-1].startswith("This is beside the face")


def test_a_slow_second_click_ends_a_track_line_too(bench):
    bench.face_key(Key.Key_D)
    for x in (100, 140, 140):
        bench.face_click(x, 90)
    assert bench.panel.lines[1].points == ((100, 90), (140, 90))


def test_f2_names_the_part_that_is_chosen(bench):
    choose(bench, {LAMP})
    bench.face_key(Key.Key_F2)
    bench.face_type("Siding clear")
    assert bench.plan.parts[LAMP].label == "Siding clear"
