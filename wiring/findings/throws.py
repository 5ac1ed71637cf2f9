"""Discharge units whose pulse is too weak for the coils of one press, that stay empty or fill slowly."""

from collections.abc import Iterator

from wiring.circuit.behaviours.discharge_unit import DRAINED
from wiring.circuit.figures import Figures
from wiring.circuit.solve import solve
from wiring.findings.act import Act
from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import set_one, size_to
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, part_name, part_names, percent, wire_names
from wiring.plan.designations import part_label
from wiring.plan.names import PartId
from wiring.quantities.wording import worded
from wiring.studies.joints import Joints, joints_of
from wiring.studies.settings import number
from wiring.studies.throws.coil import Store
from wiring.studies.throws.discharge import discharge, recharge_s
from wiring.studies.throws.pulse_for import PulseAnswer, released
from wiring.studies.throws.units import doubtful_presses, farads_that_throw, size_that_throws

SLOW_S = 10.0  # longer than two turnouts are thrown after each other; common practice, no source
TOLD = 1.0  # volts of any use: a slow unit is told by its own values, whatever feeds it


def find(situation: Situation) -> Iterator[Finding]:
    """Find presses that do not throw, one finding a unit and cause, then units kept empty or slow."""
    if not any(True for _ in situation.of("discharge_unit")):
        return
    stands, joints, figures = _at_rest(situation)
    answers = doubtful_presses(situation.plan, situation.kinds, stands, joints, figures)
    weak = [a for a in answers if a.pulse is not None and not a.pulse.throws]
    told: set[tuple[str | None, bool]] = set()
    for answer in weak:
        wires_to_blame = _throws_without_wires(answer)
        if (answer.source, wires_to_blame) not in told:
            told.add((answer.source, wires_to_blame))
            yield (_thin if wires_to_blame else _small)(situation, answer)
    yield from _drained(situation, figures)
    yield from _slow(situation)


def _at_rest(situation: Situation) -> tuple[dict[PartId, str], Joints, Figures]:
    """Return positions with every button let go and relays as they stand then, with joints and figures."""
    plan, kinds, figures = situation.plan, situation.kinds, situation.figures
    stands = released(plan, kinds, situation.positions)
    if stands != dict(situation.positions):
        figures = solve(plan, kinds, stands, figures)
    relays = {p.id: figures.parts[p.id].state for p, _ in situation.of("relay") if p.id in figures.parts}
    if stands == dict(situation.positions):
        return {**stands, **relays}, situation.joints, figures
    stands.update(relays)
    return stands, joints_of(plan, kinds, stands), figures


def _throws_without_wires(answer: PulseAnswer) -> bool:
    if answer.store is None:
        return False
    coils = [coil._replace(loop_ohms=0.0) for coil in answer.coils]
    return discharge(answer.store, coils, answer.on_s).throws


def _motors(answer: PulseAnswer) -> tuple[str, ...]:
    return tuple(dict.fromkeys((answer.motor, *(motor for motor, _ in answer.together))))


def _thin(situation: Situation, answer: PulseAnswer) -> Finding:
    plan, motors = situation.plan, _motors(answer)
    wires = tuple(dict.fromkeys(answer.wires))
    ohms = {wire: figure.ohms for wire, figure in situation.figures.wires.items()}
    size = size_that_throws(plan, ohms, answer)
    assert answer.pulse is not None
    return Finding(
        "throw-weak",
        Rank.WEAK,
        f"The pulse {_from(situation, answer)} gives {part_names(plan, motors)} is "
        f"{percent(answer.pulse.margin)} of what a throw needs, {amps(plan, answer.pulse.peak_a)} at most.",
        "The long thin wire takes too much of it, so the turnout throws half-way or not at all.",
        f"Use {size} for {wire_names(plan, wires)}, or put the unit nearer to the turnout."
        if size
        else "No wire is thick enough: put the unit nearer to the turnout.",
        (*motors, *((answer.source,) if answer.source else ())),
        wires,
        size_to(wires, size),
    )


def _small(situation: Situation, answer: PulseAnswer) -> Finding:
    plan, motors = situation.plan, _motors(answer)
    farads = farads_that_throw(answer)
    assert answer.pulse is not None
    several = len(answer.coils) > 1
    mend = "Feed the unit more volts, within what it bears"
    if farads is not None:
        mend = f"Use a unit of {worded(farads, 'capacitance')}"
    return Finding(
        "unit-too-small",
        Rank.WEAK,
        f"{_from(situation, answer)} stores {percent(answer.pulse.margin)} of what "
        f"{part_names(plan, motors)} {do(len(answer.coils), 'needs', 'need')} "
        f"{'to throw at one press' if several else 'to throw'}.",
        "The turnout throws half-way or not at all.",
        f"{mend}, or give each coil its own button." if several else f"{mend}.",
        (*((answer.source,) if answer.source else ()), *motors),
        act=_unit_of(situation, answer.source, farads),
    )


def _unit_of(situation: Situation, unit: PartId | None, farads: float | None) -> Act | None:
    if unit is None or farads is None:
        return None
    return set_one(situation, unit, worded(farads, "capacitance"), capacitance=farads)


def _from(situation: Situation, answer: PulseAnswer) -> str:
    return part_label(situation.plan, answer.source) if answer.source else "The unit"


def _drained(situation: Situation, figures: Figures) -> Iterator[Finding]:
    plan = situation.plan
    for part, _kind in situation.of("discharge_unit"):
        figure = figures.parts.get(part.id)
        if figure is not None and figure.state == DRAINED:
            yield Finding(
                "unit-drained",
                Rank.WEAK,
                f"{part_name(plan, part.id)} stays empty: its output draws {amps(plan, figure.current_a)} "
                "with no button held.",
                "No turnout on it throws until whatever draws lets go.",
                "Feed each coil through a push button, and nothing else from the output.",
                (part.id,),
            )


def _slow(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
    for part, kind in situation.of("discharge_unit"):
        store = Store(number(part, kind, "capacitance"), TOLD, number(part, kind, "charge_ohm"))
        if store.farads <= 0 or store.charge_ohm <= 0:
            continue
        fills_s = recharge_s(store, 0.0)
        if fills_s > SLOW_S:
            yield Finding(
                "unit-slow",
                Rank.NOTE,
                f"{part_name(plan, part.id)} takes {worded(fills_s, 'time')} to fill again after a throw.",
                "A second turnout thrown before that gets a weak pulse.",
                "Wait that long between throws, or use a unit that charges through less resistance.",
                (part.id,),
            )
