"""Wires that carry more current than is good for them."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import size_to
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, wire_names
from wiring.studies.sizing import size_for_current
from wiring.studies.wire_limits import limit_a, warm_a


def find(situation: Situation) -> Iterator[Finding]:
    """Find wires over the published current for a wire in a bundle, one finding for each size."""
    plan, figures = situation.plan, situation.figures
    over: dict[str, list[tuple[float, str]]] = {}
    for wire in plan.wires.values():
        figure = figures.wires.get(wire.id)
        if figure is not None and abs(figure.current_a) > limit_a(wire.size):
            over.setdefault(wire.size, []).append((abs(figure.current_a), wire.id))
    for size, found in over.items():
        found.sort(reverse=True)
        most = found[0][0]
        wires = tuple(wire for wire in plan.wires if any(wire == over_one for _, over_one in found))
        thicker = size_for_current(plan, most)
        yield Finding(
            "wire-current",
            Rank.DANGER if most > warm_a(size) else Rank.WEAK,
            f"{wire_names(plan, wires)} {do(len(wires), 'carries', 'carry up to')} {amps(plan, most)}; "
            f"{size} should carry no more than {amps(plan, limit_a(size))}.",
            "A wire that carries too much gets hot, and its insulation can melt under the layout."
            if most > warm_a(size)
            else "It gets warm; tied up with other wires it may get too warm.",
            f"Use {thicker} there, or share the current between two runs."
            if thicker
            else "Share the current between several runs, each with its own fuse.",
            (),
            wires,
            size_to(wires, thicker),
        )
