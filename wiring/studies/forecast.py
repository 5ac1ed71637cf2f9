"""How long a battery lasts at the way it is used."""

from collections.abc import Callable, Mapping
from datetime import date
from typing import Any, NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.plan.scene import UsePattern
from wiring.studies.anchor import Anchor, anchor_of, share_at
from wiring.studies.battery_demands import LEAST_LOAD_A, LEAST_POINTS, Demands, Lit
from wiring.studies.battery_part import BatteryPart, battery_part, day
from wiring.studies.battery_partners import with_partners
from wiring.studies.cells.discharge import Run, run_patterns
from wiring.studies.cells.store import Store
from wiring.studies.cells.timeline import day_of
from wiring.studies.course import course_of
from wiring.studies.forecast_notes import notes_of
from wiring.studies.forecast_words import end_words, lasting_words, shelf_words
from wiring.studies.held_off import held_off, held_off_words
from wiring.studies.kept_bands import Band, Follows, kept_band
from wiring.studies.load_lines import Hung, line_of
from wiring.studies.outlook import Curve, Outlook, Span
from wiring.studies.settings import text
from wiring.studies.shelf_life import shelf_outlook
from wiring.studies.uses import Use, sessions_of, timing, use_of, uses_of

__all__ = ["Band", "Question", "forecast", "foretold", "question_of", "use_of"]

HORIZON_H = 10 * 8766.0  # nothing is promised beyond ten years
TOP_SHARE = 1.01  # of the fresh volts


class Question(NamedTuple):
    """What a forecast is about: a battery, what hangs on it and when, and where it starts."""

    plan: Plan
    kinds: Mapping[str, Kind]
    positions: Positions
    battery: BatteryPart
    uses: tuple[Use, ...]
    anchor: Anchor
    demands: Demands


def forecast(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    battery: PartId,
    use: UsePattern | None = None,
    today: date | None = None,
) -> Outlook:
    """Return the outlook of a battery with what hangs on it, at the use of its scenes (or the one given).

    It starts from the last reading of the battery log, else from a fresh battery. The low and high values
    are the spread between grades and brands and of the room's temperature, not the worst case.
    """
    found = battery_part(plan, kinds, battery)
    if found is None:
        part = plan.parts[battery]
        fitted = day(text(part, kinds[part.kind], "fitted"))
        return shelf_outlook(battery, None, fitted, "Its cell type is not in the list.")
    whole = with_partners(plan, kinds, positions, found)
    return foretold(question_of(plan, kinds, positions, whole, use), today)


def question_of(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    battery: BatteryPart,
    use: UsePattern | None = None,
    span_v: tuple[float, float] = (0.0, 0.0),
    bright_v: float = 0.0,
) -> Question:
    """Return what a forecast is about; `span_v` are the top and lowest volts of its load lines.

    Lamps are compared with what they give at `bright_v`, or else on the fresh battery.
    """
    top_v = span_v[0] or battery.fresh_v * TOP_SHARE
    mates = frozenset(other.id for other in battery.others)
    off, joined = (mates, frozenset[PartId]()) if battery.side_by_side else (frozenset[PartId](), mates)
    hung = Hung(plan, kinds, positions, battery.id, top_v, span_v[1], off, joined)
    uses = uses_of(plan, kinds, battery.id, line_of(hung).parts)
    if use is not None:
        uses = (Use(use, frozenset().union(*(u.loads for u in uses))),)
    store, floor_v = battery.store(), battery.floor_v
    source = store.thevenin(store.level(1.0))
    demands = Demands(hung, uses, source, floor_v, bright_v)
    return Question(
        plan, kinds, positions, battery, uses, anchor_of(plan, battery.id, battery.fitted), demands
    )


def foretold(question: Question, today: date | None = None) -> Outlook:
    """Return the outlook that answers a question."""
    battery, demands, uses = question.battery, question.demands, question.uses
    whole = demands.lit((1 << len(uses)) - 1)
    if whole is None or all(sessions_of(use.pattern) <= 0 for use in uses):
        return _idle(question, connected=whole is not None)
    first_a = whole.load.current_a(whole.start_v) if whole.start_v else max(whole.load.amps)
    if 0 < battery.limit_a < first_a:
        return _tripping(question, first_a)
    band = _band(question, whole, today)
    typical = band.typical
    end = (demands.lit(typical.ended_on) or whole).end
    days = _span(band, lambda run: run.elapsed_h / 24)
    sessions = _span(band, lambda run: run.sessions)
    start = question.anchor.start
    swaps = None
    if start is not None and typical.reached_end:
        swaps = tuple(day_of(start, 24 * d) for d in days)
    swap_on = swaps[1] if swaps else None
    return Outlook(
        battery=battery.id,
        hours=_span(band, lambda run: run.lit_h),
        sessions=sessions,
        days=days,
        swap_on=swap_on,
        first_load_a=first_a,
        end_reason=end_words(question.plan, end, typical, battery.cell.rechargeable),
        words=lasting_words(
            sessions,
            days,
            swap_on,
            today,
            typical.reached_end,
            charge=battery.cell.rechargeable,
            left=question.anchor.reading is not None,
            always=timing(uses[0].pattern).always,
        ),
        curve=course_of(typical, demands),
        end_v=end.volts_v,
        spare_v=max(whole.start_v - end.volts_v, 0.0),
        counted_from=start,
        measured=question.anchor.reading is not None,
        notes=notes_of(question.plan, battery, uses, question.anchor, band),
        swap_between=(swaps[0], swaps[2]) if swaps else None,
        dim_lightness=question.plan.habits.dim_lightness,
        always_on=timing(uses[0].pattern).always,
    )


def run_of(
    question: Question,
    grade: str = "typical",
    today: date | None = None,
    *,
    ohms: float = 1.0,
    capacity: float = 1.0,
    amps: float = 1.0,
    left: float | None = None,
) -> Run[Any]:
    """Return the discharge for one grade of cell, with factors on its resistance, its charge and the load.

    `left` is the share of its charge it starts with, whatever a reading says.
    """
    store = question.battery.store(grade, ohms, capacity)
    left = left_of(question, store) if left is None else left
    return run_patterns(
        store,
        question.demands if amps == 1.0 else question.demands.scaled(amps),
        [timing(use.pattern) for use in question.uses],
        HORIZON_H,
        start=question.anchor.start or today or date.today(),
        state=store.level(left) if left < 1.0 else None,
    )


def left_of(question: Question, store: Store[Any]) -> float:
    """Return the share of its charge a battery starts with: what its last reading shows, else all of it."""
    reading = question.anchor.reading
    if reading is None:
        return 1.0
    whole = question.demands.lit((1 << len(question.uses)) - 1) if reading.under_load else None
    return share_at(store, whole.load if whole else None, _all_of(question, reading.volts_v))


def _all_of(question: Question, volts_v: float) -> float:
    """Return what all batteries in line read when one of them reads that, as if all were alike."""
    battery = question.battery
    return volts_v * battery.fresh_v / (battery.cell.fresh_v * battery.in_series)


def _band(question: Question, whole: Lit, today: date | None) -> Band:
    anchor, limits = question.anchor, (question.demands.limits, whole.end)
    follows = Follows(question.battery, question.uses, anchor, anchor.start or today or date.today(), limits)

    def run() -> Band:
        return Band(*(run_of(question, grade, today) for grade in ("low", "typical", "high")))

    return kept_band(whole.line, follows, run)


def _idle(question: Question, *, connected: bool) -> Outlook:
    battery, anchor = question.battery, question.anchor
    top_v = battery.fresh_v * TOP_SHARE
    line = line_of(Hung(question.plan, question.kinds, question.positions, battery.id, top_v))
    if line.solved.sum() < LEAST_POINTS:
        return shelf_outlook(battery.id, None, None, "What hangs on it could not be calculated.")
    drawn = connected or float(line.amps.max(initial=0.0)) >= LEAST_LOAD_A
    plan, positions = question.plan, question.positions
    off = () if drawn else held_off(plan, question.kinds, positions, battery.id)
    words = shelf_words(battery.cell, drawn, held_off_words(plan, question.kinds, positions, off))
    return shelf_outlook(battery.id, battery.pack(), anchor.start, words)


def _tripping(question: Question, first_a: float) -> Outlook:
    battery = question.battery
    nothing = Span(0.0, 0.0, 0.0)
    return Outlook(
        battery=battery.id,
        hours=nothing,
        sessions=nothing,
        days=nothing,
        swap_on=None,
        first_load_a=first_a,
        end_reason=f"Its protection switches off above {battery.limit_a:.3g} A, and what hangs on it takes "
        f"{first_a:.3g} A.",
        words="not even one session",
        curve=Curve((), (), (), ()),
    )


def _span(band: Band, value: Callable[[Run[Any]], float]) -> Span:
    """Return an ordinary battery's value and the least and most of all three: warmth costs charge as well."""
    values = [value(run) for run in band]
    return Span(min(values), value(band.typical), max(values))
