"""The ticks a carry sheet gives back: which wires were made, and what each of them was when it was made."""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from wiring.files.refusals import NotReadable
from wiring.plan.names import WireId
from wiring.plan.plan import Plan
from wiring.sheets.carry.tick_keys import wire_key

FORMAT = "underboard ticks"
VERSION = 1
LARGEST_BYTES = 8 * 1024 * 1024


class TickFile(NamedTuple):
    """Wires ticked, and wires whose tick was taken off, each with the key of what it was."""

    plan: str  # title
    built: Mapping[WireId, str]
    undone: Mapping[WireId, str]


class Told(NamedTuple):
    """What ticks mean for a plan as it is now."""

    built: tuple[WireId, ...]
    undone: tuple[WireId, ...]
    changed: tuple[WireId, ...]  # in the plan, but with another end, size or colour than when it was ticked
    gone: tuple[WireId, ...]  # no longer in the plan


def read_ticks(path: Path) -> TickFile:
    """Return the ticks of a file; NotReadable says in one sentence why there are none."""
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_BYTES + 1)
    except OSError as error:
        why = (error.strerror or "the disk refused").lower()
        raise NotReadable(f"{path.name} cannot be opened ({why}); check its name and folder.") from None
    try:
        return ticks_in(data)
    except NotReadable as reason:
        raise NotReadable(f"{path.name}: {reason}") from None


def ticks_in(data: bytes) -> TickFile:
    """Return the ticks that bytes hold; NotReadable when they hold none."""
    none = NotReadable(
        "there are no ticks in it; save them on the carry sheet with the tick sign and try again."
    )
    if len(data) > LARGEST_BYTES:
        raise none
    try:
        raw = json.loads(data.decode("utf-8-sig"))
    except (ValueError, RecursionError):
        raise none from None
    if not isinstance(raw, dict) or raw.get("format") != FORMAT:
        raise none
    if raw.get("version") != VERSION:
        raise NotReadable(
            "the ticks were saved by another version of the program; make the carry sheet anew."
        )
    built, undone = _keys(raw.get("built", {})), _keys(raw.get("undone", {}))
    title = raw.get("plan", "")
    if built is None or undone is None or not isinstance(title, str) or built.keys() & undone.keys():
        raise NotReadable("the ticks in it are damaged; save or copy them from the carry sheet once more.")
    return TickFile(title, built, undone)


def _keys(table: object) -> dict[WireId, str] | None:
    if not isinstance(table, dict) or not all(isinstance(v, str) for v in table.values()):
        return None
    return table


def told_by(ticks: TickFile, plan: Plan) -> Told:
    """Return what the ticks say about the wires of a plan; a wire changed since is nobody's made wire."""
    every = {**ticks.built, **ticks.undone}
    gone = tuple(wire for wire in every if wire not in plan.wires)
    kept = [wire for wire in every if wire in plan.wires]
    same = {wire for wire in kept if wire_key(plan.wires[wire]) == every[wire]}
    return Told(
        tuple(w for w in ticks.built if w in same),
        tuple(w for w in ticks.undone if w in same),
        tuple(w for w in kept if w not in same),
        gone,
    )
