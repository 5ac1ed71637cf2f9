"""Wires drawn square are square on paper too, where small parts are drawn larger than they are."""

from itertools import pairwise

from support.editing import KINDS, done

from wiring.drawings.plan_parts import placed_parts
from wiring.drawings.plan_view import plan_fit
from wiring.drawings.plan_wires import wire_runs
from wiring.edits.connect import connect
from wiring.edits.place_part import place
from wiring.plan.names import TerminalRef
from wiring.plan.places import terminal_at
from wiring.plan.plan import Plan

LAMP = KINDS["led-warm-white"]


def test_corners_go_along_with_the_terminals_of_parts_drawn_larger():
    plan = done(Plan(), place(LAMP, 0, 0), place(LAMP, 1500, 700))
    (ax, ay), (kx, _) = (terminal_at(plan.parts[p], LAMP, t) for p, t in (("p1", "A"), ("p2", "K")))
    for colour, corners in (("RD", [(ax, 300), (kx, 300)]), ("BK", [(kx, ay)])):
        plan = done(
            plan, connect(TerminalRef("p1", "A"), TerminalRef("p2", "K"), bends=corners, colour=colour)
        )
    laid = plan_fit(plan, KINDS, 267.0, 160.0, below=False)
    assert laid is not None
    fit, _ = laid
    placed = placed_parts(plan, KINDS, fit)
    assert placed["p1"].factor > 1.5 * fit.scale
    for run in wire_runs(plan, KINDS, fit, placed, (-1e4, -1e4, 1e4, 1e4)).values():
        start, *_, end = run.points
        assert abs(start[0] - fit.at((ax, ay))[0]) > 0.5  # the terminal stands off its true place
        assert all(min(abs(a - c), abs(b - d)) < 0.02 for (a, b), (c, d) in pairwise(run.points)), run
        assert end != start
