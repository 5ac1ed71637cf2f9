"""What else there is to say about a battery's forecast: scenes, charging, weak cells, readings."""

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

from wiring.plan.plan import Plan
from wiring.studies.anchor import Anchor
from wiring.studies.battery_part import BatteryPart
from wiring.studies.cells.bank import Bank
from wiring.studies.cells.pack import HOURS_PER_YEAR
from wiring.studies.time_words import time_words
from wiring.studies.uses import HOURS_PER_MONTH, Use, timing

if TYPE_CHECKING:
    from wiring.studies.kept_bands import Band

HEAVY = 2.0  # times the heaviest load its type was measured with: beyond it the forecast is a guess
AGED_YEARS = 10.0  # no rechargeable keeps for longer, whatever it is used; common practice, no source
WORTH_SAYING = 0.02  # of the charge: less is lost in the spread between cells
LITTLE_SPARE = 0.1  # of a charge: less than this left when the charger comes is called tight


def notes_of(
    plan: Plan, battery: BatteryPart, uses: tuple[Use, ...], anchor: Anchor, band: "Band"
) -> tuple[str, ...]:
    """Return one plain sentence on each thing worth knowing."""
    return (
        *_reading(anchor),
        *_scenes(plan, uses),
        *_partners(plan, battery),
        *_charging(battery, uses[0], band),
        *_weak(battery, band),
        *_heavy(battery, band),
        *_shelf(battery, band),
    )


def _reading(anchor: Anchor) -> Iterator[str]:
    if anchor.reading is not None and anchor.start is not None:
        how = "" if anchor.reading.under_load else ", with nothing on,"
        yield (
            f"Counted from the {anchor.reading.volts_v:.3g} V measured{how} on {anchor.start.day} "
            f"{anchor.start:%B %Y}."
        )


def _scenes(plan: Plan, uses: tuple[Use, ...]) -> Iterator[str]:
    if len(uses) > 1:
        counted = _names(plan, uses[0])
        yield (
            f"{len(uses)} ways of use lie over each other; sessions are those of {counted}, and scenes that "
            "are on at the same time draw together."
        )
    for use in uses:
        if timing(use.pattern).always and len(uses) > 1:
            yield f"Part of what hangs on it is always on ({_names(plan, use)})."


def _partners(plan: Plan, battery: BatteryPart) -> Iterator[str]:
    if battery.others:
        names = ", ".join(f"-{plan.parts[o.id].designation}" for o in battery.others[:4])
        where = "side by side with" if battery.side_by_side else "in line with"
        yield f"It works {where} {names}, and what is said is for all of them together."


def _names(plan: Plan, use: Use) -> str:
    scenes = dict.fromkeys(plan.parts[p].scene for p in use.loads)
    names = [plan.scenes[s].name[:32] for s in scenes if s in plan.scenes]
    return ", ".join(names[:3]) + (" and others" if len(names) > 3 else "") if names else "the battery"


def _charging(battery: BatteryPart, use: Use, band: "Band") -> Iterator[str]:
    if not battery.cell.rechargeable or band.typical.sessions <= 0:
        return
    every = use.pattern.sessions_per_charge
    charged_at = float(every) if every > 0 else band.typical.sessions
    if every > 0:
        spare = 1.0 - every / band.low.sessions if band.low.sessions > 0 else -1.0
        if spare < 0:
            yield (
                f"Charging after {every} sessions is too late for a poor one, which lasts "
                f"{max(band.low.sessions, 0):.0f}."
            )
        elif spare < LITTLE_SPARE:
            yield f"Charging after {every} sessions is only just in time."
        else:
            yield f"Charging after {every} sessions leaves even a poor one about {spare:.0%} in hand."
    if battery.faded() >= WORTH_SAYING:
        lost = f"{battery.faded():.0%}"
        yield f"Charged {battery.charged} times so far, its cells hold some {lost} less than when new."
    depth = min(charged_at / band.typical.sessions, 1.0)
    charges = charges_stood(battery, depth)
    if charges > 0:
        years = charges * charged_at * timing(use.pattern).period_h / HOURS_PER_YEAR
        if years > AGED_YEARS:
            yield f"Its cells stand some {charges:.0f} such charges, so age will end it, not use."
        else:
            lasting = time_words(years * HOURS_PER_YEAR / 24)
            yield f"Its cells stand some {charges:.0f} such charges, about {lasting} at this use."


def charges_stood(battery: BatteryPart, depth: float) -> float:
    """Return how many charges the cells stand when that share is taken out each time; 0 if not known."""
    table = sorted(battery.cell.charges)
    if not table or depth <= 0:
        return 0.0
    if depth <= table[0][0]:
        return table[0][1] * table[0][0] / depth  # the same charge in all
    for (x0, y0), (x1, y1) in pairwise(table):
        if depth <= x1:
            return y0 + (y1 - y0) * (depth - x0) / (x1 - x0)
    return table[-1][1]


def _weak(battery: BatteryPart, band: "Band") -> Iterator[str]:
    if battery.weakest >= 1.0:
        return
    store, state = battery.store(), band.typical.wells
    if isinstance(store, Bank) and not battery.cell.rechargeable and max(store.depths(state)) > 1.0:
        yield "Its weak cell is reversed before the end and may leak; swap that cell."
    elif battery.cell.rechargeable:
        yield "Its weak cell is empty first and decides when to charge."


def _heavy(battery: BatteryPart, band: "Band") -> Iterator[str]:
    """Say when more is drawn than its type was ever measured with."""
    if not band.typical.samples or battery.side_by_side:
        return
    scale = battery.capacity_ah / battery.cell.rated_ah if battery.capacity_ah > 0 else 1.0
    known_a = battery.cell.measured_to_a * battery.in_parallel * scale
    asked_a = band.typical.samples[0].current_a
    if known_a > 0 and asked_a > HEAVY * known_a:
        yield (
            f"It is asked for {asked_a:.2g} A and its type was measured up to {known_a:.2g} A, so take the "
            "hours as rough; larger cells would serve it better."
        )


def _shelf(battery: BatteryPart, band: "Band") -> Iterator[str]:
    """Say when cells lose more by themselves than they give."""
    run = band.typical
    lost_ah = battery.cell.shelf_per_year * battery.rated_ah * run.elapsed_h / HOURS_PER_YEAR
    if run.elapsed_h > HOURS_PER_MONTH and lost_ah / 2 > run.delivered_ah:
        yield "It loses more by itself than it gives, so a type that keeps longer would last longer."
