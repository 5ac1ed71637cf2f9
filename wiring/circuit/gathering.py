"""Branch readings gathered into the figures of parts, wires, supplies and terminals."""

import math

import numpy as np

from wiring.circuit.assembly import Assembly
from wiring.circuit.behaviours.feeding import rating
from wiring.circuit.compiled import CompiledPart
from wiring.circuit.figures import Figures, PartFigure, SupplyFigure, WireFigure
from wiring.circuit.links import circuits
from wiring.circuit.problems import problems
from wiring.circuit.reading import Reading
from wiring.circuit.states import Settled
from wiring.plan.names import PartId, TerminalRef

NOTHING = PartFigure(0.0, 0.0, 0.0)


def figures_of(settled: Settled) -> Figures:
    """Return the figures of a solved plan; what failed is left out of them."""
    assembly, reading, islands = settled.assembly, settled.reading, settled.islands
    found = circuits(assembly)
    swinging = {int(node) for island in islands.fed if island.alternating for node in island.nodes}
    parts: dict[PartId, PartFigure] = {}
    supplies: dict[PartId, SupplyFigure] = {}
    alternating: set[PartId] = set()
    lost_nodes = {int(n) for i in islands.fed if reading.failed[i.branches].any() for n in i.nodes}
    for part_id, compiled in assembly.parts.items():
        span = assembly.spans[part_id]
        on_ac = bool(swinging) and _on_ac(assembly, compiled, span, swinging)
        if on_ac:
            alternating.add(part_id)
        if compiled.trouble or any(reading.failed[branch] for branch in span):
            continue
        if compiled.behaviour.feeds:
            supplies[part_id] = _supply(settled, part_id, compiled, span[0])
        parts[part_id] = part_figure(assembly, reading, compiled, span, on_ac)
    return Figures(
        parts,
        _wires(assembly, reading),
        supplies,
        {
            ref: float(reading.nodes[node])
            for ref, node in assembly.nodes.items()
            if islands.of_node[node] >= 0 and node not in lost_nodes
        },
        tuple(circuit.parts for circuit in found),
        frozenset(alternating),
        problems(settled, found),
        max(reading.residual_a),
    )


def _on_ac(assembly: Assembly, compiled: CompiledPart, span: range, swinging: set[int]) -> bool:
    if span:
        return any(int(assembly.a[branch]) in swinging for branch in span)
    part = compiled.part.id
    return any(assembly.nodes[TerminalRef(part, t.name)] in swinging for t in compiled.kind.terminals)


def _wires(assembly: Assembly, reading: Reading) -> dict[str, WireFigure]:
    count = len(assembly.wires)
    amps, volts = reading.amps[:count].tolist(), reading.volts[:count].tolist()
    power, ohms = reading.power[:count].tolist(), assembly.values[:count, 0].tolist()
    failed = reading.failed
    return {
        wire_id: WireFigure(amps[n], abs(volts[n]), power[n], ohms[n])
        for wire_id, n in assembly.wires.items()
        if not failed[n]
    }


def part_figure(
    assembly: Assembly, reading: Reading, compiled: CompiledPart, span: range, on_ac: bool
) -> PartFigure:
    """Return one part's figures from its branches' readings."""
    if not span:
        return compiled.behaviour.read(compiled.values, compiled.position, NOTHING)
    telling = [b for b in span if assembly.roles[b] in ("main", "coil", "source", "alternating")] or list(
        span
    )
    branch = max(telling, key=lambda b: (abs(reading.amps[b]), abs(reading.volts[b])))
    volts, amps = float(reading.volts[branch]), float(reading.amps[branch])
    mean = float(reading.mean_amps[branch])
    if not (compiled.behaviour.polarised or compiled.behaviour.feeds):
        volts, amps, mean = abs(volts), abs(amps), abs(mean)
    power = float(np.sum(reading.power[span.start : span.stop]))
    read = compiled.behaviour.read
    if not on_ac:
        return read(compiled.values, compiled.position, PartFigure(volts, amps, power))
    figure = read(compiled.values, compiled.position, PartFigure(volts, mean, power))
    return figure._replace(current_a=amps)


def _supply(settled: Settled, part_id: PartId, compiled: CompiledPart, branch: int) -> SupplyFigure:
    reading = settled.reading
    printed = rating(compiled.kind.behaviour, compiled.values)
    given = float(reading.amps[branch])
    if not settled.assembly.alternating[branch]:
        given = -given
    return SupplyFigure(
        float(reading.volts[branch]), given if not math.isclose(given, 0.0, abs_tol=1e-15) else 0.0,
        -float(reading.power[branch]), printed.rated_a, printed.nominal_v,
        part_id in settled.limited or part_id in settled.shut_off,
    )  # fmt: skip
