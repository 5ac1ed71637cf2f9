"""What the forecast says, in words."""

from datetime import date
from typing import Any

from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.standards.cells import CellType
from wiring.studies.cells.discharge import Run
from wiring.studies.cells.ends import End
from wiring.studies.outlook import Span
from wiring.studies.time_words import time_words


def lasting_words(
    sessions: Span,
    days: Span,
    swap_on: date | None,
    today: date | None,
    reached_end: bool,
    *,
    charge: bool = False,
    left: bool = False,
    always: bool = False,
) -> str:
    """Return ``about 40 sessions; swap around August 2027``; `left` where a reading is counted from.

    `always` where nothing is ever switched off: ``about 5 months, always on; swap around August 2027``.
    """
    if not reached_end:
        return "more than ten years, or as long as its cells keep"
    count, more = sessions.typical, " left" if left else ""
    if count < 1:
        return ("not even one day" if always else "not even one session") + more
    lasts = f"about {rounded(count)} session{'' if rounded(count) == '1' else 's'}{more}"
    if always:
        lasts = f"about {time_words(days.typical)}{more}, always on"
    if swap_on is None:
        return lasts if always else f"{lasts}, some {time_words(days.typical)}"
    when = f"{swap_on:%B %Y}"
    if days.typical < 60:
        when = f"{swap_on.day} {when}"
    do = "charge" if charge else "swap"
    if today is not None and swap_on < today:
        return f"{lasts}; a {do} was due around {when}"
    return f"{lasts}; {do} around {when}"


def rounded(count: float) -> str:
    """Return a count no finer than anybody can promise: 7, 14, 35, 120."""
    if count < 20:
        return f"{round(count)}"
    step = next((s for most, s in ((50, 5), (200, 10), (1000, 50)) if count < most), 500)
    return f"{round(count / step) * step}"


def end_words(plan: Plan, end: End, run: Run[Any], rechargeable: bool) -> str:
    """Return one sentence on why it ends."""
    if not run.samples:
        return "Even a fresh battery of this kind cannot carry what hangs on it."
    if not run.reached_end:
        return "So little is drawn that age ends it, not use."
    if end.cause == "light" and end.part is not None:
        return (
            f"It ends when {_name(plan, end.part)} looks dimmer than "
            f"{plan.habits.dim_lightness:.0f} % of fresh."
        )
    if end.cause == "drop-out" and end.part is not None:
        return f"It ends when {_name(plan, end.part)} no longer gets the volts it needs."
    if rechargeable:
        return f"It ends at {end.volts_v:.1f} V, where it must be charged or its cells suffer."
    return f"It ends at {end.volts_v:.1f} V, where its cells are empty."


def shelf_words(cell: CellType, connected: bool, held_off: str = "") -> str:
    """Return one sentence for a battery that is not drawn from; `held_off` says what is off."""
    if connected:
        return "It is never used, so only its shelf life counts."
    loses = f"{cell.title} loses about {min(cell.shelf_per_year, 1.0):.0%} of its charge a year"
    if cell.shelf_per_year > 1:
        loses = f"{cell.title} loses most of its charge within some months"
    if held_off:
        return f"{held_off[:1].upper()}{held_off[1:]} in this use, so nothing draws from it; {loses}."
    return f"Nothing draws from it as things stand; {loses}."


def _name(plan: Plan, part_id: PartId) -> str:
    part = plan.parts[part_id]
    label = part.label.strip()[:32]
    return f"-{part.designation} “{label}”" if label else f"-{part.designation}"
