"""The same scene on other packs and on the mains: life, swaps and cost a year, volts to spare, size.

Order: what lights the scene at all, then the least cost a year where every one of them has a price, else the
fewest swaps or charges a year, then the smallest.
"""

from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.anchor import Anchor
from wiring.studies.battery_part import BatteryPart, battery_part
from wiring.studies.battery_partners import with_partners
from wiring.studies.forecast import TOP_SHARE, Question, foretold, question_of
from wiring.studies.forecast_notes import charges_stood
from wiring.studies.load_lines import LOWEST_SHARE
from wiring.studies.outlook import Outlook
from wiring.studies.pack_candidates import Pack, packs_for
from wiring.studies.pack_reasons import with_reasons
from wiring.studies.uses import HOURS_PER_MONTH, sessions_of

YEAR_DAYS = 365.25
MAINS_PRICE = "mains kWh"
EFFICIENCY = 0.75  # of a small plug-in supply; from memory
STANDBY_W = 0.1  # the most a small one may take with nothing on in the EU; from memory
LONGEST_YEARS = 10.0  # no pack is counted on for longer
SUPPLY = "supply-regulated"


class Candidate(NamedTuple):
    """One way to feed the scene."""

    title: str  # "8 × Alkaline AA (LR6)"
    kind: str  # of the catalogue
    cell: str  # "" for the mains
    in_series: int
    in_parallel: int
    nominal_v: float
    outlook: Outlook | None  # None for the mains
    lights: bool  # whether it lasts a session
    spare_v: float  # volts under load when fresh, above where it is over
    swaps_a_year: float  # or charges
    rechargeable: bool
    cost_a_year: float | None  # in the plan's currency; None where a price is missing
    size_mm: tuple[float, float, float] | None
    there: bool  # whether it is what the plan has
    reasons: tuple[str, ...] = ()
    mates: tuple[tuple[PartId, int], ...] = ()  # other batteries that must get the same cells, how many each


def compare(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    battery: PartId,
    today: date | None = None,
) -> tuple[Candidate, ...]:
    """Return the ways to feed what hangs on a battery, best first; all packs fresh from today.

    Empty for an unknown type. Batteries that work together are changed together. Too dim is reckoned from the
    light the battery that is there gives when fresh, for all of them.
    """
    there = battery_part(plan, kinds, battery)
    if there is None:
        return ()
    there = with_partners(plan, kinds, positions, there)
    packs = packs_for(kinds, there)
    fresh = [p.battery.fresh_v for p in packs]
    span_v = (TOP_SHARE * max(fresh), LOWEST_SHARE * min(fresh))
    now = question_of(plan, kinds, positions, there, span_v=span_v)
    whole = now.demands.lit((1 << len(now.uses)) - 1)
    bright_v = whole.start_v if whole is not None else 0.0
    found = []
    for pack in packs:
        question = question_of(plan, kinds, positions, pack.battery, None, span_v, bright_v)
        question = question._replace(anchor=Anchor(today))
        found.append(_candidate(question, pack, today, there=pack.battery is there))
    if SUPPLY in kinds:
        found.append(_mains(now, kinds))
    return with_reasons(_ordered(found))


def _ordered(found: list[Candidate]) -> list[Candidate]:
    priced = all(c.cost_a_year is not None for c in found if c.lights)

    def place(candidate: Candidate) -> tuple[float, ...]:
        size = candidate.size_mm or (0.0, 0.0, 0.0)
        return (
            not candidate.lights,
            (candidate.cost_a_year or 0.0) if priced else 0.0,
            candidate.swaps_a_year,
            size[0] * size[1] * size[2],
        )

    return sorted(found, key=place)


def _candidate(question: Question, pack: Pack, today: date | None, *, there: bool) -> Candidate:
    battery, outlook = question.battery, foretold(question, today)
    lights = outlook.sessions.typical >= 1
    years = outlook.days.typical / YEAR_DAYS
    swaps = 1 / min(max(years, 1e-4), LONGEST_YEARS)
    return Candidate(
        title=pack.title,
        kind=pack.kind,
        cell=battery.cell.key,
        in_series=battery.in_series,
        in_parallel=battery.in_parallel,
        nominal_v=_nominal_v(battery),
        outlook=outlook,
        lights=lights,
        spare_v=outlook.spare_v,
        swaps_a_year=swaps,
        rechargeable=battery.cell.rechargeable,
        cost_a_year=_cost(question.plan, battery, swaps) if lights else None,
        size_mm=pack.size_mm,
        there=there,
        mates=tuple((other.id, other.in_series) for other in battery.others),
    )


def _nominal_v(battery: BatteryPart) -> float:
    """Return the volts printed on a battery, and on those behind it."""
    row = (battery,) if battery.side_by_side else (battery, *battery.others)
    return sum(b.cell.nominal_v * b.in_series for b in row)


def _cost(plan: Plan, battery: BatteryPart, swaps: float) -> float | None:
    """Return the cost of cells a year; a rechargeable pack is paid for over the charges it stands."""
    total = 0.0
    for one in (battery, *battery.others):
        price = plan.prices.get(one.cell.key)
        if price is None:
            return None
        pack, charges = price * one.in_series * one.in_parallel, charges_stood(one, 1.0)
        if one.cell.rechargeable:
            total += pack * max(swaps / charges if charges > 0 else 0.0, 1 / LONGEST_YEARS)
        else:
            total += pack * swaps
    return total


def _mains(question: Question, kinds: Mapping[str, Kind]) -> Candidate:
    """Return a regulated supply of the battery's volts, plugged in all year and switched by the plan."""
    battery, kind = question.battery, kinds[SUPPLY]
    volts = _nominal_v(battery)
    whole = question.demands.lit((1 << len(question.uses)) - 1)
    amps = whole.load.current_a(volts) if whole is not None else 0.0
    hours = 12 * max(u.pattern.hours_per_session * sessions_of(u.pattern) for u in question.uses)
    months = 1 - len(set(question.uses[0].pattern.months_off)) / 12
    kwh = (volts * amps / EFFICIENCY * hours * months + STANDBY_W * 12 * HOURS_PER_MONTH) / 1000
    price = question.plan.prices.get(MAINS_PRICE)
    return Candidate(
        title=f"{kind.title}, {volts:g} V, on the mains",
        kind=kind.key,
        cell="",
        in_series=1,
        in_parallel=1,
        nominal_v=volts,
        outlook=None,
        lights=whole is None or volts > whole.end.volts_v,
        spare_v=max(volts - whole.end.volts_v, 0.0) if whole is not None else volts,
        swaps_a_year=0.0,
        rechargeable=False,
        cost_a_year=kwh * price if price is not None else None,
        size_mm=None,
        there=False,
        mates=tuple((other.id, 0) for other in battery.others),
    )
