"""Where a load with wires on it already can be fed: at the free end of what hangs on it.

A lit building on a plug, an LED soldered to its resistor, lamps that are joined to each other but to no
supply: all of them are fed where their own wires end.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.load_ends import gate_ends, load_ends
from wiring.edits.poles import Pole, poles
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

FULL = 2  # wires on a terminal; common practice, no source


class Lead(NamedTuple):
    """One end of a load, followed outwards."""

    at: TerminalRef | None  # where a wire from the supply lands; None when it is fed, or lies between others
    net: TerminalRef  # the same for all that hangs together
    over_resistor: bool = False


class _Reached(NamedTuple):
    steps: int
    over_resistor: bool


class Leads:
    """Follows the wires of loads over resistors, plugs, strips, blocks, fuses and switches to their ends."""

    def __init__(self, plan: Plan, kinds: Mapping[str, Kind]) -> None:
        self._plan, self._kinds = plan, kinds

    def of(self, part_id: PartId) -> tuple[Lead, Lead] | None:
        """Return both leads of a load; None for anything else."""
        part = self._plan.parts[part_id]
        ends = load_ends(part, self._kinds[part.kind])
        if ends is None:
            return None
        return self._lead(ends[0], 0), self._lead(ends[1], 1)

    def between(self, part_id: PartId) -> frozenset[PartId]:
        """Return what lies on the way from a load that is to be fed to where its wires end."""
        part = self._plan.parts[part_id]
        ends = load_ends(part, self._kinds[part.kind])
        leads = self.of(part_id)
        if ends is None or leads is None:
            return frozenset()
        open_ends = [ref for ref, lead in zip(ends, leads, strict=True) if lead.at is not None]
        return frozenset(r.part for ref in open_ends if self._wired[ref] for r in self._reached(ref))

    def behind(self, part_id: PartId) -> frozenset[PartId]:
        """Return the loads that hang on a strip or plug that no supply reaches; none on one that is fed."""
        kind = self._kinds[self._plan.parts[part_id].kind]
        found: set[PartId] = set()
        for terminal in kind.terminals:
            reached = self._reached(TerminalRef(part_id, terminal.name))
            if any(ref in self._fed for ref in reached):
                return frozenset()
            found |= {ref.part for ref in reached if self._side(ref) is not None}
        return frozenset(found)

    def _lead(self, ref: TerminalRef, side: int) -> Lead:
        if not self._wired[ref]:
            return Lead(ref, ref)
        reached = self._reached(ref)
        net = min(reached)
        fed = next((r for r in reached if r in self._fed), None)
        in_series = any(self._side(r) not in (None, side) for r in reached)
        if fed is not None or in_series:
            return Lead(None, net, fed is not None and reached[fed].over_resistor)
        landing = self._landing(ref, reached)
        return Lead(landing, net, landing is not None and reached[landing].over_resistor)

    def _landing(self, ref: TerminalRef, reached: Mapping[TerminalRef, _Reached]) -> TerminalRef | None:
        """Return the bare terminal farthest out, else a strip's, the load's own or any with room."""
        bare = [r for r in reached if not self._wired[r]]
        if bare:
            return max(bare, key=lambda r: (reached[r].steps, r))
        roomy = [r for r in reached if len(self._wired[r]) < FULL]
        strips = [r for r in roomy if self._behaviour(r) == "separate"]
        if strips:
            return max(strips, key=lambda r: (reached[r].steps, r))
        return ref if ref in roomy else min(roomy, default=None)

    def _reached(self, start: TerminalRef) -> dict[TerminalRef, _Reached]:
        """Return every terminal joined to one, not through loads and no farther than what is fed."""
        reached, waiting = {start: _Reached(0, False)}, [start]
        for here in waiting:  # grows while it is walked
            if here in self._fed:
                break  # what else hangs there may be the whole layout, and has nothing to say about this end
            steps, over_resistor = reached[here]
            onwards = [(there, over_resistor) for there in self._wired[here]]
            is_resistor = self._behaviour(here) == "resistor"
            onwards += [(there, over_resistor or is_resistor) for there in self._across(here)]
            for there, over in onwards:
                if there not in reached:
                    reached[there] = _Reached(steps + 1, over)
                    waiting.append(there)
        return reached

    def _across(self, ref: TerminalRef) -> Iterator[TerminalRef]:
        part = self._plan.parts[ref.part]
        kind = self._kinds.get(part.kind)
        if kind is None:
            return
        names = [t.name for t in kind.terminals]
        gate = gate_ends(part, kind)
        if gate is not None:
            yield from (r for r in gate if ref in gate and r != ref)
        elif kind.behaviour in ("resistor", "bus"):
            yield from (TerminalRef(ref.part, n) for n in names if n != ref.terminal)
        elif kind.behaviour == "pairs":
            other = f"{ref.terminal[:-1]}{'b' if ref.terminal.endswith('a') else 'a'}"
            yield from (TerminalRef(ref.part, n) for n in names if n == other)

    def _side(self, ref: TerminalRef) -> int | None:
        """Return 0 at the plus of a load, 1 at its minus, None elsewhere."""
        part = self._plan.parts[ref.part]
        kind = self._kinds.get(part.kind)
        ends = load_ends(part, kind) if kind is not None else None
        return ends.index(ref) if ends is not None and ref in ends else None

    def _behaviour(self, ref: TerminalRef) -> str:
        kind = self._kinds.get(self._plan.parts[ref.part].kind)
        return kind.behaviour if kind is not None else ""

    @cached_property
    def _wired(self) -> Mapping[TerminalRef, list[TerminalRef]]:
        return _wired(self._plan.wires)

    @cached_property
    def _fed(self) -> Mapping[TerminalRef, Pole]:
        return poles(self._plan, self._kinds)


_Wired = Mapping[TerminalRef, list[TerminalRef]]
_last: tuple[object, _Wired] | None = None  # of the wires asked about last; replaced whole


def _wired(wires: Mapping[WireId, Wire]) -> _Wired:
    """Return what each terminal is wired to; one act asks for it several times."""
    global _last
    last = _last
    if last is not None and last[0] is wires:
        return last[1]
    joined: dict[TerminalRef, list[TerminalRef]] = defaultdict(list)
    for wire in wires.values():
        joined[wire.start].append(wire.end)
        joined[wire.end].append(wire.start)
    _last = wires, joined
    return joined
