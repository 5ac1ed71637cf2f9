"""The whole plan made into branch arrays: every wire and every part's branches between numbered nodes."""

from collections.abc import Mapping
from types import MappingProxyType

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly, Refs
from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.compiled import CompiledPart, Mould, mould_of
from wiring.circuit.figures import Problem
from wiring.circuit.kept import Kept
from wiring.circuit.part_table import FirstTerminals, Spans, part_table
from wiring.circuit.wire_ohms import WireOhms
from wiring.plan.designations import part_label
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

RESISTOR, SOURCE = LAW_NUMBER["resistor"], LAW_NUMBER["source"]


class _Ends:
    """Numbers terminals: those of parts by their place, then loose wire ends as they come."""

    def __init__(self, parts: Mapping[PartId, CompiledPart], first: Mapping[PartId, int], count: int) -> None:
        self._first, self._count = first, count
        self._place: dict[int, dict[str, int]] = {}
        self._of: dict[PartId, dict[str, int]] = {}
        for part_id, compiled in parts.items():
            key = id(compiled.mould)
            if key not in self._place:
                names = compiled.kind.terminals
                self._place[key] = {t.name: number for number, t in enumerate(names)}
            self._of[part_id] = self._place[key]
        self.loose: dict[TerminalRef, int] = {}

    def number(self, ref: TerminalRef) -> int:
        part, terminal = ref
        places = self._of.get(part)
        if places is not None and terminal in places:
            return self._first[part] + places[terminal]
        return self.loose.setdefault(ref, self._count + len(self.loose))


def build(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    moulds: Mapping[PartId, Mould] = MappingProxyType({}),
) -> Assembly:
    """Return the plan's branch arrays; what cannot be calculated is left out and named in `troubles`.

    `moulds` gives some parts other branches than their positions do.
    """
    parts, troubles = _compiled_parts(plan, kinds, positions)
    for part_id, mould in moulds.items():
        parts[part_id] = CompiledPart(plan.parts[part_id], mould)
    wires, ohms = _measured(plan, kinds, troubles)
    table, made = part_table(parts, len(wires))
    first = dict(zip(table.ids, table.first_terminal.tolist(), strict=True))
    ends = _Ends(parts, first, int(table.terminals.sum()))
    wire_ends: list[int] = []
    for wire in plan.wires.values():
        one, other = ends.number(wire.start), ends.number(wire.end)
        if wire.id in wires:
            wire_ends += (one, other)
    loose = int(table.nodes.sum()) + np.arange(len(ends.loose))
    node_of = np.concatenate((made.node_of, loose))
    terminals = np.concatenate((np.array(wire_ends, dtype=np.intp).reshape(-1, 2), made.ends))
    pairs = node_of[terminals]
    size = len(wires) + len(made.laws)
    values = np.zeros((size, WIDTH))
    values[: len(wires), 0] = ohms
    values[len(wires) :] = made.values
    laws = np.concatenate((np.full(len(wires), RESISTOR, dtype=np.intp), made.laws))
    sources = np.flatnonzero(laws == SOURCE)
    roles = ("wire",) * len(wires) + tuple(made.roles)
    alternating = np.zeros(size, dtype=np.bool_)
    alternating[[s for s in sources.tolist() if roles[s] == "alternating"]] = True
    return Assembly(
        plan, parts, table, FirstTerminals(table), Spans(table), wires, Refs(parts, tuple(ends.loose)),
        node_of, laws, pairs[:, 0].copy(), pairs[:, 1].copy(), values, roles, (*wires, *made.owners),
        sources, alternating, np.concatenate((np.ones(len(wires), dtype=np.bool_), made.conducting)),
        tuple(troubles), Kept(),
    )  # fmt: skip


def _measured(
    plan: Plan, kinds: Mapping[str, Kind], troubles: list[Problem]
) -> tuple[dict[WireId, int], list[float]]:
    """Return the row of each wire and the ohms of the rows; what has none is told among the troubles."""
    measured = WireOhms(plan, kinds, plan.wires.values())
    rows: dict[WireId, int] = {}
    ohms: list[float] = []
    for wire in plan.wires.values():
        try:
            ohms.append(measured.of(wire))
        except ValueError as error:
            troubles.append(Problem("not solved", (), (wire.id,), f"-{wire.label} is left out: {error}"))
            continue
        rows[wire.id] = len(rows)
    return rows, ohms


def _compiled_parts(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions
) -> tuple[dict[PartId, CompiledPart], list[Problem]]:
    parts: dict[PartId, CompiledPart] = {}
    troubles: list[Problem] = []
    plain: dict[str, Mould] = {}  # of kinds without positions, as they come from the shelf
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None:
            words = (
                f"{part_label(plan, part.id)} is left out: its kind “{part.kind}” is not in the catalogue."
            )
            troubles.append(Problem("not solved", (part.id,), (), words))
            continue
        usual = not part.settings and not kind.positions
        mould = plain.get(part.kind) if usual else None
        if mould is None:
            mould = mould_of(part, kind, positions.get(part.id, ""), plan.habits.ambient_c)
            if usual:
                plain[part.kind] = mould
        parts[part.id] = CompiledPart(part, mould)
        if mould.trouble:
            words = f"{part_label(plan, part.id)} is left out: {mould.trouble}"
            troubles.append(Problem("not solved", (part.id,), (), words))
    return parts, troubles
