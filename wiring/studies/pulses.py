"""What a turnout coil gets in its pulse: worked out from the wire's ohms, for no session ever rests in it."""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.circuit.many_readings import wire_columns
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.studies.fault_current import fault_current_a
from wiring.studies.joints import LASTING, Joints, Link, ends
from wiring.studies.roles import SOURCE_ENDS
from wiring.studies.settings import number
from wiring.studies.ways import Ways, kept_ways, wires_back

_THROUGH = LASTING | Link.MOMENTARY | Link.DIODE


class Pulse(NamedTuple):
    """The weaker pulse of a motor's two coils."""

    motor: PartId
    supply: PartId
    wires: tuple[WireId, ...]
    current_a: float
    coil_v: float
    wire_ohms: float
    coil_ohms: float
    supply_v: float
    limit_a: float  # the most the supply pushes

    @property
    def share(self) -> float:
        """Share of the supply's volts that the wires take from the coil."""
        return self.current_a * self.wire_ohms / self.supply_v


def pulses_of(plan: Plan, kinds: Mapping[str, Kind], figures: Figures, joints: Joints) -> tuple[Pulse, ...]:
    """Return the weaker pulse of every twin-coil motor that buttons or switches can feed.

    Ohm's law round the loop of supply, wires and coil, with nothing else on the supply; contacts count for
    nothing.
    """
    motors = [p for p in plan.parts.values() if p.kind in kinds and kinds[p.kind].behaviour == "twin_coil"]
    if not motors:
        return ()
    columns = wire_columns(figures)
    costs = np.where(columns.known, columns.ohms, np.inf)
    sources: list[tuple[Part, Kind, Ways, Ways]] = []
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None and kind.behaviour in SOURCE_ENDS and part.id in figures.supplies:
            plus, minus = ends(part.id, SOURCE_ENDS[kind.behaviour])
            sources.append(
                (
                    part,
                    kind,
                    kept_ways(joints, plus, _THROUGH, columns.rows, costs),
                    kept_ways(joints, minus, _THROUGH, columns.rows, costs),
                )
            )
    found: list[Pulse] = []
    for motor in motors:
        each = [
            pulse
            for coil in ("N", "R")
            for source in sources
            if (pulse := _pulse(plan, kinds, figures, motor, coil, *source)) is not None
        ]
        if each:
            found.append(min(each, key=lambda pulse: pulse.coil_v))
    return tuple(found)


def _pulse(
    plan: Plan,
    kinds: Mapping[str, Kind],
    figures: Figures,
    motor: Part,
    coil: str,
    source: Part,
    kind: Kind,
    plus: Ways,
    minus: Ways,
) -> Pulse | None:
    outer, middle = TerminalRef(motor.id, coil), TerminalRef(motor.id, "C")
    for one, other in ((plus, minus), (minus, plus)):
        if outer in one and middle in other:
            wire_ohms = one[outer].cost + other[middle].cost
            wires = (*reversed(wires_back(one, outer)), *wires_back(other, middle))
            coil_ohms = max(number(motor, kinds[motor.kind], "coil_ohm"), 1e-3)
            supply_v = abs(figures.supplies[source.id].volts_v) or figures.supplies[source.id].nominal_v
            limit_a = fault_current_a(source, kind)
            own_ohms = 0.0 if kind.behaviour == "supply_regulated" else supply_v / limit_a
            current_a = supply_v / (own_ohms + wire_ohms + coil_ohms)
            return Pulse(
                motor.id,
                source.id,
                wires,
                current_a,
                current_a * coil_ohms,
                wire_ohms,
                coil_ohms,
                supply_v,
                limit_a,
            )
    return None
