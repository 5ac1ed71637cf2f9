"""Every press that empties a discharge unit of a plan, and which of them are too weak.

A quick estimate sorts out the presses that are strong enough beyond doubt; only the others are worked out,
the weakest first and no more than a few, so that a plan with many turnouts is checked while it is drawn.
"""

from collections.abc import Mapping
from math import exp

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.standards.conductors import ohm_per_m
from wiring.standards.wire_size import read_size
from wiring.studies.joints import Joints
from wiring.studies.settings import number
from wiring.studies.sizing import offered_by_thickness
from wiring.studies.throws.discharge import discharge
from wiring.studies.throws.enough import ENERGY_SHARE, PEAK_SHARE
from wiring.studies.throws.pulse_for import LEAST_S, LEAST_V, PulseAnswer, answer, unit_in
from wiring.studies.throws.trace import COIL_ENDS, Trace, sources_of, trace

DOUBTFUL = 1.3  # times what is needed: a weaker estimate is looked into
MOST_WORKED_OUT = 4
CONTACT_OHM = 0.02
SOLD_FARAD = (2200e-6, 4700e-6, 10_000e-6, 18_000e-6, 22_000e-6, 44_000e-6)  # common practice, no source


def doubtful_presses(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, joints: Joints, figures: Figures
) -> tuple[PulseAnswer, ...]:
    """Return the presses on discharge units that are in doubt, worked out, the weakest first.

    Positions and figures are those with every button let go.
    """
    behaviours = {kinds[p.kind].behaviour for p in plan.parts.values() if p.kind in kinds}
    if not {"discharge_unit", "twin_coil"} <= behaviours:
        return ()
    ohms = {wire: figure.ohms for wire, figure in figures.wires.items()}
    presses = _presses(plan, kinds, positions, joints, ohms)
    rests = {source: unit_in(plan, kinds, figures, source) for source in {t[0].source for t in presses}}
    estimates = [
        (_estimate(plan, kinds, rests[press[0].source].full_v, press, ohms), n)
        for n, press in enumerate(presses)
        if rests[press[0].source].full_v >= LEAST_V
    ]
    weakest = sorted(e for e in estimates if e[0] < DOUBTFUL)[:MOST_WORKED_OUT]
    found = (
        answer(plan, kinds, positions, joints, rests[presses[n][0].source], presses[n][0]) for _, n in weakest
    )
    return tuple(sorted((a for a in found if a.pulse), key=lambda a: a.pulse.margin if a.pulse else 0.0))


def size_that_throws(
    plan: Plan, ohms: Mapping[str, float], weak: PulseAnswer, at_least: float = 1.0
) -> str | None:
    """Return the thinnest offered size that, on the wires of a press, makes every coil throw; None if none.

    Sizes of the family (AWG or mm²) of the plan's usual wire come first.
    """
    if weak.store is None:
        return None
    awg = read_size(plan.habits.wire_size).is_awg
    wires = tuple(dict.fromkeys(weak.wires))
    now = sum(ohms.get(w, 0.0) for w in wires)
    for size in sorted(offered_by_thickness(), key=lambda size: read_size(size).is_awg is not awg):
        then = sum(min(_ratio(plan, w, size), 1.0) * ohms.get(w, 0.0) for w in wires)
        fewer = (now - then) * len(weak.coils)  # a wire that coils share counts for each of them
        coils = [c._replace(loop_ohms=max(c.loop_ohms - fewer, 0.0)) for c in weak.coils]
        if discharge(weak.store, coils, weak.on_s).margin >= at_least:
            return size
    return None


def farads_that_throw(weak: PulseAnswer, at_least: float = 1.0) -> float | None:
    """Return the smallest capacitor sold with which every coil of a press throws; None if none does."""
    if weak.store is None:
        return None
    for farads in SOLD_FARAD:
        if discharge(weak.store._replace(farads=farads), weak.coils, weak.on_s).margin >= at_least:
            return farads
    return None


def _ratio(plan: Plan, wire_id: str, size: str) -> float:
    wire, celsius = plan.wires[wire_id], plan.habits.ambient_c
    now, then = (ohm_per_m(one, solid=wire.solid, celsius=celsius) for one in (size, wire.size))
    return now / then


def _presses(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, joints: Joints, ohms: Mapping[str, float]
) -> list[list[Trace]]:
    """Return the coils of each press on a unit together."""
    reaches = sources_of(plan, kinds, joints, ohms)
    found: dict[tuple[PartId, tuple[tuple[PartId, str], ...]], list[Trace]] = {}
    for part in plan.parts.values():
        if part.kind in kinds and kinds[part.kind].behaviour == "twin_coil":
            for end in COIL_ENDS:
                way = trace(plan, kinds, positions, reaches, part.id, end)
                if way is not None and way.is_unit and way.presses:
                    found.setdefault((way.source, tuple(sorted(way.presses.items()))), []).append(way)
    return list(found.values())


def _estimate(
    plan: Plan, kinds: Mapping[str, Kind], full_v: float, press: list[Trace], ohms: Mapping[str, float]
) -> float:
    """Return the least margin of a press by the plain RC discharge, every coil taken to be as the first."""
    unit, motor = plan.parts[press[0].source], plan.parts[press[0].motor]
    kind = kinds[motor.kind]
    coil_ohm = max(number(motor, kind, "coil_ohm"), 1e-3)
    rated_v = max(number(motor, kind, "rated_v"), LEAST_V)
    pulse_s = max(number(motor, kind, "pulse"), LEAST_S)
    wires = max(sum(ohms.get(w, 0.0) for w in way.wires) for way in press)
    total_ohm = coil_ohm + (wires + CONTACT_OHM) * len(press)
    farads = max(number(unit, kinds[unit.kind], "capacitance"), 1e-6)
    spent = 1.0 - exp(-2.0 * pulse_s * len(press) / (total_ohm * farads))
    energy_j = 0.5 * farads * full_v**2 * spent * coil_ohm / total_ohm / len(press)
    return min(
        full_v / total_ohm / (PEAK_SHARE * rated_v / coil_ohm),
        energy_j / (ENERGY_SHARE * rated_v**2 / coil_ohm * pulse_s),
    )
