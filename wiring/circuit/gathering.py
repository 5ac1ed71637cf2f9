"""Branch readings gathered into the figures of parts, wires, supplies and terminals."""

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.behaviours.feeding import rating
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.compiled import CompiledPart
from wiring.circuit.figures import Figures, PartFigure, SupplyFigure, WireFigure
from wiring.circuit.linear import Ints
from wiring.circuit.links import circuits
from wiring.circuit.many_readings import PartReadings, WireColumns, WireReadings
from wiring.circuit.problems import problems
from wiring.circuit.reading import Reading
from wiring.circuit.readings import Readings
from wiring.circuit.states import Settled
from wiring.circuit.telling import TELLING, telling_branch
from wiring.circuit.terminal_volts import TerminalVolts
from wiring.plan.names import PartId, WireId

NOTHING = PartFigure(0.0, 0.0, 0.0)
ONE_WAY = 1e-3  # of the RMS current: less is no mean worth telling


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
    found = circuits(assembly)
    alternating = _fed_with_ac(settled)
    left_out = _left_out(settled)
    feeding = np.flatnonzero(assembly.table.feeds)
    return Figures(
        _parts(settled, alternating, left_out),
        _wires(settled),
        Readings(
            dict.fromkeys(assembly.table.ids[n] for n in feeding.tolist()),
            left_out & frozenset(assembly.table.ids[n] for n in feeding.tolist()),
            lambda part: _supply(settled, part, assembly.parts[part], assembly.spans[part][0]),
        ),
        _terminals(settled),
        found.parts,
        alternating,
        problems(settled, found),
        float(reading.residual_a.max(initial=0.0)),
        _rectified(settled, alternating),
    )


def _rectified(settled: Settled, alternating: frozenset[PartId]) -> frozenset[PartId]:
    """Return the parts whose terminals a DC meter reads, though AC feeds their circuit."""
    direct = ~np.isnan(settled.reading.direct[settled.assembly.node_of])
    if not alternating or not direct.any():
        return frozenset()
    assembly, found = settled.assembly, []
    for part in alternating:
        first = assembly.first_terminal[part]
        if direct[first : first + len(assembly.parts[part].kind.terminals)].all():
            found.append(part)
    return frozenset(found)


def _left_out(settled: Settled) -> frozenset[PartId]:
    """Return the parts that are left out, and those with a branch for which no steady state was found."""
    table, failed = settled.assembly.table, settled.reading.failed
    lost = table.left_out
    if failed.any():
        lost = lost | _any(failed, table.first_branch, table.branches)
    return frozenset(table.ids[n] for n in np.flatnonzero(lost))


def _parts(settled: Settled, alternating: frozenset[PartId], left_out: frozenset[PartId]) -> PartReadings:
    assembly, kept = settled.assembly, list[Columns]()

    def figure(part: PartId) -> PartFigure:
        if not kept:
            kept.append(columns(settled.reading))
        compiled, span = assembly.parts[part], assembly.spans[part]
        if not span and part not in alternating:
            open_v = _volts_across(settled, part, compiled)
            return compiled.behaviour.read(compiled.values, compiled.position, PartFigure(open_v, 0.0, 0.0))
        return part_figure(assembly, kept[0], compiled, span, part in alternating)

    swings = np.append(settled.islands.alternating, False)[settled.islands.of_branch]
    return PartReadings(assembly, settled.reading, swings, left_out, figure)


def _volts_across(settled: Settled, part: PartId, compiled: CompiledPart) -> float:
    """Return what a meter reads across an open part of two terminals; 0 where it could not say."""
    if len(compiled.kind.terminals) != 2:
        return 0.0
    assembly, islands = settled.assembly, settled.islands
    first = assembly.first_terminal[part]
    a, b = assembly.node_of[first], assembly.node_of[first + 1]
    if islands.of_node[a] < 0 or islands.of_node[a] != islands.of_node[b]:
        return 0.0
    return abs(float(settled.reading.nodes[a] - settled.reading.nodes[b]))


def _terminals(settled: Settled) -> TerminalVolts:
    assembly, islands, reading = settled.assembly, settled.islands, settled.reading
    known = islands.of_node >= 0
    if reading.failed.any():
        lost = np.append(np.zeros(len(islands.references), dtype=np.bool_), False)
        lost[islands.of_branch[reading.failed]] = True
        known &= ~lost[islands.of_node]
    volts = np.where(np.isnan(reading.direct), reading.nodes, reading.direct)
    return TerminalVolts(assembly.refs, assembly.node_of, volts, known)


def _fed_with_ac(settled: Settled) -> frozenset[PartId]:
    """Parts with a branch in an alternating island; those without branches count by their terminals."""
    assembly, islands = settled.assembly, settled.islands
    if not islands.alternating.any():
        return frozenset()
    table, swings = assembly.table, np.append(islands.alternating, False)
    by_branch = _any(swings[islands.of_branch], table.first_branch, table.branches)
    by_terminal = _any(swings[islands.of_node[assembly.node_of]], table.first_terminal, table.terminals)
    return frozenset(
        table.ids[n] for n in np.flatnonzero(np.where(table.branches > 0, by_branch, by_terminal))
    )


def _any(flags: NDArray[np.bool_], first: Ints, count: Ints) -> NDArray[np.bool_]:
    """Return for each stretch of flags whether any is set."""
    before = np.append(0, np.cumsum(flags))
    return np.asarray(before[first + count] > before[first])


def _wires(settled: Settled) -> WireReadings:
    assembly, reading, kept = settled.assembly, settled.reading, list[list[list[float]]]()
    count = len(assembly.wires)
    lost = frozenset[WireId]()
    if reading.failed[:count].any():
        lost = frozenset(wire for wire, n in assembly.wires.items() if reading.failed[n])

    def figure(wire: WireId) -> WireFigure:
        if not kept:
            columns = reading.amps, np.abs(reading.volts), reading.power, assembly.values[:, 0]
            kept.append([column[:count].tolist() for column in columns])
        n, (amps, volts, power, ohms) = assembly.wires[wire], kept[0]
        return WireFigure(amps[n], volts[n], power[n], ohms[n])

    columns = WireColumns(
        assembly.wires,
        reading.amps[:count],
        np.abs(reading.volts[:count]),
        assembly.values[:count, 0],
        ~reading.failed[:count],
    )
    return WireReadings(columns, lost, figure)


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
        branch = telling[telling_branch([read.amps[b] for b in telling], [read.volts[b] for b in telling])]
    volts, amps, mean = read.volts[branch], read.amps[branch], read.mean_amps[branch]
    if not (behaviour.polarised or behaviour.feeds):
        volts, amps, mean = abs(volts), abs(amps), abs(mean)
    power = sum(read.power[span.start : span.stop])
    figure = behaviour.read(compiled.values, compiled.position, PartFigure(volts, mean, power))
    if not on_ac:
        return figure
    return figure._replace(current_a=amps, mean_a=mean if abs(mean) > ONE_WAY * abs(amps) else None)


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
