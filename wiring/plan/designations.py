"""Reference designations as IEC 81346 and IEC 61082 write them: ``-E4``, ``-X1:3``, ``-W12``."""

from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan


def part_label(plan: Plan, part_id: str) -> str:
    """Return ``-E4`` for a part of the plan."""
    return f"-{plan.parts[part_id].designation}"


def terminal_label(plan: Plan, ref: TerminalRef) -> str:
    """Return ``-X1:3`` for a terminal of a part of the plan."""
    return f"{part_label(plan, ref.part)}:{ref.terminal}"


def next_designation(plan: Plan, letter: str) -> str:
    """Return the letter with the lowest number that no part of the plan has."""
    taken = {p.designation for p in plan.parts.values()}
    number = 1
    while f"{letter}{number}" in taken:
        number += 1
    return f"{letter}{number}"
