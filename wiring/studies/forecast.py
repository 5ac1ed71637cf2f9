"""How long a battery lasts at the way it is used."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.load_line import LoadLine, load_line
from wiring.circuit.solve import solve
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.plan.scene import UsePattern
from wiring.standards.cells import CELLS, CellType
from wiring.standards.lightness import lightness
from wiring.studies.cells.discharge import Run, Schedule, run_down
from wiring.studies.cells.ends import End, between, end_of
from wiring.studies.cells.load import meeting_v, tabled
from wiring.studies.cells.pack import Grade, Pack, packed
from wiring.studies.forecast_words import end_words, lasting_words, shelf_words
from wiring.studies.outlook import Curve, Outlook, Span
from wiring.studies.settings import number, text
from wiring.studies.shelf_life import shelf_outlook

DAYS_PER_MONTH = 365.25 / 12
HORIZON_H = 10 * 8766.0  # nothing is promised beyond ten years
TABLE_POINTS = 33
LOWEST_SHARE = 0.3  # of the fresh volts: every end lies above it, so the table needs no points below
LEAST_LOAD_A = 1e-6
CURVE_POINTS = 240
LEAST_POINTS = 3  # of the table that were solved, for a forecast to be made
NEEDS_VOLTS = frozenset({"constant_power", "flasher", "servo"})


class Band(NamedTuple):
    """The discharge of a poor, an ordinary and a very good battery of the type."""

    low: Run
    typical: Run
    high: Run


def use_of(plan: Plan, part: Part) -> UsePattern:
    """Return how a part is used: as its scene is, else as the plan says."""
    scene = plan.scenes.get(part.scene)
    return scene.use if scene is not None else plan.use


def forecast(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    battery: PartId,
    use: UsePattern | None = None,
    today: date | None = None,
) -> Outlook:
    """Return the outlook of a battery with what hangs on it, at its scene's use (or the one given).

    The low and high values are the spread between grades and brands, not the worst case.
    """
    part = plan.parts[battery]
    kind = kinds[part.kind]
    use = use or use_of(plan, part)
    cell = CELLS.get(text(part, kind, "cell"))
    if cell is None:
        return shelf_outlook(battery, None, None, "Its cell type is not in the list.")
    fresh = _pack(plan, part, kind, cell, "typical")
    fitted = _date(text(part, kind, "fitted"))
    line = _line(plan, kinds, positions, battery, fresh)
    if line.solved.sum() < LEAST_POINTS:
        return shelf_outlook(battery, None, None, "What hangs on it could not be calculated.")
    load = tabled(line.volts[line.solved].tolist(), line.amps[line.solved].tolist())
    start_v = meeting_v(load, fresh.emf_v(0.0), fresh.ohms(0.0))
    first_a = load.current_a(start_v) if start_v is not None else max(load.amps)
    idle = first_a < LEAST_LOAD_A or use.hours_per_session <= 0 or use.sessions_per_month <= 0
    if idle:
        return shelf_outlook(battery, fresh, fitted, shelf_words(cell, first_a >= LEAST_LOAD_A))
    end = _end(plan, kinds, positions, line, start_v or 0.0, fresh.floor_v)
    schedule = _schedule(use)
    band = Band(
        *(run_down(_pack(plan, part, kind, cell, g), load, end.volts_v, schedule, HORIZON_H)
          for g in ("low", "typical", "high"))
    )  # fmt: skip
    days = _span(band, lambda run: run.elapsed_h / 24)
    swap_on = fitted + timedelta(days=days.typical) if fitted and band.typical.reached_end else None
    sessions = _span(band, lambda run: run.sessions)
    return Outlook(
        battery=battery,
        hours=_span(band, lambda run: run.lit_h),
        sessions=sessions,
        days=days,
        swap_on=swap_on,
        first_load_a=first_a,
        end_reason=end_words(plan, end, band.typical, cell.rechargeable),
        words=lasting_words(sessions, days, swap_on, today, band.typical.reached_end),
        curve=_curve(band.typical, line, start_v or 0.0),
    )


def _pack(plan: Plan, part: Part, kind: Kind, cell: CellType, grade: str) -> Pack:
    typed_ah = number(part, kind, "capacity")
    grades = cell.grades
    share = {"low": grades.low, "typical": grades.typical, "high": grades.high}[grade]
    if typed_ah > 0:  # what is typed is taken as what an ordinary one of the kind really holds
        share /= grades.typical
    return packed(
        cell,
        max(round(number(part, kind, "in_series")), 1),
        max(round(number(part, kind, "in_parallel")), 1),
        typed_ah,
        Grade(share, grades.low_ohm if grade == "low" else 1.0),
        plan.habits.ambient_c,
    )


def _line(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, battery: PartId, pack: Pack
) -> LoadLine:
    import numpy as np

    top_v = pack.emfs_v[0] * 1.01
    lowest_v = LOWEST_SHARE * top_v
    volts = np.concatenate(([0.02 * top_v], np.linspace(lowest_v, top_v, TABLE_POINTS - 1)))
    return load_line(plan, kinds, positions, battery, volts)


def _end(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    line: LoadLine,
    start_v: float,
    floor_v: float,
) -> End:
    return end_of(
        line.volts.tolist(),
        {part: light.tolist() for part, light in line.lights.items()},
        _drop_outs(plan, kinds, positions, line.parts),
        start_v,
        floor_v,
        plan.habits.dim_lightness,
    )


def _drop_outs(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, parts: Sequence[PartId]
) -> dict[PartId, float]:
    """Return the battery's volts at which each module of its circuit stops.

    What wires and switches lose on the way is taken as it is with a fresh battery, which is a little
    more than at the end, so that the forecast is on the safe side.
    """
    needy = [p for p in parts if kinds[plan.parts[p].kind].behaviour in NEEDS_VOLTS]
    if not needy:
        return {}
    figures = solve(plan, kinds, positions)
    fresh = figures.supplies.get(parts[0])
    found: dict[PartId, float] = {}
    for part_id in needy:
        part, reading = plan.parts[part_id], figures.parts.get(part_id)
        least_v = number(part, kinds[part.kind], "min_v")
        if fresh is not None and reading is not None and reading.volts_v >= least_v:
            found[part_id] = least_v + max(fresh.volts_v - reading.volts_v, 0.0)
    return found


def _schedule(use: UsePattern) -> Schedule:
    period_h = DAYS_PER_MONTH * 24 / use.sessions_per_month
    return Schedule(min(use.hours_per_session, period_h), period_h)


def _span(band: Band, value: Callable[[Run], float]) -> Span:
    return Span(*sorted(value(run) for run in band))


def _curve(run: Run, line: LoadLine, start_v: float) -> Curve:
    samples = run.samples
    if len(samples) > CURVE_POINTS:
        step = (len(samples) - 1) / (CURVE_POINTS - 1)
        samples = tuple(samples[round(i * step)] for i in range(CURVE_POINTS))
    volts = line.volts.tolist()
    fresh = {p: between(volts, light.tolist(), start_v) for p, light in line.lights.items()}
    shining = [(line.lights[p].tolist(), light) for p, light in fresh.items() if light > 0.01]
    looks = tuple(
        min(lightness(between(volts, light, s.volts_v) / at_first) for light, at_first in shining)
        for s in samples
    ) if shining else ()  # fmt: skip
    return Curve(
        hours=tuple(s.lit_h for s in samples),
        days=tuple(s.elapsed_h / 24 for s in samples),
        volts=tuple(s.volts_v for s in samples),
        lightness=looks,
    )


def _date(typed: str) -> date | None:
    try:
        return date.fromisoformat(typed.strip())
    except ValueError:
        return None
