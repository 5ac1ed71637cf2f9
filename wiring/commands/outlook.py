"""``underboard outlook PLAN``: how long each battery lasts at the way the layout is used.

With ``--json``: ``plan`` (title), ``positions``, ``batteries`` (list in plan order), ``dangers``, ``notes``.
Each battery has ``id designation label hours sessions days swap_on swap_between first_load_a end_reason words
curve end_v spare_v counted_from measured notes``; ``hours``, ``sessions`` and ``days`` hold ``low typical
high``, ``curve`` holds lists ``hours days volts lightness sessions``, ``swap_between`` two days or null. With
``--compare`` it also has a list ``packs``, best first, and with ``--sensitivity`` a list ``assumptions``.
"""

from argparse import ArgumentParser, ArgumentTypeError, Namespace
from datetime import date
from typing import TYPE_CHECKING, Any

from wiring.commands.json_text import json_text
from wiring.commands.opening import add_plan_arguments, open_plan
from wiring.commands.outlook_more import (
    assumed,
    compared,
    effects_words,
    pack_data,
    packs_words,
)
from wiring.commands.prices_text import read_prices
from wiring.commands.refusal import DANGER, FINE
from wiring.commands.table import Column, paragraph, table
from wiring.plan.designations import part_label
from wiring.quantities.wording import worded

if TYPE_CHECKING:
    from wiring.findings.situation import Situation
    from wiring.studies.outlook import Outlook, Span

FIRST_YEAR, LAST_YEAR = 1900, 2999  # a slip beyond; the calendar itself ends soon after
COLUMNS = (
    Column("Battery"),
    Column("What", wraps=True),
    Column("Load", right=True),
    Column("Hours lit", right=True),
    Column("Sessions", right=True),
    Column("Days", right=True),
    Column("Swap on", right=True),
)


def add_arguments(parser: ArgumentParser) -> None:
    """Describe the arguments."""
    add_plan_arguments(parser)
    parser.add_argument(
        "--compare", action="store_true", help="the same scene on other packs and on the mains"
    )
    parser.add_argument(
        "--prices",
        default="",
        metavar="TYPE=PRICE,...",
        help="of one battery, such as alkaline AA=0.9, and mains kWh=0.3; with the plan's own, for --compare",
    )
    parser.add_argument("--sensitivity", action="store_true", help="what each assumption changes")
    parser.add_argument("--json", action="store_true", help="write JSON for another program")
    parser.add_argument(
        "--today", type=_date, metavar="DATE", help="the day to reckon from, as 2026-03-01 (today)"
    )


def _date(text: str) -> date:
    try:
        day = date.fromisoformat(text)
    except ValueError:
        raise ArgumentTypeError(f"“{text}” is not a date; write it as 2026-03-01") from None
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise ArgumentTypeError(f"the year of {text} must lie between {FIRST_YEAR} and {LAST_YEAR}")
    return day


def run(args: Namespace) -> int:
    """Print the outlooks; 1 when a finding of danger goes with them."""
    from wiring.findings.finding import Rank
    from wiring.findings.situation import examine

    opened = open_plan(args)
    situation = examine(opened.plan, opened.kinds, opened.positions, today=args.today)
    dangers = sum(f.rank is Rank.DANGER for f in situation.findings)
    priced = opened.plan.with_changes(prices={**opened.plan.prices, **read_prices(args.prices)})
    packs = compared(situation._replace(plan=priced), args.today) if args.compare else {}
    effects = assumed(situation, args.today) if args.sensitivity else {}
    if args.json:
        data = outlook_data(situation)
        for row in data["batteries"]:
            row |= {"packs": [pack_data(c) for c in packs[row["id"]]]} if args.compare else {}
            row |= {"assumptions": [e._asdict() for e in effects[row["id"]]]} if args.sensitivity else {}
        print(json_text({**data, "dangers": dangers, "notes": opened.notes}))
    else:
        print(paragraph(f"{opened.plan.title}: batteries"), _words(situation), sep="\n\n")
        for text in (packs_words(situation, packs), effects_words(situation, effects)):
            print(f"\n{text}" if text else "", end="\n" if text else "")
    return DANGER if dangers else FINE


def _words(situation: "Situation") -> str:
    if not situation.outlooks:
        return "The plan has no battery."
    plan, kinds = situation.plan, situation.kinds
    rows = [
        [
            part_label(plan, i),
            plan.parts[i].label or kinds[plan.parts[i].kind].title,
            worded(outlook.first_load_a, "current"),
            _span(outlook.hours),
            _span(outlook.sessions),
            _span(outlook.days),
            str(outlook.swap_on or ""),
        ]
        for i, outlook in situation.outlooks.items()
    ]
    sentences = [
        paragraph(
            " ".join((f"{part_label(plan, i)}: {outlook.words}.", outlook.end_reason, *outlook.notes)),
            "  ",
            "",
        )
        for i, outlook in situation.outlooks.items()
    ]
    return table(COLUMNS, rows) + "\n\n" + "\n".join(sentences)


def _span(span: "Span") -> str:
    """Return typical, low and high as they are read aloud: "40 (30–55)"."""
    typical, low, high = (_rounded(v) for v in (span.typical, span.low, span.high))
    return f"{typical} ({low}–{high})"


def _rounded(value: float) -> str:
    """Two digits that count: a forecast knows no more."""
    return worded(float(f"{value:.2g}"), "count")


def outlook_data(situation: "Situation") -> dict[str, Any]:
    """Return the outlooks as plain data, with the keys this module's first lines name."""
    plan = situation.plan
    return {
        "plan": plan.title,
        "positions": {part_label(plan, i): p for i, p in situation.positions.items()},
        "batteries": [_battery(situation, i, outlook) for i, outlook in situation.outlooks.items()],
    }


def _battery(situation: "Situation", part_id: str, outlook: "Outlook") -> dict[str, Any]:
    return {
        "id": part_id,
        "designation": part_label(situation.plan, part_id),
        "label": situation.plan.parts[part_id].label,
        "hours": outlook.hours._asdict(),
        "sessions": outlook.sessions._asdict(),
        "days": outlook.days._asdict(),
        "swap_on": outlook.swap_on,
        "first_load_a": outlook.first_load_a,
        "end_reason": outlook.end_reason,
        "words": outlook.words,
        "swap_between": outlook.swap_between,
        "end_v": outlook.end_v,
        "spare_v": outlook.spare_v,
        "counted_from": outlook.counted_from,
        "measured": outlook.measured,
        "notes": outlook.notes,
        "curve": outlook.curve._asdict(),
    }
