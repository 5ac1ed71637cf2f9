"""Batteries that are too small, asked for too much, or soon to be swapped."""

from collections.abc import Iterator
from datetime import timedelta

from wiring.catalogue.kind import Kind
from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import renew
from wiring.findings.situation import Situation
from wiring.findings.supplies import resistors_first
from wiring.findings.words import amps, do, part_name
from wiring.plan.part import Part
from wiring.standards.cells import CELLS
from wiring.studies.settings import number, text

FEW_SESSIONS = 3.0
SOON = timedelta(days=30)
SAG = 0.25  # of the fresh volts lost inside the battery itself: far from what it is made for
# The most a 9 V block stands well, amperes, from what makers' curves and bench tests show.
STANDS_A = {"alkaline 9 V": 0.100, "zinc-carbon 9 V": 0.025}


def find(situation: Situation) -> Iterator[Finding]:
    """Find what is wrong with each battery: its load first, then how long it lasts."""
    for part, kind in situation.of("battery"):
        heavy = tuple(_heavy(situation, part, kind))
        yield from heavy
        if not heavy:
            yield from _short_lived(situation, part)
        yield from _due(situation, part)


def _heavy(situation: Situation, part: Part, kind: Kind) -> Iterator[Finding]:
    plan = situation.plan
    figure = situation.figures.supplies.get(part.id)
    cell = CELLS.get(text(part, kind, "cell"))
    if figure is None or cell is None or figure.current_a <= 0:
        return
    blocks = max(number(part, kind, "in_parallel"), 1.0)
    typed_ah = number(part, kind, "capacity")
    scale = typed_ah / cell.rated_ah if typed_ah > 0 else 1.0
    sag = figure.current_a * cell.r0_ohm / (scale * blocks * cell.fresh_v)
    stands_a = STANDS_A.get(cell.key, float("inf")) * blocks
    if sag <= SAG and figure.current_a <= stands_a:
        return
    most_a = min(stands_a, SAG * scale * blocks * cell.fresh_v / cell.r0_ohm)
    yield Finding(
        "battery-load",
        Rank.WEAK,
        f"{part_name(plan, part.id)} gives {amps(plan, figure.current_a)}; "
        f"such a battery does well up to about {amps(plan, most_a)}.",
        "Much of its energy is lost inside it, and its volts fall quickly.",
        resistors_first(situation, part.id, "a larger battery")
        or "Use larger cells (AA, C or D in a holder), or a supply.",
        (part.id,),
    )


def _short_lived(situation: Situation, part: Part) -> Iterator[Finding]:
    outlook = situation.outlooks.get(part.id)
    if outlook is None or outlook.first_load_a <= 0 or outlook.sessions.typical >= FEW_SESSIONS:
        return
    count = outlook.sessions.typical
    lasts = (
        f"about {count:.0f} {do(round(count), 'session', 'sessions')}"
        if count >= 1
        else "not even one session"
    )
    yield Finding(
        "battery-small",
        Rank.WEAK,
        f"{part_name(situation.plan, part.id)} lasts {lasts}.",
        outlook.end_reason,
        "Use larger cells, several in parallel, fewer or weaker lamps, or a supply.",
        (part.id,),
    )


def _due(situation: Situation, part: Part) -> Iterator[Finding]:
    outlook = situation.outlooks.get(part.id)
    if outlook is None or outlook.swap_on is None or outlook.swap_on > situation.today + SOON:
        return
    name = part_name(situation.plan, part.id)
    cell = CELLS.get(text(part, situation.kinds[part.kind], "cell"))
    charge = cell is not None and cell.rechargeable
    do_it = "charged" if charge else "swapped"
    past = outlook.swap_on < situation.today
    day = f"{outlook.swap_on.day} {outlook.swap_on:%B %Y}"
    yield Finding(
        "battery-due",
        Rank.WEAK if past else Rank.NOTE,
        f"{name} was due to be {do_it} around {day}."
        if past
        else f"{name} is due to be {do_it} around {day}.",
        outlook.end_reason,
        "Charge it and log the day." if charge else "Fit a fresh one and set the date it was fitted.",
        (part.id,),
        act=renew(situation, part.id, charged=charge),
    )
