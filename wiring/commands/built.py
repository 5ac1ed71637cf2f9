"""``underboard built PLAN TICKS.json``: mark the wires ticked on a carry sheet as built in the plan."""

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from wiring.commands.opening import tell
from wiring.commands.refusal import FINE, Refused

if TYPE_CHECKING:
    from wiring.plan.plan import Plan


def add_arguments(parser: ArgumentParser) -> None:
    """Describe the arguments."""
    parser.add_argument("plan", type=Path, metavar="PLAN", help="a plan file, ending in .underboard")
    parser.add_argument("ticks", type=Path, metavar="TICKS.json", help="the ticks saved on the carry sheet")
    parser.add_argument(
        "--out", type=Path, metavar="OUT", help="write the plan to this file (over the plan itself)"
    )


def run(args: Namespace) -> int:
    """Mark the wires, write the plan, and say what was done and what was left as it is."""
    from wiring.edits.set_built import set_built
    from wiring.files.format import SUFFIX
    from wiring.files.store import load, save
    from wiring.findings.words import wire_names
    from wiring.sheets.carry.tick_file import read_ticks, told_by

    out = args.out or args.plan
    if out.suffix.lower() != SUFFIX:
        raise Refused(f"{out.name} must end in {SUFFIX}, as a plan is written to it.")
    plan = load(args.plan)
    ticks = read_ticks(args.ticks)
    told = told_by(ticks, plan)
    if not (told.built or told.undone) and (told.changed or told.gone):
        raise Refused(
            f"None of the ticked wires stands in {args.plan.name} as it was ticked; choose the plan that the "
            f"carry sheet “{ticks.plan[:80]}” was made from."
        )
    if told.changed:
        tell(f"{wire_names(plan, told.changed)} changed since the sheet was made; left as in the plan.")
    if told.gone:
        count = f"{len(told.gone)} ticked wire{'' if len(told.gone) == 1 else 's'}"
        tell(f"The plan no longer has {count}; left out.")
    new = set_built(told.built, True).apply(plan)
    new = set_built(told.undone, False).apply(new)
    if new is plan and out == args.plan:
        print(f"Nothing to write: {args.plan} has these ticks already, {_state(plan)}")
        return FINE
    save(new, out)
    print(f"Wrote {out}: {_state(new)}")
    return FINE


def _state(plan: "Plan") -> str:
    built = sum(wire.built for wire in plan.wires.values())
    return f"{built} of {len(plan.wires)} wires are built"
