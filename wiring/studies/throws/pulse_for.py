"""The pulse a coil of a plan gets when its button is pressed.

The wiring is solved twice, with the source at its full volts and at half of them: two points make the line
between the source's volts and the coil's current, its slope the ohms of the loop and its foot what diodes
take. Coils that draw at the same press share the pulse. Left out: the capacitor's own resistance (some
hundredths of an ohm), the coil's inductance growing as the iron moves in, and its copper growing warm.
"""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.altered import Branches, as_source, at_rest
from wiring.circuit.figures import Figures
from wiring.plan.designations import part_label
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions, in_use
from wiring.studies.joints import STIFF, Joints, Link, ends, joints_of
from wiring.studies.settings import number
from wiring.studies.throws.coil import DIODE_V, Coil, Store
from wiring.studies.throws.discharge import discharge
from wiring.studies.throws.from_supply import from_supply
from wiring.studies.throws.pulse import Pulse
from wiring.studies.throws.trace import COIL_ENDS, Trace, sources_of, trace

DRAWS = 0.3  # of what a coil would take straight from the source: less is a stray way, not a throw
LEAST_V = 0.5  # a source with less is not fed
DIODE_SHOWS_V = 0.2
LEAST_S, LEAST_FARAD, LEAST_CHARGE_OHM = 1e-3, 1e-6, 0.1  # whatever a file says

CoilEnd = tuple[PartId, str]


class Rest(NamedTuple):
    """A source with no coil on it: its volts (RMS on AC), its ohms, and the amperes it has left for coils."""

    full_v: float
    ohms: float = 0.0
    limit_a: float = np.inf
    alternating: bool = False


class PulseAnswer(NamedTuple):
    """What one press does, or why nothing can be said; `why` is a plain sentence, empty when all is well."""

    motor: PartId
    end: str
    source: PartId | None = None
    is_unit: bool = False
    presses: Mapping[PartId, str] = {}
    wires: tuple[WireId, ...] = ()
    coils: tuple[Coil, ...] = ()  # the motor's own first
    together: tuple[CoilEnd, ...] = ()  # the others that the same press throws
    store: Store | None = None
    on_s: float = 0.0
    pulse: Pulse | None = None
    alternating: bool = False  # volts and amperes of the pulse are RMS
    why: str = ""


def pulse_for(
    plan: Plan,
    kinds: Mapping[str, Kind],
    motor: PartId,
    end: str,
    positions: Positions | None = None,
    on_s: float | None = None,
) -> PulseAnswer:
    """Return the pulse that coil "N" or "R" of a twin-coil motor gets; KeyError if there is none.

    Positions left out are those of a session with every button let go. The button is held for `on_s` seconds,
    the coil's own pulse length where none is given.
    """
    if kinds[plan.parts[motor].kind].behaviour != "twin_coil" or end not in COIL_ENDS:
        raise KeyError(end)
    stands = released(plan, kinds, {**in_use(plan, kinds), **(positions or {})})
    rest = at_rest(plan, kinds, stands)
    stands = {**stands, **rest.positions}
    joints = joints_of(plan, kinds, stands)
    reaches = sources_of(plan, kinds, joints, rest.wire_ohms())
    way = trace(plan, kinds, stands, reaches, motor, end)
    if way is None:
        words = f"No button or switch puts {part_label(plan, motor)}:{end} on a supply or a discharge unit."
        return PulseAnswer(motor, end, why=words)
    if way.is_unit:
        volts = rest.volts(way.source)
        source = of_unit(plan, kinds, way.source, volts[0] if volts else 0.0, rest.alternating(way.source))
    else:
        source = Rest(*rest.source(way.source), rest.alternating(way.source))
    return answer(plan, kinds, stands, joints, source, way, on_s)


def of_unit(plan: Plan, kinds: Mapping[str, Kind], unit: PartId, stored_v: float, alternating: bool) -> Rest:
    """Return a discharge unit at rest, from the volts its capacitor reads; on AC it fills to the peaks."""
    part = plan.parts[unit]
    stored_v *= float(np.sqrt(2.0)) if alternating else 1.0
    open_v = number(part, kinds[part.kind], "open_v")
    return Rest(open_v if open_v > 0 and stored_v >= LEAST_V else stored_v, alternating=alternating)


def unit_in(plan: Plan, kinds: Mapping[str, Kind], figures: Figures, unit: PartId) -> Rest:
    """Return a discharge unit at rest, from figures solved with every button let go."""
    figure = figures.parts.get(unit)
    return of_unit(plan, kinds, unit, figure.volts_v if figure else 0.0, unit in figures.alternating)


def answer(
    plan: Plan,
    kinds: Mapping[str, Kind],
    stands: Positions,
    joints: Joints,
    rest: Rest,
    way: Trace,
    on_s: float | None = None,
) -> PulseAnswer:
    """Return the pulse along a way already traced, from its source at rest."""
    plain = PulseAnswer(
        way.motor, way.end, way.source, way.is_unit, way.presses, way.wires, alternating=rest.alternating
    )
    source, label = plan.parts[way.source], part_label(plan, way.source)
    if not rest.full_v >= LEAST_V:
        return plain._replace(why=f"{label} gives no volts as the switches stand, so there is no pulse.")
    swing = np.sqrt(2.0) if rest.alternating and not way.is_unit else 1.0
    emfs = (rest.full_v * swing, 0.5 * rest.full_v * swing)
    points = as_source(plan, kinds, {**stands, **way.presses}, way.source, emfs, rest.ohms)
    asked = (way.motor, way.end)
    found = _coils(plan, kinds, joints, points, rest.full_v)
    if asked not in found:
        return plain._replace(
            why=f"Next to no current reaches {part_label(plan, way.motor)}:{way.end} when its button is "
            "pressed; look for a diode the wrong way round."
        )
    coil = found.pop(asked)
    coils = (coil, *found.values())
    on_s = coil.pulse_s if on_s is None else on_s
    plain = plain._replace(coils=coils, together=tuple(found), on_s=on_s)
    if not way.is_unit:
        return plain._replace(pulse=from_supply(rest.full_v, rest.limit_a, coils, on_s))
    kind = kinds[source.kind]
    farads = max(number(source, kind, "capacitance"), LEAST_FARAD)
    store = Store(farads, rest.full_v, max(number(source, kind, "charge_ohm"), LEAST_CHARGE_OHM))
    return plain._replace(store=store, pulse=discharge(store, coils, on_s))


def released(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> dict[PartId, str]:
    """Return the positions with every button and spring switch let go: in a lasting position of its kind."""
    stands = dict(positions)
    for part_id, name in positions.items():
        kind = kinds.get(plan.parts[part_id].kind) if part_id in plan.parts else None
        lasting = [p.name for p in kind.positions if not p.momentary] if kind else []
        if lasting and name not in lasting:
            stands[part_id] = kind.in_use if kind and kind.in_use in lasting else lasting[0]
    return stands


def _coils(
    plan: Plan, kinds: Mapping[str, Kind], joints: Joints, points: tuple[Branches, ...], full_v: float
) -> dict[CoilEnd, Coil]:
    found: dict[CoilEnd, Coil] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None or kind.behaviour != "twin_coil":
            continue
        ohms = max(number(part, kind, "coil_ohm"), 1e-3)
        amps = [np.abs(point.amps(part.id)[: len(COIL_ENDS)]) for point in points]
        if any(len(a) < len(COIL_ENDS) for a in amps):
            continue
        for place, end in enumerate(COIL_ENDS):
            most_a, half_a = float(amps[0][place]), float(amps[1][place])
            if not most_a >= DRAWS * full_v / ohms or most_a <= half_a:
                continue
            slope_ohms = 0.5 * full_v / (most_a - half_a)
            offset_v = max(full_v - most_a * slope_ohms, 0.0)
            found[part.id, end] = Coil(
                ohms,
                max(number(part, kind, "rise"), 0.0),
                max(slope_ohms - ohms, 0.0),
                offset_v,
                offset_v > DIODE_SHOWS_V,
                DIODE_V if _freewheels(plan, kinds, joints, part.id, end) else None,
                max(number(part, kind, "rated_v"), LEAST_V),
                max(number(part, kind, "pulse"), LEAST_S),
            )
    return found


def _freewheels(plan: Plan, kinds: Mapping[str, Kind], joints: Joints, motor: PartId, end: str) -> bool:
    """Whether a diode lies straight across a coil."""
    outer = joints.reach((TerminalRef(motor, end),), STIFF).terminals
    near = {edge.via for ref in outer for edge in joints.edges.get(ref, ()) if edge.link == Link.DIODE}
    if not near:
        return False
    middle = joints.reach((TerminalRef(motor, "C"),), STIFF).terminals
    for via in near:
        if kinds[plan.parts[via].kind].behaviour == "diode":
            anode, cathode = ends(via, ("A", "K"))
            if (anode in outer and cathode in middle) or (cathode in outer and anode in middle):
                return True
    return False
