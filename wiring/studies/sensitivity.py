"""What each assumption changes in a battery's forecast: one at a time, everything else as it is."""

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any, NamedTuple

import msgspec

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.plan.scene import UsePattern
from wiring.studies.battery_part import MOST_FADED, BatteryPart, battery_part
from wiring.studies.battery_partners import with_partners
from wiring.studies.cells.discharge import Run
from wiring.studies.forecast import Question, left_of, question_of, run_of
from wiring.studies.uses import Use, timing

WARMER_K = 10.0
LONGER = 1.25
DIMMER = 10.0  # of CIE 1976 lightness
MORE_LOAD = 1.1
HARDER = 1.5  # times the inner resistance
MORE_CHARGES = 200  # of a rechargeable; one charge fades it by next to nothing, so the forecast itself hardly
# changes with it


class Effect(NamedTuple):
    """One assumption made otherwise: what comes out, and by how much it lasts longer (share of the days)."""

    assumption: str
    sessions: float
    days: float
    change: float


def sensitivities(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    battery: PartId,
    today: date | None = None,
) -> tuple[Effect, ...]:
    """Return the forecast as it is, then with each assumption made otherwise, largest change first.

    Empty where there is no forecast: an unknown type, or nothing that draws.
    """
    part = battery_part(plan, kinds, battery)
    if part is None:
        return ()
    part = with_partners(plan, kinds, positions, part)
    asked = question_of(plan, kinds, positions, part)
    if asked.demands.lit((1 << len(asked.uses)) - 1) is None:
        return ()
    # What a reading shows to be left stays left: it was read in this room, off these cells.
    left = left_of(asked, part.store())
    usual = run_of(asked, "typical", today, left=left)
    if usual.elapsed_h <= 0:
        return ()
    effects = [
        Effect(name, run.sessions, run.elapsed_h / 24, _even_h(question, run) / _even_h(asked, usual) - 1)
        for name, question, grade, more in _otherwise(asked, part)
        for run in [run_of(question, grade, today, left=left, **more)]
    ]
    effects.sort(key=lambda effect: -abs(effect.change))
    return (Effect("as it is", usual.sessions, usual.elapsed_h / 24, 0.0), *effects)


def _even_h(question: Question, run: Run[Any]) -> float:
    """Return when it ends as if sessions were spread over their rests: a small change is then seen at all."""
    pattern = timing(question.uses[0].pattern)
    return run.elapsed_h + run.sessions % 1.0 * (pattern.period_h - pattern.session_h)


def _otherwise(asked: Question, part: BatteryPart) -> Iterator[tuple[str, Question, str, dict[str, float]]]:
    yield "poor cells", asked, "low", {}
    yield "the best cells", asked, "high", {}
    yield "a tenth less charge in them", asked, "typical", {"capacity": 0.9}
    yield "inner resistance half as much again", asked, "typical", {"ohms": HARDER}
    for kelvin, word in ((-WARMER_K, "colder"), (WARMER_K, "warmer")):
        there = part._replace(celsius=part.celsius + kelvin)
        yield f"a room {WARMER_K:.0f} degrees {word}", asked._replace(battery=there), "typical", {}
    cell = part.cell
    lossy = msgspec.structs.replace(cell, shelf_per_year=2 * cell.shelf_per_year)
    yield "twice the loss on the shelf", asked._replace(battery=part._replace(cell=lossy)), "typical", {}
    slow = msgspec.structs.replace(cell, k_per_h=cell.k_per_h / 2)
    yield "half as quick a recovery at rest", asked._replace(battery=part._replace(cell=slow)), "typical", {}
    if cell.fade[1] > 0:
        worn = part.charged + MORE_CHARGES
        for fade, word in ((cell.fade[0], "fade little"), (cell.fade[1], "fade much")):
            faded = (1.0 - min(fade * worn, MOST_FADED)) / (1.0 - part.faded())
            yield f"after {MORE_CHARGES} more charges, if they {word}", asked, "typical", {"capacity": faded}
    yield "a tenth more current", asked, "typical", {"amps": MORE_LOAD}
    dim = asked.plan.habits.dim_lightness
    for limit, word in (
        (dim - DIMMER, "dimmer light put up with"),
        (dim + DIMMER, "less dim light minded"),
    ):
        if 1.0 <= limit <= 100.0:
            habits = msgspec.structs.replace(asked.plan.habits, dim_lightness=limit)
            plan = asked.plan.with_changes(habits=habits)
            yield word, question_of(plan, asked.kinds, asked.positions, part), "typical", {}
    longer = [_with(use, hours_per_session=use.pattern.hours_per_session * LONGER) for use in asked.uses]
    yield "sessions a quarter longer", asked._replace(uses=tuple(longer)), "typical", {}
    oftener = [_with(use, sessions_per_month=use.pattern.sessions_per_month * 2) for use in asked.uses]
    yield "twice as many sessions a month", asked._replace(uses=tuple(oftener)), "typical", {}


def _with(use: Use, **fields: float) -> Use:
    pattern: UsePattern = msgspec.structs.replace(use.pattern, **fields)
    return use._replace(pattern=pattern)
