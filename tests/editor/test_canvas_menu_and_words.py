import msgspec
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from support.gesture_runs import BATTERY, KINDS, LAMP, RED, SWITCH
from support.surfaces import PLAIN, SHIFT, Desk, desk

from app.canvas.contact_words import MOST, contact_words
from app.canvas.hits.hit import hit_at
from app.canvas.words import hit_words, tip_words
from wiring.catalogue.kind import Position
from wiring.edits.place_part import place
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

__all__ = ["desk"]


def menu_at(desk, x, y, keys=PLAIN):
    """Return the entries of the small menu by their words."""
    desk.click(x, y, keys)
    hit = desk.view._hit(desk.px(x, y).x(), desk.px(x, y).y())
    menu = desk.view.menu_for(hit, desk.px(x, y))
    entries = {}
    for action in menu.actions():
        for inner in action.menu().actions() if action.menu() else [action]:
            entries[inner.text().split("\t")[0]] = inner
    return menu, entries


def test_the_small_menu_turns_duplicates_and_removes(desk):
    _menu, entries = menu_at(desk, 500, 100)
    entries["Turn a quarter"].trigger()
    assert desk.plan.parts[LAMP].turn_deg == 90
    entries["Duplicate"].trigger()
    assert len(desk.plan.parts) == 5
    entries["Remove"].trigger()  # the copy is selected now
    assert len(desk.plan.parts) == 4


def test_the_small_menu_throws_and_keeps_a_position(desk):
    menu, entries = menu_at(desk, 300, 300, SHIFT)
    assert entries["on"].isChecked()
    assert not entries["Stands at “on” in a session"].isEnabled()
    entries["off"].trigger()
    assert desk.session.positions[SWITCH] == "off"
    assert desk.plan.parts[SWITCH].position == ""
    desk.selection.clear()
    menu, entries = menu_at(desk, 300, 300, SHIFT)
    entries["Stands at “off” in a session"].trigger()
    assert desk.plan.parts[SWITCH].position == "off"
    del menu


def test_the_small_menu_renames_in_place_and_escape_leaves_the_name(desk):
    _menu, entries = menu_at(desk, 500, 100)
    entries["Rename…"].trigger()
    line = desk.view.typing.line
    assert desk.view.typing.isVisible() and line.hasFocus()
    QTest.keyClicks(line, "  harbour office ")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert desk.plan.parts[LAMP].label == "harbour office"
    assert not desk.view.typing.isVisible() and desk.view.hasFocus()
    assert desk.selection.ids == {LAMP}
    entries["Rename…"].trigger()
    QTest.keyClicks(line, "no")
    QTest.keyClick(line, Qt.Key.Key_Escape)
    assert desk.plan.parts[LAMP].label == "harbour office" and not desk.view.typing.isVisible()
    assert desk.selection.ids == {LAMP}


def test_what_cannot_be_a_name_is_said_beneath_and_a_press_elsewhere_drops_it(desk):
    desk.click(400, 250)
    desk.view.begin_rename()
    line = desk.view.typing.line
    QTest.keyClicks(line, "two words")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert "needs a label" in desk.view.typing._fault.text() and desk.view.typing.isVisible()
    desk.click(700, 500)
    assert not desk.view.typing.isVisible() and desk.plan.wires[RED].label == "W1"
    desk.click(400, 250)
    desk.view.begin_rename()
    QTest.keyClicks(line, "W77")
    desk.click(700, 500)
    assert desk.plan.wires[RED].label == "W77" and desk.session.undo_label == "Set wire label"


def test_the_small_menu_of_a_wire_bends_and_straightens_it(desk):
    _menu, entries = menu_at(desk, 400, 250)
    entries["Bend here"].trigger()
    assert len(desk.plan.wires[RED].bends) == 3
    entries["Straighten"].trigger()
    assert desk.plan.wires[RED].bends == ()


def test_the_small_menu_marks_a_wire_as_built_and_its_words_say_so(desk):
    _menu, entries = menu_at(desk, 400, 250)
    assert not entries["Built"].isChecked()
    entries["Built"].trigger()
    assert desk.plan.wires[RED].built
    sight = desk.view.sight()
    assert hit_words(sight, hit_at(sight.geometry, sight.plan, KINDS, (400, 250), 1.0)).endswith(", built")
    _menu, entries = menu_at(desk, 400, 250)
    entries["Built"].trigger()
    assert not desk.plan.wires[RED].built


def test_words_name_parts_wires_and_terminals_as_the_sheets_do(desk):
    sight = desk.view.sight()

    def words(x, y, scale=1.0):
        return hit_words(sight, hit_at(sight.geometry, sight.plan, KINDS, (x, y), scale))

    battery = desk.plan.parts[BATTERY]
    assert words(100, 300) == f"{KINDS[battery.kind].title} -{battery.designation}"
    assert "red (RD)" in words(400, 250)
    assert f"-{desk.plan.parts[SWITCH].designation}:14" in words(400, 250)
    x, y = sight.geometry.terminals.get(TerminalRef(SWITCH, "14")).tolist()
    assert words(x, y, 3.0) == f"Terminal -{desk.plan.parts[SWITCH].designation}:14, to 13 at “on”"
    assert words(900, 900) == ""


@pytest.mark.parametrize(
    ("kind", "terminal", "said"),
    [
        ("stall-motor", "21", "to 22 at “normal”, to 24 at “reverse”"),
        ("stall-motor", "24", "to 21 at “reverse”"),
        ("stall-motor", "M1", ""),
        ("building-led", "A", ""),
    ],
)
def test_a_terminal_of_a_contact_says_what_it_goes_to_and_when(qtbot, kind, terminal, said):
    desk = Desk(qtbot, place(KINDS[kind], 300, 200).apply(Plan()))
    x, y = desk.terminal("p1", terminal)
    desk.move(x, y)
    told = hit_words(desk.view.sight(), desk.view.hit_at(desk.px(x, y).x(), desk.px(x, y).y()))
    assert told.partition(", ")[2] == said


def test_what_goes_to_many_says_nothing_and_an_unknown_kind_neither():
    ways = tuple(Position(f"at {n}", (("C", str(n)),)) for n in range(MOST + 1))
    many = msgspec.structs.replace(KINDS["toggle-on-off"], positions=ways)
    assert contact_words(many, "C") == "" and contact_words(many, "2") == "to C at “at 2”"
    assert contact_words(None, "1") == ""


def test_a_tip_says_how_a_switch_stands(desk):
    sight = desk.view.sight()
    hit = hit_at(sight.geometry, sight.plan, KINDS, (300, 300), 3.0)
    assert "Stands at “on”." in tip_words(sight, hit)
    assert "Click here" in tip_words(sight, hit)


def test_pointing_is_told_with_what_lies_there_and_words_for_it(desk):
    told = []
    desk.view.pointed.connect(told.append)
    desk.move(500, 100)
    assert told[-1].part == LAMP
    assert desk.view.words(told[-1]).startswith(KINDS["building-led"].title)
    desk.move(800, 500)
    assert told[-1] is None
    assert desk.view.words(None) == ""


def test_the_tool_in_hand_and_its_hint_are_told(desk):
    tools = []
    desk.view.tool_changed.connect(tools.append)
    desk.view.begin_wire()
    assert "terminal" in desk.hints[-1]
    desk.view.begin_place("led-red")
    assert "Click or Enter to place" in desk.hints[-1]
    desk.move(300, 200)
    assert "Click to place" in desk.hints[-1]
    desk.view.begin_select()
    assert desk.hints[-1] == ""
    assert tools == ["wire", "place", "select"]


def test_the_menu_of_the_bare_plan_draws_pastes_and_takes_tracks_away(desk):
    from wiring.edits.benchwork import add_track, set_board

    desk.session.do(add_track([(600, 400), (900, 400)]))
    desk.session.do(set_board([(0, 0), (900, 0), (900, 600)]))
    _menu, entries = menu_at(desk, 700, 402)
    entries["Remove this track"].trigger()
    assert desk.plan.tracks == ()
    entries["Remove the board’s outline"].trigger()
    assert desk.plan.board == ()
    desk.selection.select([LAMP])
    desk.view._keys.copy()
    entries["Paste here"].trigger()
    (new,) = desk.selection.ids
    assert (desk.plan.parts[new].x_mm, desk.plan.parts[new].y_mm) == (700, 402)
    _menu, entries = menu_at(desk, 700, 500)
    assert "Remove this track" not in entries
    entries["Draw a panel"].trigger()
    assert desk.view.tool == "panel"


def test_the_menu_of_an_area_renames_and_removes_it(desk):
    from wiring.edits.scenes import add_scene

    desk.session.do(add_scene("Scene 1", 600, 300, 200, 150))
    _menu, entries = menu_at(desk, 600, 380)
    entries["Rename scene…"].trigger()
    QTest.keyClicks(desk.view.typing.line, "Net lofts")
    QTest.keyClick(desk.view.typing.line, Qt.Key.Key_Return)
    (scene,) = desk.plan.scenes.values()
    assert scene.name == "Net lofts"
    entries["Remove scene"].trigger()
    assert not desk.plan.scenes


def test_a_block_of_joints_has_no_figures_of_its_own_and_a_lamp_has(desk):
    from app.canvas.readings import reading
    from app.solving import Solving
    from wiring.edits.connect import connect
    from wiring.edits.place_part import place

    desk.session.do(place(KINDS["distribution-block-6"], 650, 300))
    block = list(desk.plan.parts)[-1]
    desk.session.do(connect(TerminalRef(BATTERY, "+"), TerminalRef(block, "1")))
    desk.session.do(connect(TerminalRef(block, "2"), TerminalRef(SWITCH, "13")))
    solving = Solving(desk.session, at_once=True, parent=desk.view)
    solving.answered.connect(desk.view.set_answer)
    solving.request()
    assert reading(desk.view.sight(), block) == ""
    assert " V · " in reading(desk.view.sight(), LAMP)
    assert "A" in reading(desk.view.sight(), RED)


def test_the_menu_key_opens_the_menu_of_what_is_selected(desk, qtbot):
    desk.selection.select([SWITCH])
    centre = desk.view.rect().center()
    reason = QContextMenuEvent.Reason.Keyboard
    QApplication.sendEvent(desk.view, QContextMenuEvent(reason, centre, desk.view.mapToGlobal(centre)))
    menu = desk.view.findChild(QMenu)
    texts = [action.text() for action in menu.actions()]
    menu.close()
    assert "Throw to" in texts
    assert desk.selection.ids == {SWITCH}
