"""Which wire size keeps a run's loss in the limit."""

from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.plan.names import WireId
from wiring.plan.plan import Plan
from wiring.standards.conductors import SIZES, ohm_per_m
from wiring.standards.current_limits import current_limit_a
from wiring.standards.wire_size import read_size
from wiring.studies.load_growth import growth
from wiring.studies.pulses import Pulse
from wiring.studies.runs import Run


def offered_by_thickness() -> tuple[str, ...]:
    """Return the offered sizes, thinnest first."""
    return tuple(sorted(SIZES, key=lambda size: read_size(size).area_mm2))


def size_for_run(
    plan: Plan, kinds: Mapping[str, Kind], figures: Figures, run: Run, wires: Sequence[WireId]
) -> str | None:
    """Return the thinnest offered size that on those wires brings the loss into the habit's limit.

    Sizes are first sought in the family (AWG or mm²) of the plan's usual wire. A load that gets more volts
    draws more, and all loads of the run are taken to do so as this one does. None when none is thick enough.
    """
    if run.share <= 0:
        return None
    supply_v = run.drop_v / run.share
    limit_v = plan.habits.drop_limit * supply_v
    part = plan.parts[run.load]
    more = growth(part, kinds[part.kind], figures.parts[run.load], supply_v - limit_v)
    changed, fixed_v = frozenset(wires), 0.0
    lost: dict[tuple[str, bool], float] = {}  # by what the wires are now: a run has many of the same
    for w in run.wires:
        wire, drop_v = plan.wires[w], abs(figures.wires[w].drop_v)
        if w in changed:
            lost[wire.size, wire.solid] = lost.get((wire.size, wire.solid), 0.0) + drop_v
        else:
            fixed_v += drop_v
    for size in _in_order(plan):
        changed_v = sum(drop_v * _ratio(plan, *now, size) for now, drop_v in lost.items())
        if more * (fixed_v + changed_v) <= limit_v:
            return size
    return None


def size_for_current(plan: Plan, current_a: float) -> str | None:
    """Return the thinnest offered size that may carry a current; None when none may."""
    return next((size for size in _in_order(plan) if current_limit_a(size) >= current_a), None)


def size_for_pulse(plan: Plan, figures: Figures, pulse: Pulse, most: float) -> str | None:
    """Return the thinnest offered size with which a pulse loses no more than that share; None if none."""
    own_ohms = pulse.supply_v / pulse.current_a - pulse.wire_ohms - pulse.coil_ohms
    for size in _in_order(plan):
        ohms = sum(
            figures.wires[w].ohms * _ratio(plan, plan.wires[w].size, plan.wires[w].solid, size)
            for w in pulse.wires
        )
        if ohms <= most * (ohms + own_ohms + pulse.coil_ohms):
            return size
    return None


def _in_order(plan: Plan) -> list[str]:
    """Return the offered sizes, those of the family the plan's usual wire is of first."""
    awg = read_size(plan.habits.wire_size).is_awg
    return sorted(offered_by_thickness(), key=lambda size: read_size(size).is_awg is not awg)


def _ratio(plan: Plan, was: str, solid: bool, size: str) -> float:
    """Return the resistance of a wire in a size over what it has; at most 1."""
    celsius = plan.habits.ambient_c
    now, then = (ohm_per_m(one, solid=solid, celsius=celsius) for one in (size, was))
    return min(now / then, 1.0)
