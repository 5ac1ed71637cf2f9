"""Reference designations as IEC 81346 and IEC 61082 write them: ``-E4``, ``-X1:3``, ``-W12``."""

from collections.abc import Container
from itertools import count

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
    return next_numbered(letter, {p.designation for p in plan.parts.values()})


def next_numbered(stem: str, taken: Container[str]) -> str:
    """Return the stem with the lowest number that is not taken with it."""
    return next(name for number in count(1) if (name := f"{stem}{number}") not in taken)
