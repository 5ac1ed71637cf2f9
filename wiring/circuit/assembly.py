"""The whole plan as branch arrays: every wire and every part's branches between numbered nodes."""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.compiled import CompiledPart, compiled_part, wire_ohms
from wiring.circuit.figures import Problem
from wiring.circuit.joints import Joints
from wiring.circuit.linear import Floats, Ints
from wiring.plan.designations import part_label
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

_PAD = {n: (0.0,) * (WIDTH - n) for n in range(WIDTH + 1)}


class Assembly(NamedTuple):
    """Branch arrays of a plan in one set of positions; wires come first, then the parts."""

    plan: Plan
    parts: Mapping[PartId, CompiledPart]
    spans: Mapping[PartId, range]  # each part's branches
    wires: Mapping[WireId, int]  # each wire's branch
    nodes: Mapping[TerminalRef, int]
    node_count: int
    laws: Ints
    a: Ints
    b: Ints
    values: Floats
    roles: tuple[str, ...]
    owners: tuple[str, ...]  # wire or part of each branch
    sources: Ints
    alternating: NDArray[np.bool_]
    troubles: tuple[Problem, ...]


def assemble(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Assembly:
    """Return the plan's branch arrays; what cannot be calculated is left out and named in `troubles`."""
    parts, troubles = _compiled_parts(plan, kinds, positions)
    nodes, node_count = _numbered(plan, parts)
    rows: list[tuple[float, ...]] = []
    laws: list[int] = []
    a: list[int] = []
    b: list[int] = []
    roles: list[str] = []
    owners: list[str] = []
    wires: dict[WireId, int] = {}
    resistor = LAW_NUMBER["resistor"]
    for wire in plan.wires.values():
        try:
            ohms = wire_ohms(plan, kinds, wire)
        except ValueError as error:
            troubles.append(Problem("not solved", (), (wire.id,), f"Wire -{wire.label} is left out: {error}"))
            continue
        wires[wire.id] = len(rows)
        rows.append((ohms, *_PAD[1]))
        laws.append(resistor)
        a.append(nodes[wire.start])
        b.append(nodes[wire.end])
        roles.append("wire")
        owners.append(wire.id)
    spans: dict[PartId, range] = {}
    for part_id, compiled in parts.items():
        first = len(rows)
        for branch in compiled.piece.branches:
            rows.append(branch.values + _PAD[len(branch.values)])
            laws.append(LAW_NUMBER[branch.law])
            a.append(nodes[TerminalRef(part_id, branch.a)])
            b.append(nodes[TerminalRef(part_id, branch.b)])
            roles.append(branch.role)
            owners.append(part_id)
        spans[part_id] = range(first, len(rows))
    law_array = np.array(laws, dtype=np.intp)
    return Assembly(
        plan, parts, spans, wires, nodes, node_count, law_array,
        np.array(a, dtype=np.intp), np.array(b, dtype=np.intp),
        np.array(rows, dtype=np.float64).reshape(len(rows), WIDTH), tuple(roles), tuple(owners),
        np.flatnonzero(law_array == LAW_NUMBER["source"]),
        np.array([role == "alternating" for role in roles], dtype=np.bool_), tuple(troubles),
    )  # fmt: skip


def _compiled_parts(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions
) -> tuple[dict[PartId, CompiledPart], list[Problem]]:
    parts: dict[PartId, CompiledPart] = {}
    troubles: list[Problem] = []
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None:
            words = (
                f"{part_label(plan, part.id)} is left out: its kind “{part.kind}” is not in the catalogue."
            )
            troubles.append(Problem("not solved", (part.id,), (), words))
            continue
        compiled = parts[part.id] = compiled_part(part, kind, positions.get(part.id, ""))
        if compiled.trouble:
            words = f"{part_label(plan, part.id)} is left out: {compiled.trouble}"
            troubles.append(Problem("not solved", (part.id,), (), words))
    return parts, troubles


def _numbered(plan: Plan, parts: Mapping[PartId, CompiledPart]) -> tuple[dict[TerminalRef, int], int]:
    """Number the nodes; terminals a part ties together share one."""
    numbers: dict[TerminalRef, int] = {}
    ties: Joints[int] = Joints()
    tied = False
    for part_id, compiled in parts.items():
        for terminal in compiled.kind.terminals:
            numbers[TerminalRef(part_id, terminal.name)] = len(numbers)
        for one, other in compiled.piece.ties:
            ties.join(numbers[TerminalRef(part_id, one)], numbers[TerminalRef(part_id, other)])
            tied = True
    for wire in plan.wires.values():
        for ref in (wire.start, wire.end):
            numbers.setdefault(ref, len(numbers))
    if tied:
        numbers = {ref: ties.root(number) for ref, number in numbers.items()}
    return numbers, len(numbers)
