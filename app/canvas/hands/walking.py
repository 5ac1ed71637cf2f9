"""Where the keyboard goes from thing to thing of a plan, and from one sort of thing to the next."""

from collections.abc import Iterable

from app.ground_keys import BOARD, TRACK, joist_key
from wiring.plan.plan import Plan

SORTS = ("part", "wire", "wireway", "joist", "track", "board", "scene", "panel")
PLURALS = {"part": "parts", "wire": "wires", "wireway": "wireways", "joist": "joists", "track": "tracks"} | {
    "board": "the board",
    "scene": "scenes",
    "panel": "panels",
}


def things(plan: Plan, sort: str) -> tuple[str, ...]:
    """Return all of a sort in plan order, by id or as a selection names them."""
    if sort == "joist":
        return tuple(map(joist_key, range(len(plan.joists))))
    if sort == "track":
        return tuple(f"{TRACK}{index}" for index in range(len(plan.tracks)))
    if sort == "board":
        return (BOARD,) if plan.board else ()
    tables = {"part": plan.parts, "wire": plan.wires, "wireway": plan.wireways} | {
        "scene": plan.scenes,
        "panel": plan.panels,
    }
    return tuple(tables[sort])


def sort_of(plan: Plan, one: str) -> str:
    """Return the sort of a thing; "part" for what is none."""
    return next((sort for sort in SORTS if one in things(plan, sort)), "part")


def onward(plan: Plan, chosen: Iterable[str], here: str, step: int) -> str:
    """Return the thing after or before where the keyboard stands, of the same sort; "" past the last.

    `here` is what the keyboard reached last; "" when something else has selected since, and that counts.
    """
    ids = frozenset(chosen)
    row = things(plan, sort_of(plan, here or next(iter(sorted(ids)), "")))
    places = [row.index(here)] if here in row else [n for n, i in enumerate(row) if i in ids]
    at = (places[-1 if step > 0 else 0] + step) if places else (0 if step > 0 else len(row) - 1)
    return row[at] if 0 <= at < len(row) else ""


def other_sort(plan: Plan, chosen: Iterable[str], here: str, step: int) -> str:
    """Return the first thing of the next or last sort there is any of; from a part to a wire of its own."""
    one = here or next(iter(sorted(chosen)), "")
    now = SORTS.index(sort_of(plan, one)) if one else -1 if step > 0 else 0
    for away in range(1, len(SORTS) + 1):
        sort = SORTS[(now + step * away) % len(SORTS)]
        row = things(plan, sort)
        if not row:
            continue
        ends = [w.id for w in plan.wires.values() if one in (w.start.part, w.end.part)]
        return ends[0] if sort == "wire" and ends else row[0]
    return ""
