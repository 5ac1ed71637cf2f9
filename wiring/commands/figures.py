"""``underboard figures PLAN``: volts, amperes and watts of every supply, part and wire.

With ``--json``: ``plan`` (title), ``positions`` (designation to position), ``supplies``, ``parts``,
``wires`` (lists in plan order), ``terminals`` (``-E1:A`` to volts), ``circuits`` (lists of designations),
``problems`` (``code words parts wires``), ``residual_a``, ``dangers`` (how many), ``notes``. Each supply has
``id designation kind volts_v current_a power_w rated_a nominal_v limited``, each part ``id designation kind
label volts_v current_a power_w light state peak_a mean_a`` (light: output over rated output; on AC volts and
amperes are RMS, and mean_a is the average that diodes leave), each wire ``id label from to size colour
length_m current_a drop_v power_w ohms``, its current counted from start to end. All are SI units; null means
there is no such figure.
"""

from argparse import ArgumentParser, Namespace
from typing import TYPE_CHECKING, Any

from wiring.commands.json_text import json_text
from wiring.commands.opening import Opened, add_plan_arguments, open_plan
from wiring.commands.positions_text import positions_words
from wiring.commands.refusal import DANGER, FINE
from wiring.commands.table import Column, paragraph, table
from wiring.plan.designations import part_label, terminal_label
from wiring.quantities.wording import worded

if TYPE_CHECKING:
    from wiring.findings.situation import Situation

SUPPLIES = (
    Column("Supply"),
    Column("Kind", wraps=True),
    Column("Volts", right=True),
    Column("Current", right=True),
    Column("Power", right=True),
    Column("Of rated", right=True),
    Column("State", wraps=True),
)
PARTS = (
    Column("Part"),
    Column("What", wraps=True),
    Column("Volts", right=True),
    Column("Current", right=True),
    Column("Peak", right=True),
    Column("Power", right=True),
    Column("Light", right=True),
    Column("State", wraps=True),
)
WIRES = (
    Column("Wire"),
    Column("From", wraps=True),
    Column("To", wraps=True),
    Column("Size"),
    Column("Colour"),
    Column("Length", right=True),
    Column("Current", right=True),
    Column("Drop", right=True),
)

JOINTS = ("separate", "bus")  # strips and blocks: no volts across them, no current of their own


def add_arguments(parser: ArgumentParser) -> None:
    """Describe the arguments."""
    add_plan_arguments(parser)
    parser.add_argument("--json", action="store_true", help="write JSON for another program")


def run(args: Namespace) -> int:
    """Print the figures; 1 when a finding of danger goes with them."""
    from wiring.findings.finding import Rank
    from wiring.findings.situation import examine

    opened = open_plan(args)
    situation = examine(opened.plan, opened.kinds, opened.positions, outlooks=False)
    dangers = sum(f.rank is Rank.DANGER for f in situation.findings)
    if args.json:
        print(json_text({**figures_data(situation), "dangers": dangers, "notes": opened.notes}))
    else:
        print("\n\n".join(filter(None, _sections(opened, situation, dangers))))
    return DANGER if dangers else FINE


def _sections(opened: Opened, situation: "Situation", dangers: int) -> list[str]:
    if not opened.plan.parts:
        return [opened.plan.title, "The plan has no parts yet."]
    stands = positions_words(opened.plan, opened.kinds, opened.positions)
    heading = f"{opened.plan.title}\n{paragraph(stands)}"
    tables = [
        table(columns, rows)
        for columns, rows in (
            (SUPPLIES, _supply_rows(opened, situation)),
            (PARTS, _part_rows(opened, situation)),
            (WIRES, _wire_rows(opened, situation)),
        )
        if rows
    ]
    problems = [paragraph(p.words, "  ", "! ") for p in situation.figures.problems]
    ending = ""
    if dangers:
        what = "one danger" if dangers == 1 else f"{dangers} dangers"
        ending = paragraph(f"There {'is' if dangers == 1 else 'are'} {what}; see underboard check.")
    return [heading, *tables, "\n".join(problems), ending]


def _supply_rows(opened: Opened, situation: "Situation") -> list[list[str]]:
    rows = []
    for part_id, figure in situation.figures.supplies.items():
        kind = opened.kinds[opened.plan.parts[part_id].kind]
        share = figure.current_a / figure.rated_a if 0 < figure.rated_a < float("inf") else None
        rows.append(
            [
                part_label(opened.plan, part_id),
                kind.title,
                worded(figure.volts_v, "voltage"),
                worded(figure.current_a, "current"),
                worded(figure.power_w, "power"),
                "" if share is None else worded(share, "fraction"),
                "at its limit" if figure.limited else "",
            ]
        )
    return rows


def _part_rows(opened: Opened, situation: "Situation") -> list[list[str]]:
    figures = situation.figures
    rows = []
    for part in opened.plan.parts.values():
        figure = figures.parts.get(part.id)
        if figure is None or part.id in figures.supplies or opened.kinds[part.kind].behaviour in JOINTS:
            continue
        rows.append(
            [
                f"-{part.designation}",
                part.label or opened.kinds[part.kind].title,
                worded(figure.volts_v, "voltage"),
                worded(figure.current_a, "current"),
                "" if figure.peak_a is None else worded(figure.peak_a, "current"),
                worded(figure.power_w, "power"),
                "" if figure.light is None else worded(figure.light, "fraction"),
                figure.state,
            ]
        )
    return rows


def _wire_rows(opened: Opened, situation: "Situation") -> list[list[str]]:
    from wiring.routing.lengths import cut_length_m

    plan, rows = opened.plan, []
    for wire in plan.wires.values():
        figure = situation.figures.wires.get(wire.id)
        rows.append(
            [
                f"-{wire.label}",
                terminal_label(plan, wire.start),
                terminal_label(plan, wire.end),
                wire.size,
                wire.colour,
                worded(cut_length_m(plan, opened.kinds, wire), "length", opened.units),
                worded(abs(figure.current_a), "current") if figure else "",
                worded(abs(figure.drop_v), "voltage") if figure else "",
            ]
        )
    return rows


def figures_data(situation: "Situation") -> dict[str, Any]:
    """Return the figures as plain data, with the keys this module's first lines name."""
    from wiring.routing.lengths import cut_length_m

    plan, kinds, figures = situation.plan, situation.kinds, situation.figures
    named = {i: {"id": i, "designation": part_label(plan, i), "kind": p.kind} for i, p in plan.parts.items()}
    wires = []
    for wire in plan.wires.values():
        figure = figures.wires.get(wire.id)
        wires.append(
            {
                "id": wire.id,
                "label": f"-{wire.label}",
                "from": terminal_label(plan, wire.start),
                "to": terminal_label(plan, wire.end),
                "size": wire.size,
                "colour": wire.colour,
                "length_m": cut_length_m(plan, kinds, wire),
                "current_a": figure.current_a if figure else None,
                "drop_v": figure.drop_v if figure else None,
                "power_w": figure.power_w if figure else None,
                "ohms": figure.ohms if figure else None,
            }
        )
    return {
        "plan": plan.title,
        "positions": {part_label(plan, i): p for i, p in situation.positions.items()},
        "supplies": [{**named[i], **f._asdict()} for i, f in figures.supplies.items()],
        "parts": [
            {**named[i], "label": plan.parts[i].label, **f._asdict()} for i, f in figures.parts.items()
        ],
        "wires": wires,
        "terminals": {terminal_label(plan, ref): volts for ref, volts in figures.terminals.items()},
        "circuits": [[part_label(plan, i) for i in circuit] for circuit in figures.circuits],
        "problems": [
            {
                "code": p.code,
                "words": p.words,
                "parts": [part_label(plan, i) for i in p.parts],
                "wires": [f"-{plan.wires[i].label}" for i in p.wires],
            }
            for p in figures.problems
        ],
        "residual_a": figures.residual_a,
    }
