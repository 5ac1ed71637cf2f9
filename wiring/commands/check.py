"""``underboard check PLAN``: what is wrong or weak, why, and what would mend it.

With ``--json``: ``plan`` (title), ``positions``, ``counts`` (``danger weak note``), ``findings`` (worst
first) and ``notes`` (what does not fit the catalogue). Each finding has ``rule rank what why mend parts
wires act``; ``rank`` is "danger", "weak" or "note", ``parts`` and ``wires`` are designations. ``act`` is the
one act that mends it, or null: ``name words parts wires values``, values in SI units.
"""

from argparse import ArgumentParser, Namespace
from typing import TYPE_CHECKING, Any

from wiring.commands.json_text import json_text
from wiring.commands.opening import add_plan_arguments, open_plan
from wiring.commands.refusal import DANGER, FINE
from wiring.commands.table import paragraph
from wiring.plan.designations import part_label

if TYPE_CHECKING:
    from wiring.findings.act import Act
    from wiring.findings.finding import Finding
    from wiring.findings.situation import Situation
    from wiring.plan.plan import Plan

# Shape and word, as on the plan: never a rank by colour alone.
MARKS = {"danger": "▲ DANGER", "weak": "◆ WEAK", "note": "● NOTE"}


def add_arguments(parser: ArgumentParser) -> None:
    """Describe the arguments."""
    add_plan_arguments(parser)
    parser.add_argument("--json", action="store_true", help="write JSON for another program")


def run(args: Namespace) -> int:
    """Print the findings; 1 when one is a danger or a part of the plan could not be looked at."""
    from wiring.findings.situation import examine

    opened = open_plan(args)
    situation = examine(opened.plan, opened.kinds, opened.positions, every_position=True)
    data = findings_data(situation)
    if args.json:
        print(json_text({**data, "notes": opened.notes}))
    else:
        print(paragraph(f"{opened.plan.title}: {_summary(data['counts'])}"))
        for finding in situation.findings:
            print("\n" + _words(opened.plan, finding))
    return DANGER if data["counts"]["danger"] or opened.notes else FINE


def _summary(counts: dict[str, int]) -> str:
    words = {
        "danger": ("danger", "dangers"),
        "weak": ("weak point", "weak points"),
        "note": ("note", "notes"),
    }
    said = [f"{n} {words[rank][n != 1]}" for rank, n in counts.items() if n]
    return ", ".join(said) if said else "nothing found to be wrong"


def _words(plan: "Plan", finding: "Finding") -> str:
    where = ", ".join(_where(plan, finding))
    lines = [
        f"{MARKS[finding.rank.name.lower()]}  {finding.rule}",
        paragraph(finding.what, "  "),
        paragraph(f"Why: {finding.why}", "       ", "  "),
        paragraph(f"Mend: {finding.mend}", "        ", "  "),
    ]
    if where:
        lines.append(paragraph(f"At: {where}", "      ", "  "))
    return "\n".join(lines)


def _where(plan: "Plan", finding: "Finding") -> list[str]:
    return [part_label(plan, i) for i in finding.parts] + [f"-{plan.wires[i].label}" for i in finding.wires]


def findings_data(situation: "Situation") -> dict[str, Any]:
    """Return the findings as plain data, with the keys this module's first lines name."""
    plan = situation.plan
    ranks = [f.rank.name.lower() for f in situation.findings]
    return {
        "plan": plan.title,
        "positions": {part_label(plan, i): p for i, p in situation.positions.items()},
        "counts": {rank: ranks.count(rank) for rank in MARKS},
        "findings": [
            {
                "rule": f.rule,
                "rank": f.rank.name.lower(),
                "what": f.what,
                "why": f.why,
                "mend": f.mend,
                "parts": [part_label(plan, i) for i in f.parts],
                "wires": [f"-{plan.wires[i].label}" for i in f.wires],
                "act": _act_data(plan, f.act) if f.act is not None else None,
            }
            for f in situation.findings
        ],
    }


def _act_data(plan: "Plan", act: "Act") -> dict[str, Any]:
    return {
        "name": act.name,
        "words": act.words,
        "parts": [part_label(plan, i) for i in act.parts],
        "wires": [f"-{plan.wires[i].label}" for i in act.wires],
        "values": dict(act.values),
    }
