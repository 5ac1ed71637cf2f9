"""Wires that carry more current than is good for them."""

from collections.abc import Iterator, Mapping

import numpy as np

from wiring.circuit.linear import Floats
from wiring.circuit.many_readings import wire_columns
from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import size_to
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, wire_names
from wiring.plan.names import WireId
from wiring.plan.wire import Wire
from wiring.studies.keeping import kept
from wiring.studies.sizing import size_for_current
from wiring.studies.wire_limits import limit_a, warm_a


def find(situation: Situation) -> Iterator[Finding]:
    """Find wires over the published current for a wire in a bundle, one finding for each size."""
    plan, figures = situation.plan, situation.figures
    over: dict[str, list[tuple[float, str]]] = {}
    columns = wire_columns(figures)
    too_much = columns.known & (np.abs(columns.amps) > kept(_limits, plan.wires, columns.rows))
    hot = {wire for wire, row in columns.rows.items() if too_much[row]} if too_much.any() else set()
    for wire in plan.wires.values() if hot else ():
        if wire.id in hot:
            over.setdefault(wire.size, []).append((abs(figures.wires[wire.id].current_a), wire.id))
    for size, found in over.items():
        found.sort(reverse=True)
        most = found[0][0]
        mine = {wire for _, wire in found}
        wires = tuple(wire for wire in plan.wires if wire in mine)
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


def _limits(wires: Mapping[WireId, Wire], rows: Mapping[WireId, int]) -> Floats:
    """Return the limit of each wire that has a row."""
    found = np.full(len(rows), np.inf)
    for wire, row in rows.items():
        if wire in wires:
            found[row] = limit_a(wires[wire].size)
    return found
