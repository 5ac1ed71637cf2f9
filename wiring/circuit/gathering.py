"""Branch readings gathered into the figures of parts, wires, supplies and terminals."""

import math
from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from wiring.circuit.assembly import Assembly
from wiring.circuit.behaviours.feeding import rating
from wiring.circuit.compiled import CompiledPart
from wiring.circuit.figures import Figures, PartFigure, SupplyFigure, WireFigure
from wiring.circuit.links import circuits
from wiring.circuit.problems import problems
from wiring.circuit.reading import Reading
from wiring.circuit.states import Settled
from wiring.circuit.terminal_volts import TerminalVolts
from wiring.plan.names import PartId, WireId

NOTHING = PartFigure(0.0, 0.0, 0.0)
TELLING = frozenset({"main", "coil", "source", "alternating"})


class Columns(NamedTuple):
    """A reading's branches as plain lists, which are quicker to pick single values from."""

    volts: list[float]
    amps: list[float]
    mean_amps: list[float]
    power: list[float]


def columns(reading: Reading) -> Columns:
    """Return the branch columns of a reading."""
    return Columns(
        reading.volts.tolist(), reading.amps.tolist(), reading.mean_amps.tolist(), reading.power.tolist()
    )


def figures_of(settled: Settled) -> Figures:
    """Return the figures of a solved plan; what failed is left out of them."""
    assembly, reading = settled.assembly, settled.reading
    found, read = circuits(assembly), columns(settled.reading)
    failed = set(reading.failed.nonzero()[0].tolist())
    parts: dict[PartId, PartFigure] = {}
    supplies: dict[PartId, SupplyFigure] = {}
    alternating = _fed_with_ac(settled)
    for part_id, compiled in assembly.parts.items():
        span = assembly.spans[part_id]
        if compiled.trouble or (failed and not failed.isdisjoint(span)):
            continue
        if compiled.behaviour.feeds:
            supplies[part_id] = _supply(settled, part_id, compiled, span[0])
        parts[part_id] = part_figure(assembly, read, compiled, span, part_id in alternating)
    return Figures(
        parts,
        _wires(assembly, read, failed),
        supplies,
        _terminals(settled),
        tuple(circuit.parts for circuit in found),
        alternating,
        problems(settled, found),
        max(reading.residual_a),
    )


def _terminals(settled: Settled) -> TerminalVolts:
    assembly, islands, reading = settled.assembly, settled.islands, settled.reading
    known = islands.of_node >= 0
    if reading.failed.any():
        lost = np.append(np.zeros(len(islands.references), dtype=np.bool_), False)
        lost[islands.of_branch[reading.failed]] = True
        known &= ~lost[islands.of_node]
    return TerminalVolts(assembly.refs, assembly.node_of, reading.nodes, known)


def _fed_with_ac(settled: Settled) -> frozenset[PartId]:
    """Parts with a branch in an alternating island; those without branches count by their terminals."""
    assembly, islands = settled.assembly, settled.islands
    if not islands.alternating.any():
        return frozenset()
    swinging = {int(node) for island in islands.fed if island.alternating for node in island.nodes}
    if not swinging:
        return frozenset()
    found: set[PartId] = set()
    for part_id, compiled in assembly.parts.items():
        begin = assembly.first_terminal[part_id]
        nodes = assembly.node_of[begin : begin + len(compiled.refs)]
        if span := assembly.spans[part_id]:
            nodes = assembly.a[span.start : span.stop]
        if not swinging.isdisjoint(nodes.tolist()):
            found.add(part_id)
    return frozenset(found)


def _wires(assembly: Assembly, read: Columns, failed: set[int]) -> Mapping[WireId, WireFigure]:
    ohms = assembly.values[: len(assembly.wires), 0].tolist()
    return {
        wire_id: WireFigure(read.amps[n], abs(read.volts[n]), read.power[n], ohms[n])
        for wire_id, n in assembly.wires.items()
        if n not in failed
    }


def part_figure(
    assembly: Assembly, read: Columns, compiled: CompiledPart, span: range, on_ac: bool
) -> PartFigure:
    """Return one part's figures from its branches' readings."""
    behaviour = compiled.behaviour
    if not span:
        return behaviour.read(compiled.values, compiled.position, NOTHING)
    branch = span[0]
    if len(span) > 1:
        telling = [b for b in span if assembly.roles[b] in TELLING] or span
        branch = max(telling, key=lambda b: (abs(read.amps[b]), abs(read.volts[b])))
    volts, amps, mean = read.volts[branch], read.amps[branch], read.mean_amps[branch]
    if not (behaviour.polarised or behaviour.feeds):
        volts, amps, mean = abs(volts), abs(amps), abs(mean)
    power = sum(read.power[span.start : span.stop])
    figure = behaviour.read(compiled.values, compiled.position, PartFigure(volts, mean, power))
    return figure._replace(current_a=amps) if on_ac else figure


def _supply(settled: Settled, part_id: PartId, compiled: CompiledPart, branch: int) -> SupplyFigure:
    reading = settled.reading
    printed = rating(compiled.kind.behaviour, compiled.values)
    given = float(reading.amps[branch])
    if not settled.assembly.alternating[branch]:
        given = -given
    limited = part_id in settled.limited or part_id in settled.shut_off
    given = 0.0 if math.isclose(given, 0.0, abs_tol=1e-15) else given
    power_w = -float(reading.power[branch])
    return SupplyFigure(
        float(reading.volts[branch]), given, power_w, printed.rated_a, printed.nominal_v, limited
    )
