"""Terminals with more wires than fit under one screw."""

from collections import Counter
from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, listed
from wiring.plan.designations import terminal_label
from wiring.plan.names import TerminalRef

MOST = 2  # common practice, no source: a third wire under a screw works loose


def find(situation: Situation) -> Iterator[Finding]:
    """Find terminal-strip terminals with more than two wires, one finding for all of them."""
    plan = situation.plan
    counts = Counter(ref for wire in plan.wires.values() for ref in {wire.start, wire.end})
    refs = [
        ref
        for part, kind in situation.of("separate")
        for ref in (TerminalRef(part.id, terminal.name) for terminal in kind.terminals)
        if counts[ref] > MOST
    ]
    if refs:
        yield Finding(
            "terminal-crowded",
            Rank.NOTE,
            f"{listed([terminal_label(plan, ref) for ref in refs])} "
            f"{do(len(refs), 'takes', 'take')} more than {MOST} wires.",
            "No more than two wires hold well under one screw.",
            "Use a distribution block there, or bridge two terminals and share the wires out.",
            tuple(dict.fromkeys(ref.part for ref in refs)),
        )
