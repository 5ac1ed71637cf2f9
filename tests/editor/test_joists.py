"""Joists under the board: laid by dragging, sized, moved, shown on plan sheets, and told by wires."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import field, open_demo, type_into
from support.gesture_runs import BATTERY, KINDS
from support.surfaces import CTRL, SHIFT, desk

from wiring.drawings.plan_view import plan_view
from wiring.edits.joists import add_joist, change_joist, size_joists
from wiring.edits.wireways import add_wireway
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.pictures.picture import Path
from wiring.plan.joist import Joist
from wiring.plan.plan import Plan
from wiring.routing.joists import joists_met, joists_of_wire

__all__ = ["desk"]
Key = Qt.Key


def lay(desk, a, b):
    desk.view.begin_draw("joist")
    desk.drag(a, b)
    desk.key(Key.Key_Escape)


def test_joists_are_laid_one_after_the_other_by_dragging_and_kept_in_the_file(desk):
    desk.view.begin_draw("joist")
    desk.drag((50, 402), (601, 411))  # nearly level: level
    desk.drag((200, 50), (200, 500))
    assert desk.view.tool == "joist"
    desk.key(Key.Key_Escape)
    assert [(j.start, j.end) for j in desk.plan.joists] == [((50, 400), (600, 400)), ((200, 50), (200, 500))]
    assert desk.view.tool == "select" and desk.session.undo_label == "Lay joist"
    assert decode(encode(desk.plan)) == desk.plan


def test_a_slip_lays_none_and_escape_leaves_one_that_is_begun(desk):
    desk.view.begin_draw("joist")
    desk.drag((50, 400), (53, 400))
    desk.press(50, 400)
    desk.move(300, 400)
    assert desk.view._acting.preview.bar.end == (300, 400)
    desk.key(Key.Key_Escape)
    desk.release(300, 400)
    assert desk.plan.joists == ()


def test_one_is_selected_by_a_click_and_moved_whole_or_by_an_end(desk):
    lay(desk, (50, 450), (600, 450))
    desk.click(250, 452)
    assert desk.selection.ground == "j0"
    desk.drag((250, 450), (270, 500))
    assert desk.plan.joists[0].start == (70, 500) and desk.plan.joists[0].end == (620, 500)
    desk.drag((620, 500), (703, 421), CTRL)
    assert desk.plan.joists[0].end == pytest.approx((703, 421))
    desk.key(Key.Key_Right)
    assert desk.plan.joists[0].start == (80, 500)
    desk.key(Key.Key_Delete)
    assert desk.plan.joists == ()
    desk.session.undo()
    assert len(desk.plan.joists) == 1


def test_one_that_is_not_selected_is_no_obstacle_to_a_band(desk):
    lay(desk, (20, 300), (700, 300))
    before = desk.plan
    desk.drag((400, 300), (30, 340))
    assert desk.plan is before and BATTERY in desk.selection.ids


def test_it_shows_as_a_bar_on_the_surface_and_on_plan_sheets(desk):
    before = desk.shot()
    lay(desk, (50, 450), (600, 450))
    desk.selection.clear()
    desk.move(10, 10)
    at = desk.px(330, 450)
    assert desk.shot().pixelColor(at) != before.pixelColor(at)
    for below in (False, True):
        plain = plan_view(before_joists(desk.plan), KINDS, below=below)
        drawn = plan_view(desk.plan, KINDS, below=below)
        bars = [i for i in drawn.items if isinstance(i, Path)]
        assert len(bars) > len([i for i in plain.items if isinstance(i, Path)]) + 10


def before_joists(plan):
    return plan.with_changes(joists=())


def test_the_next_one_is_as_thick_and_all_can_be_made_alike():
    plan = add_joist((0, 0), (500, 0)).apply(Plan())
    plan = change_joist(0, width_mm=40.0, depth_mm=95.0).apply(plan)
    plan = add_joist((0, 200), (500, 200)).apply(plan)
    assert plan.joists[1] == Joist(start=(0, 200), end=(500, 200), width_mm=40.0, depth_mm=95.0)
    assert {j.width_mm for j in size_joists(width_mm=18.0).apply(plan).joists} == {18.0}


def test_a_wire_tells_how_many_joists_it_crosses():
    plan = Plan(joists=(Joist(start=(100, 0), end=(100, 100)), Joist(start=(50, 0), end=(50, 100))))
    assert joists_met(plan, ((0, 50), (200, 50))) == (1, 0)
    assert joists_met(plan, ((0, 50), (100, 50), (200, 50))) == (1, 0)  # a corner on a joist counts once
    assert joists_met(plan, ((100, 0), (100, 90))) == () and joists_met(plan, ((0, 150), (200, 150))) == ()


def test_the_cards_of_joist_and_wireway_size_them_and_tell_what_runs_there(editor):
    open_demo(editor, "quay")
    plan = editor.session.plan
    wire = next(w for w in plan.wires.values() if len(w.bends) > 1 and w.bends[0] != w.bends[1])
    (ax, ay), (bx, by) = wire.bends[:2]
    x, y = (ax + bx) / 2, (ay + by) / 2
    across = (0, 60) if ay == by else (60, 0)
    editor.session.do(add_joist((x - across[0], y - across[1]), (x + across[0], y + across[1])))
    assert joists_of_wire(editor.session.plan, editor.session.kinds, wire)
    editor.selection.select((), "j0")
    type_into(field(editor, "joist_width_mm"), "1 in")
    assert editor.session.plan.joists[0].width_mm == 25.4
    told = {f.name: f.value for f in editor.window.inspector.card.figures.figures}
    assert int(told["Loose wires across it"]) >= 1 and f"-{wire.label}" in told["Which"]
    editor.session.do(add_wireway([(x - 200, y), (x + 200, y)], "Beam"))
    way = list(editor.session.plan.wireways)[-1]
    editor.selection.select((), way)
    type_into(field(editor, "wireway_name"), "Back beam")
    type_into(field(editor, "wireway_hole_mm"), "28 mm")
    type_into(field(editor, "wireway_fascia_drop_mm"), "30 cm")
    there = editor.session.plan.wireways[way]
    assert (there.name, there.hole_mm, there.fascia_drop_mm) == ("Back beam", 28, 300)
    line = field(editor, "wireway_fascia_drop_mm")
    line.setFocus()
    line.selectAll()
    QTest.keyClick(line, Key.Key_Delete)
    QTest.keyClick(line, Key.Key_Return)
    assert editor.session.plan.wireways[way].fascia_drop_mm is None
    editor.session.do(lay_there(editor, wire, way))
    told = {f.name: f.value for f in editor.window.inspector.card.figures.figures}
    assert told["Wires in it"] == "1" and "allowed" in told["Hole filled"] and told["Length"] == "1 ft 4 in"
    QTest.mouseClick(field(editor, "pickWires"), Qt.MouseButton.LeftButton)
    assert editor.selection.ids == {wire.id}


def lay_there(editor, wire, way):
    from wiring.edits.lay_along import lay_along

    return lay_along({wire.id: (wire.bends, (way,))})


def test_a_panel_has_a_drop_of_its_own():
    from wiring.edits.connect import connect
    from wiring.edits.panels import add_panel
    from wiring.edits.place_part import place
    from wiring.edits.wireways import set_wireway
    from wiring.plan.lengths import drops_m
    from wiring.plan.names import TerminalRef

    plan = Plan()
    for edit in (
        add_panel("Desk", 0, 0, 200, 100),
        place(KINDS["toggle-on-off"], 100, 50),
        place(KINDS["lamp-12v"], 400, 400),
        connect(TerminalRef("p2", "14"), TerminalRef("p3", "1")),
        add_wireway([(100, 200), (400, 200)]),
        set_wireway("y5", drop_mm=80.0),
    ):
        plan = edit.apply(plan)
    from wiring.edits.lay_along import lay_along

    plan = lay_along({"w4": ((), ("y5",))}).apply(plan)
    assert drops_m(plan, plan.wires["w4"]) == pytest.approx(0.16)
    plan = set_wireway("y5", fascia_drop_mm=300.0).apply(plan)
    assert drops_m(plan, plan.wires["w4"]) == pytest.approx(0.38)


def bays(desk):
    for y in (420, 460, 500):
        lay(desk, (50, y), (600, y))
    desk.selection.clear()


def test_several_are_selected_by_shift_clicks_and_taken_out_again(desk):
    bays(desk)
    desk.click(250, 420)
    desk.click(250, 500, SHIFT)
    assert desk.selection.grounds == {"j0", "j2"} and desk.selection.ground == ""
    desk.click(100, 300, SHIFT)
    assert desk.selection.grounds == {"j0", "j2"} and desk.selection.ids == {BATTERY}
    desk.click(250, 420, SHIFT)
    assert desk.selection.grounds == {"j2"}
    desk.click(700, 50)
    assert not desk.selection.grounds and not desk.selection.ids


def test_a_band_selects_the_joists_that_lie_wholly_in_it(desk):
    bays(desk)
    desk.drag((10, 440), (640, 520))
    assert desk.selection.grounds == {"j1", "j2"}
    desk.drag((640, 520), (10, 410), SHIFT)
    assert desk.selection.grounds == {"j0", "j1", "j2"}
    desk.drag((300, 380), (400, 520))
    assert not desk.selection.grounds


def test_several_are_moved_with_the_parts_selected_with_them_in_one_step(desk):
    bays(desk)
    before = desk.plan
    desk.selection.select((BATTERY,), ("j0", "j1"))
    desk.drag((250, 460), (270, 480))
    moved = desk.plan
    assert [j.start for j in moved.joists] == [(70, 440), (70, 480), (50, 500)]
    assert (moved.parts[BATTERY].x_mm, moved.parts[BATTERY].y_mm) == (120, 320)
    assert desk.selection.grounds == {"j0", "j1"} and desk.selection.ids == {BATTERY}
    desk.drag((120, 320), (100, 300))  # the same by the part
    assert [j.start for j in desk.plan.joists] == [j.start for j in before.joists]
    desk.session.undo()
    desk.session.undo()
    assert desk.plan is before


def test_a_click_on_one_of_several_leaves_that_one_and_escape_leaves_all_where_they_were(desk):
    bays(desk)
    before = desk.plan
    desk.selection.select((), ("j0", "j1"))
    desk.press(250, 460)
    desk.move(250, 490)
    assert len(desk.view._acting.preview.bars) == 2
    desk.key(Key.Key_Escape)
    desk.release(250, 490)
    assert desk.plan is before
    desk.click(250, 460)
    assert desk.selection.grounds == {"j1"}


def test_several_are_nudged_removed_copied_and_duplicated_by_keys(desk):
    bays(desk)
    desk.selection.select((), ("j0", "j2"))
    desk.key(Key.Key_Right)
    desk.key(Key.Key_Right)
    assert [j.start[0] for j in desk.plan.joists] == [70, 50, 70]
    desk.key(Key.Key_C, CTRL)
    desk.key(Key.Key_D, CTRL)
    assert [j.start for j in desk.plan.joists[3:]] == [(90, 440), (90, 520)]
    assert desk.selection.grounds == {"j3", "j4"}
    desk.selection.select((), ("j0", "j2", "j4"))
    desk.key(Key.Key_Delete)
    assert [j.start for j in desk.plan.joists] == [(50, 460), (90, 440)]
    desk.session.undo()
    assert len(desk.plan.joists) == 5
    desk.session.open(Plan(), None)
    desk.key(Key.Key_V, CTRL)
    assert [j.start for j in desk.plan.joists] == [(90, 440), (90, 520)]


def test_copied_parts_without_joists_read_as_they_always_did(desk):
    from wiring.edits.fragment import copied

    assert "joists" not in copied(desk.plan, {BATTERY})


def test_joists_out_of_a_foreign_clipboard_are_checked():
    from wiring.edits.edit import EditRefused
    from wiring.edits.fragment import copied, paste

    plan = add_joist((0, 0), (500, 0)).apply(Plan())
    text = copied(plan, (), (0,)).replace("500.0", "1e300")
    with pytest.raises(EditRefused):
        paste(text).apply(plan)
