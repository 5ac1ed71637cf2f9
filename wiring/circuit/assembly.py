"""The whole plan as branch arrays: every wire and every part's branches between numbered nodes."""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.compiled import CompiledPart, compiled_part, wire_ohms
from wiring.circuit.figures import Problem
from wiring.circuit.kept import Kept
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.sets import joined
from wiring.plan.designations import part_label
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

RESISTOR, SOURCE = LAW_NUMBER["resistor"], LAW_NUMBER["source"]
_PAD = (0.0,) * (WIDTH - 1)


class Assembly(NamedTuple):
    """Branch arrays of a plan in one set of positions; wires come first, then the parts."""

    plan: Plan
    parts: Mapping[PartId, CompiledPart]
    first_terminal: Mapping[PartId, int]  # where each part's terminals begin
    spans: Mapping[PartId, range]  # each part's branches
    wires: Mapping[WireId, int]  # each wire's branch
    refs: tuple[TerminalRef, ...]  # all terminals, part after part, then loose wire ends
    node_of: Ints  # of each terminal
    laws: Ints
    a: Ints
    b: Ints
    values: Floats
    roles: tuple[str, ...]
    owners: tuple[str, ...]  # wire or part of each branch
    sources: Ints
    alternating: NDArray[np.bool_]
    troubles: tuple[Problem, ...]
    kept: Kept  # what is worked out from these arrays

    @property
    def node_count(self) -> int:
        """One more than the highest node number."""
        return len(self.refs)


def assemble(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Assembly:
    """Return the plan's branch arrays; what cannot be calculated is left out and named in `troubles`."""
    parts, troubles = _compiled_parts(plan, kinds, positions)
    refs, first_terminal, ties = _terminals(parts)
    place = {ref: number for number, ref in enumerate(refs)}
    ohms: list[tuple[float, ...]] = []
    ends: list[tuple[int, int]] = []
    wires: dict[WireId, int] = {}
    for wire in plan.wires.values():
        for ref in (wire.start, wire.end):
            if ref not in place:
                place[ref] = len(refs)
                refs.append(ref)
        try:
            row = (wire_ohms(plan, kinds, wire), *_PAD)
        except ValueError as error:
            troubles.append(Problem("not solved", (), (wire.id,), f"-{wire.label} is left out: {error}"))
            continue
        wires[wire.id] = len(ends)
        ohms.append(row)
        ends.append((place[wire.start], place[wire.end]))
    laws, rows = [RESISTOR] * len(ends), ohms
    roles, owners = ["wire"] * len(ends), list(wires)
    spans: dict[PartId, range] = {}
    for part_id, compiled in parts.items():
        begin, size = first_terminal[part_id], len(compiled.laws)
        spans[part_id] = range(len(laws), len(laws) + size)
        if size:
            laws += compiled.laws
            rows += compiled.rows
            roles += compiled.roles
            owners += [part_id] * size
            ends += [(begin + one, begin + other) for one, other in compiled.ends]
    node_of = joined(ties, len(refs)) if ties else np.arange(len(refs))
    law_array = np.array(laws, dtype=np.intp)
    pairs = node_of[np.array(ends, dtype=np.intp).reshape(-1, 2)]
    sources = np.flatnonzero(law_array == SOURCE)
    alternating = np.zeros(len(laws), dtype=np.bool_)
    alternating[[s for s in sources if roles[s] == "alternating"]] = True
    return Assembly(
        plan, parts, first_terminal, spans, wires, tuple(refs), node_of, law_array,
        pairs[:, 0].copy(), pairs[:, 1].copy(), np.array(rows, dtype=np.float64).reshape(-1, WIDTH),
        tuple(roles), tuple(owners), sources, alternating, tuple(troubles), Kept(),
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


def _terminals(
    parts: Mapping[PartId, CompiledPart],
) -> tuple[list[TerminalRef], dict[PartId, int], list[tuple[int, int]]]:
    """Return all terminals in a row, where each part's begin, and which are one node."""
    refs: list[TerminalRef] = []
    first: dict[PartId, int] = {}
    ties: list[tuple[int, int]] = []
    for part_id, compiled in parts.items():
        begin = first[part_id] = len(refs)
        refs += compiled.refs
        ties += [(begin + one, begin + other) for one, other in compiled.ties]
    return refs, first, ties
