"""Positions typed on the command line: ``S1=off,M2=reverse``."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.commands.refusal import Refused
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use


def read_positions(text: str, plan: Plan, kinds: Mapping[str, Kind]) -> dict[PartId, str]:
    """Return the positions a text sets, by part id; Refused names what the plan does not have."""
    parts = {p.designation: p for p in plan.parts.values()}
    found: dict[PartId, str] = {}
    for item in filter(None, (piece.strip() for piece in text.split(","))):
        name, sign, position = (piece.strip() for piece in item.partition("="))
        if not (sign and name):
            raise Refused(f"“{item}” sets no position; write it as S1=off.")
        part = parts.get(name.removeprefix("-"))
        if part is None:
            raise Refused(f"The plan has no part -{name.removeprefix('-')} to put into a position.")
        kind = kinds.get(part.kind)
        offered = [p.name for p in kind.positions] if kind else []
        if not offered:
            raise Refused(f"-{part.designation} is nothing that can be put into a position.")
        if position not in offered:
            raise Refused(
                f"-{part.designation} has no position “{position}”; it can be {' or '.join(offered)}."
            )
        found[part.id] = position
    return found


def positions_words(plan: Plan, kinds: Mapping[str, Kind], positions: Mapping[PartId, str]) -> str:
    """Return how the switches and motors stand, in one sentence: what differs from a running session."""
    usual = in_use(plan, kinds)
    named = [f"-{plan.parts[i].designation} {p}" for i, p in positions.items() if p != usual.get(i)]
    if not named:
        return "Everything stands as while a session runs."
    return f"{', '.join(named)}; everything else stands as while a session runs."
