"""What ``underboard outlook`` prints beside the outlooks: other packs, and what each assumption changes."""

from typing import TYPE_CHECKING, Any

from wiring.commands.table import Column, paragraph, table
from wiring.plan.designations import part_label
from wiring.quantities.wording import worded

if TYPE_CHECKING:
    from datetime import date

    from wiring.findings.situation import Situation
    from wiring.studies.compare_packs import Candidate
    from wiring.studies.sensitivity import Effect

PACKS = (
    Column("Pack", wraps=True),
    Column("Lasts", right=True),
    Column("A year", right=True),
    Column("Cost", right=True),
    Column("To spare", right=True),
    Column("Why", wraps=True),
)
EFFECTS = (
    Column("Assumed", wraps=True),
    Column("Sessions", right=True),
    Column("Days", right=True),
    Column("Change", right=True),
)


def compared(situation: "Situation", today: "date | None") -> dict[str, tuple["Candidate", ...]]:
    """Return the ways to feed what hangs on each battery, best first, by the battery's id."""
    from wiring.studies.compare_packs import compare

    return {
        battery: compare(situation.plan, situation.kinds, situation.positions, battery, today)
        for battery in situation.outlooks
    }


def assumed(situation: "Situation", today: "date | None") -> dict[str, tuple["Effect", ...]]:
    """Return what each assumption changes, by the battery's id."""
    from wiring.studies.sensitivity import sensitivities

    return {
        battery: sensitivities(situation.plan, situation.kinds, situation.positions, battery, today)
        for battery in situation.outlooks
    }


def packs_words(situation: "Situation", found: dict[str, tuple["Candidate", ...]]) -> str:
    """Return a table of packs for each battery."""
    parts = []
    for battery, candidates in found.items():
        label = part_label(situation.plan, battery)
        if not candidates:
            parts.append(
                paragraph(
                    f"{label}: it works with others or its type is not in the list, so nothing is compared."
                )
            )
            continue
        rows = [_pack_row(candidate) for candidate in candidates]
        parts.append(f"{label}: the same scene on other packs, best first\n\n{table(PACKS, rows)}")
    return "\n\n".join(parts)


def _pack_row(one: "Candidate") -> list[str]:
    sessions = ""
    if one.outlook is not None and one.lights:
        sessions = f"{_two(one.outlook.sessions.typical)} sessions"
    return [
        one.title,
        sessions,
        f"{_two(one.swaps_a_year)} {'charges' if one.rechargeable else 'sets'}"
        if one.lights and one.cell
        else "",
        f"{one.cost_a_year:.2f}" if one.cost_a_year is not None else "",
        worded(one.spare_v, "voltage") if one.lights else "",
        " ".join(one.reasons),
    ]


def effects_words(situation: "Situation", found: dict[str, tuple["Effect", ...]]) -> str:
    """Return a table of assumptions for each battery."""
    parts = []
    for battery, effects in found.items():
        label = part_label(situation.plan, battery)
        if not effects:
            parts.append(paragraph(f"{label}: nothing draws from it, so no assumption changes anything."))
            continue
        rows = [
            [e.assumption, _two(e.sessions), _two(e.days), "" if i == 0 else f"{100 * e.change:+.0f} %"]
            for i, e in enumerate(effects)
        ]
        parts.append(f"{label}: what each assumption changes\n\n{table(EFFECTS, rows)}")
    return "\n\n".join(parts)


def _two(value: float) -> str:
    """Two digits that count: a forecast knows no more."""
    return worded(float(f"{value:.2g}"), "count") if value >= 1 or value == 0 else f"{value:.1f}"


def pack_data(one: "Candidate") -> dict[str, Any]:
    """Return a candidate as plain data, without its curve."""
    data = {k: v for k, v in one._asdict().items() if k != "outlook"}
    if one.outlook is not None:
        data |= {"sessions": one.outlook.sessions._asdict(), "days": one.outlook.days._asdict()}
    return data
