import pytest
from support.gesture_runs import BATTERY, BLACK, BUTTON, KINDS, LAMP, RED, SWITCH, around, at, key, run

from app.canvas.gestures.bend import drag_bend, new_bend
from app.canvas.gestures.choose import press
from app.canvas.gestures.place import article, place_part
from app.canvas.gestures.pointer import Do, Pick, Throw
from app.canvas.gestures.snapping import snapped
from app.canvas.gestures.throw import next_position
from app.canvas.gestures.turn import turn_parts
from wiring.plan.changes import changes_between


def edited(here, act):
    assert isinstance(act, Do)
    return act.edit.apply(here.plan)


def test_a_click_selects_and_a_click_with_shift_adds():
    here = around(selected=frozenset({LAMP}))
    down = at(here, "press", 100, 300)
    assert run(press(here, down), at(here, "release", 100, 300))[0] == Pick(frozenset({BATTERY}))
    down = at(here, "press", 100, 300, adds=True)
    act, _ = run(press(here, down), at(here, "release", 100, 300))
    assert act == Pick(frozenset({BATTERY, LAMP}))


def test_a_click_on_nothing_clears_and_with_shift_keeps():
    here = around(selected=frozenset({LAMP}))
    assert run(press(here, at(here, "press", 900, 900)), at(here, "release", 900, 900))[0] == Pick(
        frozenset()
    )
    down = at(here, "press", 900, 900, adds=True)
    assert run(press(here, down), at(here, "release", 900, 900))[0] == Pick(frozenset({LAMP}))


def test_a_click_on_a_wire_selects_it():
    here = around()
    act, _ = run(press(here, at(here, "press", 400, 250)), at(here, "release", 400, 250))
    assert act == Pick(frozenset({RED}))


def test_a_drag_shows_the_part_on_its_way_and_moves_it_on_release():
    here = around()
    act, previews = run(
        press(here, at(here, "press", 100, 300)),
        at(here, "move", 130, 333),
        at(here, "move", 142, 357),
        at(here, "release", 142, 357),
    )
    shown = previews[-1]
    assert shown.plan.parts[BATTERY].x_mm == 140
    assert shown.touched == {BATTERY, BLACK}
    moved = edited(here, act)
    assert (moved.parts[BATTERY].x_mm, moved.parts[BATTERY].y_mm) == (140, 355)
    assert here.plan.parts[BATTERY].x_mm == 100


def test_a_drag_of_one_of_many_selected_moves_them_all():
    here = around(selected=frozenset({BATTERY, LAMP, RED}))
    act, _ = run(
        press(here, at(here, "press", 100, 300)), at(here, "move", 150, 300), at(here, "release", 150, 300)
    )
    moved = edited(here, act)
    assert {i for i in moved.parts if moved.parts[i] != here.plan.parts[i]} == {BATTERY, LAMP}


def test_a_drag_back_to_where_it_began_changes_nothing():
    here = around()
    act, _ = run(
        press(here, at(here, "press", 100, 300)),
        at(here, "move", 200, 300),
        at(here, "move", 101, 301),
        at(here, "release", 101, 301),
    )
    assert act is None


def test_with_ctrl_a_drag_leaves_the_grid():
    here = around()
    act, _ = run(
        press(here, at(here, "press", 100, 300)),
        at(here, "move", 113.3, 307.7, free=True),
        at(here, "release", 113.3, 307.7),
    )
    assert edited(here, act).parts[BATTERY].x_mm == pytest.approx(113.3)


def test_a_dragged_part_is_drawn_into_line_with_another():
    here = around()  # the lamp stands at 500, 100
    _, previews = run(press(here, at(here, "press", 100, 300)), at(here, "move", 497, 452))
    assert previews[-1].plan.parts[BATTERY].x_mm == 500
    assert previews[-1].guides


def test_snapping_prefers_a_line_to_the_grid_and_the_grid_to_nothing():
    import numpy as np

    others = np.array([[103.0, 900.0]])
    assert snapped((101, 47), others, 5, 1.0).at == (103, 45)
    assert snapped((101, 47), np.empty((0, 2)), 5, 1.0).at == (100, 45)
    assert snapped((101, 47), others, 5, 10.0).at == (100, 45)  # nearer to the paper, two millimetres are far


@pytest.mark.parametrize(("x", "expected"), [(900, {SWITCH, BUTTON}), (-900, set())])
def test_a_band_to_the_right_takes_what_lies_inside(x, expected):
    here = around()
    start = (250, 50)
    act, _ = run(
        press(here, at(here, "press", *start)), at(here, "move", 370, 370), at(here, "release", 370, 370)
    )
    assert act == Pick(frozenset({SWITCH, BUTTON}))
    act, _ = run(
        press(here, at(here, "press", 800, 800)), at(here, "move", x, 900), at(here, "release", x, 900)
    )
    assert act.ids <= {SWITCH, BUTTON, LAMP, BATTERY, RED, BLACK}


def test_a_band_to_the_left_takes_all_it_touches():
    here = around()
    corners = (420, 260), (380, 240)  # across the red wire's upright leg and nothing else
    act, _ = run(
        press(here, at(here, "press", *corners[0])),
        at(here, "move", *corners[1]),
        at(here, "release", *corners[1]),
    )
    assert act == Pick(frozenset({RED}))
    act, _ = run(
        press(here, at(here, "press", *corners[1])),
        at(here, "move", *corners[0]),
        at(here, "release", *corners[0]),
    )
    assert act == Pick(frozenset())


def test_a_click_on_the_lever_throws_and_a_drag_of_it_moves():
    here = around(scale=3.0, positions={SWITCH: "off"})
    down = at(here, "press", 300, 300)
    assert down.hit.lever
    assert run(press(here, down), at(here, "release", 300, 300))[0] == Throw(SWITCH, "on")
    act, _ = run(press(here, down), at(here, "move", 350, 300), at(here, "release", 350, 300))
    assert edited(here, act).parts[SWITCH].x_mm == 350


def test_a_push_button_is_pressed_while_held():
    here = around(scale=3.0, positions={BUTTON: "released"})
    act, previews = run(press(here, at(here, "press", 300, 100)), at(here, "release", 300, 100))
    assert previews[0].held == (BUTTON, "pressed")
    assert act == Throw(BUTTON, "released")


def test_positions_follow_each_other_and_leave_out_what_no_hand_does():
    centre_off = KINDS["toggle-centre-off"]
    names = [p.name for p in centre_off.positions]
    walked = [names[0]]
    for _ in names:
        walked.append(next_position(centre_off, walked[-1]))
    assert walked == [*names, names[0]]
    assert next_position(KINDS["stall-motor"], "normal") == "reverse"
    assert next_position(KINDS["stall-motor"], "reverse") == "normal"
    assert next_position(KINDS["led-red"], "") is None


def test_a_part_is_placed_where_the_ghost_stands_and_turned_as_it_is():
    here = around()
    act, previews = run(
        place_part(here, KINDS["led-red"]),
        at(here, "move", 703, 702),
        key("turn", 703, 702),
        key("turn", 703, 702),
        key("turn back", 703, 702),
        at(here, "press", 703, 702),
    )
    assert previews[1].ghost.turn_deg == 0
    assert previews[-1].ghost.turn_deg == 90
    plan = edited(here, act)
    new = changes_between(here.plan, plan).parts.added
    part = plan.parts[next(iter(new))]
    assert (part.kind, part.x_mm, part.y_mm, part.turn_deg) == ("led-red", 705, 700, 90)
    assert act.pick_new


def test_the_hint_names_the_part_with_its_article():
    assert article("Toggle switch, on-off") == "a toggle switch, on-off"
    assert article("LED, red") == "an LED, red"
    assert article("Indicator, green") == "an indicator, green"


def test_the_handle_turns_in_steps_of_fifteen_degrees():
    here = around()
    act, previews = run(
        turn_parts(here, (600, 100), (500, 100), frozenset({LAMP})),
        at(here, "move", 500, 199),
        at(here, "release", 500, 199),
    )
    assert previews[-1].plan.parts[LAMP].turn_deg == 90
    assert edited(here, act).parts[LAMP].turn_deg == 90


def test_a_bend_is_moved_taken_out_and_added():
    here = around(selected=frozenset({RED}))
    act, _ = run(drag_bend(here, RED, 0), at(here, "move", 421, 322), at(here, "release", 421, 322))
    assert edited(here, act).wires[RED].bends == ((420, 320), (400, 200))
    act, _ = run(drag_bend(here, RED, 0), key("back"))
    assert edited(here, act).wires[RED].bends == ((400, 200),)
    act = new_bend(here, RED, (401, 251))
    assert edited(here, act).wires[RED].bends == ((400, 300), (400, 250), (400, 200))


def test_closing_a_gesture_leaves_no_trace():
    here = around()
    gesture = press(here, at(here, "press", 100, 300))
    next(gesture)
    gesture.send(at(here, "move", 200, 300))
    gesture.close()
    with pytest.raises(StopIteration):
        gesture.send(at(here, "release", 200, 300))
    assert here.plan.parts[BATTERY].x_mm == 100
