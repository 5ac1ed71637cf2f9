"""Feed twin-coil motors: a common return, and each coil over a contact that lets go by itself."""

import math
from collections.abc import Sequence

from wiring.edits.edit import EditRefused
from wiring.edits.feed_gates import Outlet, take
from wiring.edits.laying import Laying
from wiring.edits.run_order import run_order
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part

COILS = ("N", "R")
# One colour for each coil, other than those of any supply's usual pair; common practice, no source.
COLOURS = ("GN", "PK")
STORED = "OG"  # what comes out of a discharge unit is no supply's plus
NEED = (
    "A coil stands a short pulse only: select two push buttons, or a switch with centre off, for -{name} as "
    "well, so that nothing holds it under current."
)


def stored_outlet(laying: Laying, stores: Sequence[Part], plus: Outlet) -> Outlet:
    """Return where coils draw their pulse: the nearest discharge unit selected, else plus itself."""
    if not stores:
        return plus
    if len(stores) > 1:
        names = " and ".join(f"-{p.designation}" for p in stores[:2])
        raise EditRefused(f"{names} would both feed these coils; leave one of them out.")
    return Outlet((TerminalRef(stores[0].id, "O"),), STORED if plus.colour != STORED else "PK")


def feed_coils(
    laying: Laying, coils: Sequence[Part], throwers: Sequence[Part], plus: Outlet, minus: Outlet
) -> None:
    """Lay the wires of twin-coil motors: C to the return, N and R over the nearest throwers to plus."""
    free = list(throwers)
    order = run_order([(c.x_mm, c.y_mm) for c in coils], laying.at(minus.refs[0]))
    ins: list[TerminalRef] = []
    for coil in (coils[i] for i in order):
        taken = _taken(laying, coil, free)
        ins += dict.fromkeys(way_in for way_in, _ in taken)
        for name, colour, (_, way_out) in zip(COILS, COLOURS, taken, strict=True):
            laying.wire(way_out, TerminalRef(coil.id, name), colour)
    for outlet, ends in ((plus, ins), (minus, [TerminalRef(coils[i].id, "C") for i in order])):
        before = take(laying, outlet, laying.at(ends[0]))
        for end in ends:
            laying.wire(before, end, outlet.colour)
            before = end


def _taken(laying: Laying, coil: Part, free: list[Part]) -> list[tuple[TerminalRef, TerminalRef]]:
    """Return way in and way out for each coil, and take their throwers out of the free ones."""
    free.sort(key=lambda p: round(math.dist((p.x_mm, p.y_mm), (coil.x_mm, coil.y_mm)), 3))
    both = next((p for p in free if "11" in _names(laying, p)), None)
    buttons = [p for p in free if "13" in _names(laying, p)][:2]
    if both is not None and (len(buttons) < 2 or free.index(both) < free.index(buttons[1])):
        free.remove(both)
        common = TerminalRef(both.id, "11")
        return [(common, TerminalRef(both.id, out)) for out in ("14", "12")]
    if len(buttons) < 2:
        raise EditRefused(NEED.format(name=coil.designation))
    for button in buttons:
        free.remove(button)
    buttons.sort(key=lambda p: (p.x_mm, p.y_mm))  # the left or upper one throws it to normal
    return [(TerminalRef(b.id, "13"), TerminalRef(b.id, "14")) for b in buttons]


def _names(laying: Laying, part: Part) -> set[str]:
    return {t.name for t in laying.kinds[part.kind].terminals}
