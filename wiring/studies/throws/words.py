"""How well a press throws a turnout motor, as one record and one plain sentence."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.altered import at_rest
from wiring.plan.designations import part_label
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions, in_use
from wiring.quantities.wording import worded
from wiring.studies.joints import joints_of
from wiring.studies.throws.pulse_for import PulseAnswer, Rest, answer, of_unit, released
from wiring.studies.throws.trace import COIL_ENDS, Trace, sources_of, trace

WELL = 1.3  # times what is needed: a turnout that grows stiff still throws; common practice, no source


class Throw(NamedTuple):
    """The weaker of a motor's two pulses; where `why` says that there is none, the figures are nought."""

    motor: PartId
    source: PartId | None = None
    margin: float = 0.0  # of what a throw needs: 1 just throws
    peak_a: float = 0.0  # in the coil; RMS on AC
    energy_j: float = 0.0  # heat in the coil
    refill_s: float = 0.0  # of the unit; nought for a supply
    together: int = 1  # coils that the same press throws
    why: str = ""

    @property
    def throws(self) -> bool:
        """Whether both coils throw."""
        return not self.why and self.margin >= 1.0


def throw_of(plan: Plan, kinds: Mapping[str, Kind], positions: Positions, motor: PartId) -> Throw:
    """Return how well a twin-coil motor throws, by its weaker coil; KeyError if there is no such part.

    A coil that no button or switch feeds is left out where the other one is fed.
    """
    stands = released(plan, kinds, {**in_use(plan, kinds), **positions})
    rest = at_rest(plan, kinds, stands)
    stands = {**stands, **rest.positions}
    joints = joints_of(plan, kinds, stands)
    reaches = sources_of(plan, kinds, joints, rest.wire_ohms())

    def source_of(way: Trace) -> Rest:
        alternating = rest.alternating(way.source)
        if way.is_unit:
            volts = rest.volts(way.source)
            return of_unit(plan, kinds, way.source, volts[0] if volts else 0.0, alternating)
        return Rest(*rest.source(way.source), alternating)

    ways = [w for end in COIL_ENDS if (w := trace(plan, kinds, stands, reaches, motor, end)) is not None]
    if not ways:
        label = part_label(plan, motor)
        return Throw(motor, why=f"No button or switch puts {label} on a supply or a discharge unit.")
    found = [_told(answer(plan, kinds, stands, joints, source_of(way), way)) for way in ways]
    return min(found, key=lambda throw: (not throw.why, throw.margin))


def _told(found: PulseAnswer) -> Throw:
    if found.pulse is None:
        return Throw(found.motor, found.source, why=found.why)
    pulse = found.pulse
    return Throw(
        found.motor, found.source, pulse.margin, pulse.peak_a, pulse.energy_coil_j, pulse.recharge_s,
        len(found.coils),
    )  # fmt: skip


def throw_words(throw: Throw) -> str:
    """Return one plain sentence: how much of what a throw needs the weaker coil gets."""
    if throw.why:
        return throw.why
    share = f"{throw.margin:.2g} times" if throw.margin >= WELL else f"{100.0 * throw.margin:.0f} % of"
    gets = f"the weaker coil gets {share} what a throw needs, {worded(throw.peak_a, 'current')} at the peak"
    if throw.together > 1:
        gets += f", with {throw.together} coils on one press"
    if throw.margin >= WELL:
        return f"Throws well: {gets}."
    return f"Throws with little in hand: {gets}." if throw.throws else f"Does not throw safely: {gets}."
