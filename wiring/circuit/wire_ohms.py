"""The resistance of each wire of a plan, the joints at its ends included."""

from collections.abc import Collection, Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.branches.resistor import LEAST_OHMS
from wiring.plan.lengths import cut_length_m
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.standards.conductors import ohm_per_m

LONGEST_M = 10_000.0
JOINT, HIGHEST_JOINT_OHM = "joint_ohm", 1000.0
MOST_KEPT = 20_000  # wires of no measured length; then all are forgotten and measured anew


class _KeptWire(NamedTuple):
    wire: Wire  # held, so that its id is not given to another
    around: tuple[object, ...]
    ohms: float


_wires: dict[int, _KeptWire] = {}


class WireOhms:
    """Resistances of wires of a plan, at its room temperature."""

    def __init__(self, plan: Plan, kinds: Mapping[str, Kind], wires: Collection[Wire]) -> None:
        """Take the wires that will be asked for; most of them end on no terminal strip."""
        self._plan, self._kinds = plan, kinds
        strips = {key for key, kind in kinds.items() if kind.behaviour == "separate"}
        parts: Iterable[Part | None] = plan.parts.values()
        if len(wires) < len(plan.parts):
            parts = (plan.parts.get(ref.part) for wire in wires for ref in (wire.start, wire.end))
        self._strips = {part.id for part in parts if part is not None and part.kind in strips}

    def of(self, wire: Wire) -> float:
        """Return a wire's ohms; ValueError for a size nobody knows, a length or joint that means nothing."""
        plan, strips = self._plan, self._strips
        one, other = wire.start.part, wire.end.part
        joints_ohm = self._joints_ohm(wire) if one in strips or other in strips else 0.0
        if wire.length_m is not None:
            return self._ohms(wire, wire.length_m, joints_ohm)
        ends = plan.parts.get(one), plan.parts.get(other)
        around = (plan.habits, *ends, self._kinds, plan.wireways if wire.along else None)
        kept = _wires.get(id(wire))
        if kept is not None and all(was is now for was, now in zip(kept.around, around, strict=True)):
            return kept.ohms
        if len(_wires) >= MOST_KEPT:
            _wires.clear()
        ohms = self._ohms(wire, cut_length_m(plan, self._kinds, wire), joints_ohm)
        _wires[id(wire)] = _KeptWire(wire, around, ohms)
        return ohms

    def _ohms(self, wire: Wire, length_m: float, joints_ohm: float) -> float:
        if not 0.0 <= length_m <= LONGEST_M:
            raise ValueError("its length must lie between 0 and 10 km.")
        own = ohm_per_m(wire.size, solid=wire.solid, celsius=self._plan.habits.ambient_c) * length_m
        return max(own + joints_ohm, LEAST_OHMS)

    def _joints_ohm(self, wire: Wire) -> float:
        """Return the resistance under the screws of the terminal strips a wire ends on."""
        ends = (self._plan.parts[ref.part] for ref in (wire.start, wire.end) if ref.part in self._strips)
        return sum(self._joint_ohm(part) for part in ends)

    def _joint_ohm(self, part: Part) -> float:
        usual = self._kinds[part.kind].values({}).get(JOINT, 0.0)
        ohms = part.settings.get(JOINT, usual)
        if not isinstance(ohms, int | float) or not 0.0 <= ohms <= HIGHEST_JOINT_OHM:
            raise ValueError(f"a joint of -{part.designation} must have between 0 and 1 kΩ.")
        return float(ohms)
