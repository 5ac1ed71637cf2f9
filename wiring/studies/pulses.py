"""What a turnout coil gets in its pulse: worked out from the wire's ohms, for no session ever rests in it."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.many_readings import wire_columns
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.studies.alike import parts_but_for_place
from wiring.studies.best_ways import WireCosts, kept_ways
from wiring.studies.fault_current import fault_current_a
from wiring.studies.joints import LASTING, Joints, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.roles import SOURCE_ENDS
from wiring.studies.settings import number
from wiring.studies.ways import Ways, wires_back

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


class _Coils(NamedTuple):
    """Motors with the ohms of their coils, and each coil's outer end: N, R, then the next motor's."""

    motors: Sequence[PartId]
    ohms: Floats  # of each motor
    outer: Sequence[TerminalRef]
    middle: Sequence[TerminalRef]


class _Loop(NamedTuple):
    """A source, the ways out and home, the volts it has and what its ohms and limit are."""

    part: PartId
    ways: tuple[Ways, Ways]
    volts: float
    own_ohms: float
    limit_a: float


def pulses_of(
    plan: Plan, kinds: Mapping[str, Kind], figures: Figures, joints: Joints, above: float = -1.0
) -> tuple[Pulse, ...]:
    """Return the weaker pulse of every twin-coil motor that buttons or switches can feed.

    Ohm's law round the loop of supply, wires and coil, with nothing else on the supply; contacts count for
    nothing. Only those that lose more than the share `above`, or want more than the supply's limit.
    """
    parts = parts_but_for_place(plan.parts)
    coils = kept(_coils, parts, kinds)
    loops = _loops(parts, kinds, figures, joints) if coils.motors else []
    if not loops:
        return ()
    places = kept(_coil_places, coils, joints.net(_THROUGH).number)
    wire_ohms, turned = kept(_loop_ohms, places, *(way for loop in loops for way in loop.ways))
    volts, own_ohms = (
        np.array(column) for column in zip(*((p.volts, p.own_ohms) for p in loops), strict=True)
    )
    coil_ohms = np.repeat(coils.ohms, 2)[:, None]
    current = volts / (own_ohms + wire_ohms + coil_ohms)
    coil_v = np.where(np.isfinite(wire_ohms), current * coil_ohms, np.inf).reshape(len(coils.motors), -1)
    weakest = coil_v.argmin(axis=1)
    row, of = 2 * np.arange(len(weakest)) + weakest // len(loops), weakest % len(loops)
    amps, ohms = current[row, of], wire_ohms[row, of]
    limits_a, there = np.array([loop.limit_a for loop in loops])[of], np.isfinite(ohms)
    tells = there & ((amps * np.where(there, ohms, 0.0) > above * volts[of]) | (amps > limits_a))
    found: list[Pulse] = []
    for motor in np.flatnonzero(tells).tolist():
        loop, coil = loops[of[motor]], row[motor]
        one, other = loop.ways[::-1] if turned[coil, of[motor]] else loop.ways
        wires = (*reversed(wires_back(one, coils.outer[coil])), *wires_back(other, coils.middle[coil]))
        weakest_v, own = float(coil_v[motor, weakest[motor]]), float(coils.ohms[motor])
        figures_of = float(amps[motor]), weakest_v, float(ohms[motor]), own
        found.append(Pulse(coils.motors[motor], loop.part, wires, *figures_of, loop.volts, loop.limit_a))
    return tuple(found)


def _coils(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> _Coils:
    motors = [p for p in parts.values() if p.kind in kinds and kinds[p.kind].behaviour == "twin_coil"]
    ohms = np.array([max(number(p, kinds[p.kind], "coil_ohm"), 1e-3) for p in motors])
    outer = [TerminalRef(p.id, coil) for p in motors for coil in ("N", "R")]
    return _Coils([p.id for p in motors], ohms, outer, [TerminalRef(ref.part, "C") for ref in outer])


def _coil_places(coils: _Coils, number_of: Mapping[TerminalRef, int]) -> tuple[Ints, Ints]:
    outer, middle = (
        np.array([number_of.get(ref, -1) for ref in refs], dtype=np.intp)
        for refs in (coils.outer, coils.middle)
    )
    return outer, middle


def _loop_ohms(places: tuple[Ints, Ints], *ways: Ways) -> tuple[Floats, NDArray[np.bool_]]:
    """Return the ohms of wire round each coil by each pair of ways, and whether plus ends in its middle."""
    sides = [[way.at(side)[1] for side in places] for way in ways]
    straight, round_about = (
        np.stack(
            [plus[n] + minus[1 - n] for plus, minus in zip(sides[::2], sides[1::2], strict=True)], axis=1
        )
        for n in (0, 1)
    )
    turned = ~np.isfinite(straight)
    return np.where(turned, round_about, straight), turned


def _loops(
    parts: Mapping[PartId, Part], kinds: Mapping[str, Kind], figures: Figures, joints: Joints
) -> list[_Loop]:
    columns = wire_columns(figures)
    costs = WireCosts(columns.rows, np.where(columns.known, columns.ohms, np.inf))
    found: list[_Loop] = []
    for part, kind, pair in kept(_feeds, parts, kinds):
        figure = figures.supplies.get(part.id)
        if figure is not None and all(ref in joints.edges for ref in pair):
            plus, minus = (kept_ways(joints, ref, _THROUGH, costs) for ref in pair)
            supply_v, limit_a = abs(figure.volts_v) or figure.nominal_v, fault_current_a(part, kind)
            own_ohms = 0.0 if kind.behaviour == "supply_regulated" else supply_v / limit_a
            found.append(_Loop(part.id, (plus, minus), supply_v, own_ohms, limit_a))
    return found


def _feeds(
    parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]
) -> Sequence[tuple[Part, Kind, tuple[TerminalRef, TerminalRef]]]:
    some = [(part, kinds[part.kind]) for part in parts.values() if part.kind in kinds]
    return [(p, k, ends(p.id, SOURCE_ENDS[k.behaviour])) for p, k in some if k.behaviour in SOURCE_ENDS]
