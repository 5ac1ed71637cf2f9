"""The safety notes a plan's own parts have earned, in the order they matter; their words are data."""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.plan import Plan
from wiring.sheets.blocks import Block, bullets, heading, paragraph

FIRST, LAST = "always", "last"


class Note(NamedTuple):
    """A note's heading and its sentences."""

    title: str
    lines: tuple[str, ...]


@cache
def safety_notes() -> Mapping[str, Note]:
    """Return all notes by the name a kind's `cautions` give, in printing order."""
    text = Path(__file__).with_name("safety_notes.toml").read_text(encoding="utf-8")
    return {name: Note(row["title"], tuple(row["lines"])) for name, row in tomllib.loads(text).items()}


def earned_notes(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[Note, ...]:
    """Return the notes for a plan: the general one, those its parts name, and the closing one."""
    named = {name for p in plan.parts.values() if p.kind in kinds for name in kinds[p.kind].cautions}
    return tuple(note for name, note in safety_notes().items() if name in named or name in (FIRST, LAST))


def earned_titles(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[str, ...]:
    """Return the titles of the notes a plan's own parts call for; none for one that earns no caution."""
    general = {safety_notes()[FIRST].title, safety_notes()[LAST].title}
    return tuple(n.title for n in earned_notes(plan, kinds) if n.title not in general)


def safety_blocks(plan: Plan, kinds: Mapping[str, Kind], width: float) -> tuple[Block, ...]:
    """Return the notes as blocks for the sheets."""
    blocks: list[Block] = [heading("Safety notes", width, anchor="safety")]
    blocks += paragraph("Only what the parts of this plan call for. Read them once before you begin.", width)
    for note in earned_notes(plan, kinds):
        blocks.append(heading(note.title, width, level=2))
        blocks += bullets(note.lines, width)
    return tuple(blocks)
