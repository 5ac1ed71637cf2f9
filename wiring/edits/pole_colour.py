"""The colour a new wire has by what it is joined to."""

from collections.abc import Iterable, Mapping

from wiring.catalogue.kind import Kind
from wiring.edits.feed_colours import feed_colours
from wiring.edits.poles import poles
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan


def pole_colour(plan: Plan, kinds: Mapping[str, Kind], ends: Iterable[TerminalRef]) -> str:
    """Return the colour its circuit gives a wire with these ends, by the first fed one; "" where none is."""
    known = poles(plan, kinds)
    pole = next((known[end] for end in ends if end in known), None)
    return feed_colours(plan, kinds, pole.source).of(pole) if pole is not None else ""
