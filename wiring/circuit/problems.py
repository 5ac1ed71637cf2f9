"""What went wrong in a solved plan, in words for its owner."""

from collections import Counter
from collections.abc import Iterable

import numpy as np

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.figures import Problem
from wiring.circuit.linear import Ints
from wiring.circuit.links import Circuits, conductors, short_path
from wiring.circuit.states import Settled
from wiring.circuit.turned_round import turning
from wiring.plan.designations import part_label
from wiring.plan.names import PartId

BACKWARD_V = 0.5
FED_BACK_W = 1e-3
PUSHED = 1.02
NAMED = 4  # parts named in a sentence before it says "and 7 more"
JOINING = frozenset({"switch", "separate", "bus", "pairs", "fuse", "resettable_fuse", "stall_motor", "relay"})


def problems(settled: Settled, found: Circuits) -> tuple[Problem, ...]:
    """Return the problems of a solved plan, the gravest first."""
    assembly = settled.assembly
    shorted = _shorted(settled)
    in_short = frozenset(part for problem in shorted for part in problem.parts)
    return (
        *assembly.troubles,
        *_not_solved(settled),
        *shorted,
        *_loops(settled, in_short),
        *_shut_off(settled, in_short),
        *_buzzing(settled),
        *_backward(settled),
        *_collapsed(settled, in_short | settled.shut_off),
        *_floating(assembly, found),
    )


def named(assembly: Assembly, parts: Iterable[PartId]) -> str:
    """Return "-E1, -E2 and -E3", cut short where there are many."""
    labels = [part_label(assembly.plan, part) for part in parts]
    if len(labels) > NAMED + 1:
        labels = [*labels[:NAMED], f"{len(labels) - NAMED} more"]
    return listed(labels)


def listed(words: list[str]) -> str:
    """Return "a, b and c"."""
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else "".join(words)


def _not_solved(settled: Settled) -> list[Problem]:
    assembly, found = settled.assembly, list[Problem]()
    if not settled.reading.failed.any():
        return found
    for island in settled.islands.fed:
        if not settled.reading.failed[island.branches].any():
            continue
        owners = dict.fromkeys(assembly.owners[branch] for branch in island.branches)
        parts = tuple(o for o in owners if o in assembly.parts)
        wires = tuple(o for o in owners if o in assembly.wires)
        words = (
            f"No steady state was found for the circuit of {named(assembly, parts)}; its figures are "
            "left out. Take a part of it away to see which one is at fault."
        )
        found.append(Problem("not solved", parts, wires, words))
    return found


def _shorted(settled: Settled) -> list[Problem]:
    assembly = settled.assembly
    found: list[Problem] = []
    if not len(assembly.sources):
        return found
    conductor = conductors(assembly)
    for source in assembly.sources:
        plus, minus = int(assembly.a[source]), int(assembly.b[source])
        if conductor[plus] != conductor[minus]:
            continue
        supply = assembly.owners[source]
        path = short_path(assembly, plus, minus, {})
        wires = tuple(assembly.owners[b] for b in path if assembly.roles[b] == "wire")
        through = tuple(dict.fromkeys(assembly.owners[b] for b in path if assembly.roles[b] != "wire"))
        by = [f"-{assembly.plan.wires[w].label}" for w in wires[:NAMED]]
        by += [f"{len(wires) - NAMED} more"] if len(wires) > NAMED else []
        way = f"wire{'s' * (len(by) > 1)} {listed(by)}" if by else "its own terminals"
        more = f" and {named(assembly, through)}" if through else ""
        remedy = "Take one of these wires off." if wires else "Look at the part again."
        words = (
            f"{part_label(assembly.plan, supply)} is shorted through {way}{more}: nothing lies between its "
            f"two terminals but conductors. {remedy}"
        )
        found.append(Problem("shorted", (supply, *through), wires, words))
    return found


def _loops(settled: Settled, in_short: frozenset[PartId]) -> list[Problem]:
    """Supplies that push current into one another, or against one another round a loop of conductors."""
    assembly, reading = settled.assembly, settled.reading
    joined = {int(source): float(assembly.values[source, 1]) for source in assembly.sources}
    found = []
    for source in assembly.sources:
        supply = assembly.owners[source]
        if supply in in_short or supply in settled.shut_off or reading.failed[source]:
            continue
        emf = assembly.values[source, 0]
        swing = emf / np.sqrt(2.0) if assembly.alternating[source] else emf
        fed_back = reading.power[source] > FED_BACK_W
        pushed = reading.volts[source] > PUSHED * swing + 0.05
        against = supply in settled.limited and reading.volts[source] < 0.5 * swing
        if not (fed_back or pushed or against):
            continue
        others = {other: ohms for other, ohms in joined.items() if other != source}
        path = short_path(assembly, int(assembly.a[source]), int(assembly.b[source]), others)
        partners = tuple(dict.fromkeys(assembly.owners[b] for b in path if b in others))
        if against and not partners:
            continue
        wires = tuple(assembly.owners[b] for b in path if assembly.roles[b] == "wire")
        by = named(assembly, partners) if partners else "another supply of its circuit"
        does = "works against" if against and not fed_back and not pushed else "is fed backwards by"
        words = f"{part_label(assembly.plan, supply)} {does} {by}. Give each its own circuit."
        found.append(Problem("loop", (supply, *partners), wires, words))
    return found


def _shut_off(settled: Settled, in_short: frozenset[PartId]) -> list[Problem]:
    label = {supply: part_label(settled.assembly.plan, supply) for supply in settled.shut_off - in_short}
    return [
        Problem(
            "over limit", (s,), (), f"{label[s]} has shut itself off: more was asked of it than it gives."
        )
        for s in sorted(label)
    ]


def _buzzing(settled: Settled) -> list[Problem]:
    return [
        Problem(
            "buzzing", (relay,), (),
            f"{part_label(settled.assembly.plan, relay)} buzzes: when it pulls in, its own contacts take its "
            "coil's current away. Feed the coil ahead of its contacts.",
        )
        for relay in sorted(settled.buzzing)
    ]  # fmt: skip


def _backward(settled: Settled) -> list[Problem]:
    assembly, reading = settled.assembly, settled.reading
    table = assembly.table
    polarised = np.flatnonzero(table.polarised & (table.branches > 0) & ~table.left_out)
    wrong = polarised[reading.volts[table.first_branch[polarised]] < -BACKWARD_V]
    if not len(wrong):
        return []
    conductor = conductors(assembly)

    def ends(rows: Ints) -> list[tuple[int, int]]:
        branches = table.first_branch[rows]
        one, other = conductor[assembly.a[branches]].tolist(), conductor[assembly.b[branches]].tolist()
        return list(zip(one, other, strict=True))

    ways = Counter(ends(polarised))
    motors = np.array([c.mould.kind.behaviour == "stall_motor" for c in assembly.parts.values()])
    thrown = set(ends(np.flatnonzero(motors & (table.branches > 0))))
    can_turn = turning(assembly)
    found = []
    for row, (plus, minus) in zip(wrong.tolist(), ends(wrong), strict=True):
        part_id = table.ids[row]
        paired = ways[minus, plus] == ways[plus, minus]
        label = part_label(assembly.plan, part_id)
        terminals = assembly.parts[part_id].kind.terminals
        first, second = (next(t.name for t in terminals if t.mark == mark) for mark in "+-")
        if not can_turn(part_id, first, second):
            words = f"{label} is the wrong way round and takes no current: swap its two wires."
            found.append(Problem("backward", (part_id,), (), words))
        # What shows how a motor stands lights in turn: as many one way as the other, or across the motor.
        elif not paired and thrown.isdisjoint({(plus, minus), (minus, plus)}):
            words = f"{label} is the wrong way round as the switches are, and takes no current."
            found.append(Problem("turned", (part_id,), (), words))
    return found


def _collapsed(settled: Settled, dead: frozenset[PartId]) -> list[Problem]:
    """Modules that starve; where a supply is dead for a reason already told, that is reason enough.

    A converter that breaks down under its load is switched off, so its input reads well: it is told of here.
    """
    assembly, of_node = settled.assembly, settled.islands.of_node
    told = {int(of_node[assembly.a[s]]) for s in assembly.sources if assembly.owners[s] in dead}
    found = [_broken_down(assembly, part) for part in sorted(settled.broken_down)]
    for branch in np.flatnonzero(assembly.laws == LAW_NUMBER["constant_power"]):
        if assembly.owners[branch] in settled.broken_down:
            continue
        volts, least = settled.reading.volts[branch], assembly.values[branch, 1]
        if 0.05 < volts < least and int(of_node[assembly.a[branch]]) not in told:
            part = assembly.owners[branch]
            words = (
                f"{part_label(assembly.plan, part)} gets only {volts:.2g} V and needs {least:.3g} V: it "
                "cannot start. Use thicker or shorter wire, or a stronger supply."
            )
            found.append(Problem("collapsed", (part,), (), words))
    return found


def _broken_down(assembly: Assembly, part: PartId) -> Problem:
    words = (
        f"{part_label(assembly.plan, part)} cannot keep its output up: as soon as it gives what is asked of "
        "it, its own feed falls too low. Use thicker or shorter wire to it, or a stronger supply."
    )
    return Problem("collapsed", (part,), (), words)


def _floating(assembly: Assembly, found: Circuits) -> list[Problem]:
    problems, table = [], assembly.table
    feeding = table.feeds.copy()
    for row in np.flatnonzero(feeding):
        feeding[row] = assembly.parts[table.ids[row]].kind.behaviour != "converter"
    before = np.append(0, np.cumsum(feeding[found.part_rows]))[found.part_ends]
    for place in np.flatnonzero(before[1:] == before[:-1]).tolist():
        circuit = found.circuit(assembly, place)
        if all(assembly.parts[part].kind.behaviour in JOINING for part in circuit.parts):
            continue
        them = named(assembly, circuit.parts)
        words = f"Nothing feeds {them}: no supply is in that circuit, whatever the switches do."
        problems.append(Problem("floating", circuit.parts, circuit.wires, words))
    return problems
