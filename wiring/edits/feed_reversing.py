"""Feed stall motors over changeovers of two poles, crossed over so that the lever turns the volts round."""

import math
from collections.abc import Sequence

from wiring.edits.feed_gates import Outlet, take
from wiring.edits.laying import Laying
from wiring.edits.run_order import run_order
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part

# The commons go to the motor; each pole meets the supply once straight and once crossed.
TO_MOTOR = (("11", "M1", "YE"), ("21", "M2", "BU"))  # colours of no supply's usual pair; no source
TO_PLUS, TO_MINUS = ("14", "22"), ("24", "12")


def feed_reversing(
    laying: Laying, movers: Sequence[Part], reversers: Sequence[Part], plus: Outlet, minus: Outlet
) -> None:
    """Lay the wires of stall motors, each over the nearest free reverser; the poles run on to the next."""
    free = list(reversers)
    order = run_order([(m.x_mm, m.y_mm) for m in movers])
    pairs = []
    for mover in (movers[i] for i in order):
        nearest = min(free, key=lambda p: round(math.dist((p.x_mm, p.y_mm), (mover.x_mm, mover.y_mm)), 3))
        free.remove(nearest)
        pairs.append((mover, nearest))
    for outlet, names in ((plus, TO_PLUS), (minus, TO_MINUS)):
        run = run_order([(r.x_mm, r.y_mm) for _, r in pairs], laying.at(outlet.refs[0]))
        ends = [TerminalRef(pairs[i][1].id, name) for i in run for name in names]
        before = take(laying, outlet, laying.at(ends[0]))
        for end in ends:
            laying.wire(before, end, outlet.colour)
            before = end
    for mover, reverser in pairs:
        for common, pole, colour in TO_MOTOR:
            laying.wire(TerminalRef(reverser.id, common), TerminalRef(mover.id, pole), colour)
