"""Parts in several positions at once: one mould with all branches, and each position's values."""

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.compiled import Mould

OPEN_OHMS = 1e15  # of a contact that is open; its current is taken for nought
OPEN_ROW = (OPEN_OHMS, *((0.0,) * (WIDTH - 1)))
RESISTOR = LAW_NUMBER["resistor"]
Branch = tuple[int, tuple[int, int], str, int]  # law, ends, role, and which of those that are alike


class Wide(NamedTuple):
    """The mould with every branch, and per mould it was made of the rows of those branches."""

    mould: Mould
    rows: tuple[tuple[tuple[float, ...], ...], ...]
    absent: tuple[tuple[bool, ...], ...]


def wide_mould(moulds: Sequence[Mould]) -> Wide | None:
    """Return moulds of one kind as one; None where they differ in more than values and closed contacts."""
    first = moulds[0]
    told = [dict(zip(_branches(mould), mould.rows, strict=True)) for mould in moulds]
    every: dict[Branch, tuple[float, ...]] = {}
    for rows in told:
        for branch, row in rows.items():
            every.setdefault(branch, row)
    for mould, rows in zip(moulds, told, strict=True):
        if mould.trouble or mould.ties != first.ties:
            return None
        if any(branch[0] != RESISTOR and branch not in rows for branch in every):
            return None
    varying = {branch for branch in every if any(branch not in rows for rows in told)}
    mould = first._replace(
        laws=tuple(branch[0] for branch in every),
        ends=tuple(branch[1] for branch in every),
        roles=tuple(branch[2] for branch in every),
        rows=tuple(OPEN_ROW if branch in varying else row for branch, row in every.items()),
    )
    return Wide(
        mould,
        tuple(tuple(rows.get(branch, OPEN_ROW) for branch in every) for rows in told),
        tuple(tuple(branch not in rows for branch in every) for rows in told),
    )


def _branches(mould: Mould) -> list[Branch]:
    seen: Counter[tuple[int, tuple[int, int], str]] = Counter()
    found: list[Branch] = []
    for key in zip(mould.laws, mould.ends, mould.roles, strict=True):
        found.append((*key, seen[key]))
        seen[key] += 1
    return found
