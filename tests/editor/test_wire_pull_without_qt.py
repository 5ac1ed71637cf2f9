import itertools

from support.gesture_runs import BATTERY, BLACK, LAMP, RED, SWITCH, around, at, key, run, terminal

from app.canvas.gestures.choose import press
from app.canvas.gestures.pointer import Do
from app.canvas.gestures.pull_wire import BEGIN, NOT_A_TERMINAL, SAME, pull_from, pull_wire
from app.canvas.gestures.reconnect import drag_end
from app.canvas.hits.hit import end_rings
from wiring.plan.changes import changes_between
from wiring.plan.names import TerminalRef

PLUS, IN = TerminalRef(BATTERY, "+"), TerminalRef(SWITCH, "13")


def pulled(here, act):
    assert isinstance(act, Do)
    plan = act.edit.apply(here.plan)
    (new,) = changes_between(here.plan, plan).wires.added
    return plan.wires[new]


def from_plus(here):
    return pull_from(here, PLUS, terminal(here, BATTERY, "+"))


def to(here, phase, place, **fields):
    return at(here, phase, *place, landing=True, **fields)


def test_two_clicks_on_terminals_make_a_wire_over_one_square_corner():
    here = around(wire_size="20 AWG", wire_colour="OG")
    start, end = terminal(here, BATTERY, "+"), terminal(here, SWITCH, "13")
    act, previews = run(
        pull_wire(here), to(here, "press", start), to(here, "move", end), to(here, "press", end)
    )
    assert previews[0].hint == BEGIN
    assert previews[-1].landing == IN
    wire = pulled(here, act)
    assert (wire.start, wire.end, wire.size, wire.colour) == (PLUS, IN, "20 AWG", "OG")
    legs = [start, *wire.bends, end]
    assert all(a[0] == b[0] or a[1] == b[1] for a, b in itertools.pairwise(legs))


def test_clicks_on_the_way_become_bends_on_the_grid():
    here = around()
    end = terminal(here, SWITCH, "13")
    act, previews = run(
        from_plus(here),
        to(here, "press", (203, 412)),
        to(here, "move", end),
        to(here, "press", end),
    )
    assert (205, 410) in previews[-1].line
    assert (205, 410) in pulled(here, act).bends


def test_with_ctrl_the_wire_runs_straight():
    here = around()
    end = terminal(here, SWITCH, "13")
    act, _ = run(from_plus(here), to(here, "move", end, free=True), to(here, "press", end, free=True))
    assert pulled(here, act).bends == ()


def test_backspace_takes_back_one_click_with_its_corner():
    here = around()
    _, previews = run(
        from_plus(here),
        to(here, "press", (200, 410)),
        to(here, "press", (250, 500)),
        to(here, "move", (260, 520)),
        key("back", 260, 520),
    )
    before, after = previews[-2].line, previews[-1].line
    assert (250, 500) in before
    assert (250, 500) not in after
    assert (200, 410) in after


def test_space_puts_the_corner_on_the_other_side():
    here = around()
    _, previews = run(from_plus(here), to(here, "move", (220, 400)), key("flip", 220, 400))
    assert previews[1].line[0] == previews[2].line[0]
    assert previews[1].line[1] != previews[2].line[1]


def test_a_drag_from_terminal_to_terminal_makes_a_wire_on_release():
    here = around()
    end = terminal(here, SWITCH, "13")
    act, _ = run(
        from_plus(here), to(here, "move", (200, 300)), to(here, "move", end), to(here, "release", end)
    )
    assert pulled(here, act).end == IN


def test_a_click_beside_every_terminal_is_refused_in_words():
    here = around()
    act, previews = run(pull_wire(here), to(here, "press", (700, 700)))
    assert act is ...
    assert previews[-1].hint == NOT_A_TERMINAL


def test_a_wire_back_to_its_own_terminal_is_refused_in_words():
    here = around()
    start = terminal(here, BATTERY, "+")
    act, previews = run(
        from_plus(here),
        to(here, "release", start),
        to(here, "press", (205, 410)),
        to(here, "move", (240, 500)),
        to(here, "move", start),
        to(here, "press", start),
    )
    assert act is ...
    assert previews[-2].hint == SAME
    assert previews[-2].cursor == "no"


def test_a_second_wire_just_like_the_first_is_refused_with_the_reason_of_the_edit():
    here = around(wire_colour="BK")
    end = terminal(here, BATTERY, "-")
    start = TerminalRef(LAMP, "K")
    act, previews = run(
        pull_from(here, start, terminal(here, LAMP, "K")),
        to(here, "move", end),
        to(here, "press", end),
    )
    assert act is ...
    assert "already joins" in previews[-1].hint


def test_the_end_of_a_selected_wire_is_laid_on_another_terminal():
    here = around(selected=frozenset({BLACK}))
    ring = end_rings(here.geometry.paths[BLACK], here.scale)["end"]
    down = at(here, "press", *ring)
    assert (down.hit.wire, down.hit.end) == (BLACK, "end")
    target = terminal(here, SWITCH, "13")
    act, previews = run(press(here, down), to(here, "move", target), to(here, "release", target))
    assert BLACK not in previews[-1].plan.wires  # the old way is not shown while its end is in the hand
    assert previews[-1].line[-1] == target
    assert act.edit.apply(here.plan).wires[BLACK].end == IN


def test_an_end_let_go_anywhere_else_stays_where_it_was():
    here = around()
    act, _ = run(
        drag_end(here, BLACK, "start"), to(here, "move", (900, 900)), to(here, "release", (900, 900))
    )
    assert act is None


def test_an_end_laid_on_its_own_other_end_is_refused_in_words():
    here = around()
    target = terminal(here, BATTERY, "-")
    act, previews = run(drag_end(here, BLACK, "start"), to(here, "move", target), to(here, "release", target))
    assert act is None
    assert "must lead to another terminal" in previews[-1].hint
    assert previews[-1].cursor == "no"


def test_no_ring_is_hit_on_a_wire_that_is_not_selected():
    here = around(selected=frozenset({RED}))
    ring = end_rings(here.geometry.paths[BLACK], here.scale)["end"]
    assert at(here, "press", *ring).hit.end == ""
