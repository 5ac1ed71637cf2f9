"""What differs between two plans, found by identity, so that a view repaints only that."""

from collections.abc import Mapping
from itertools import compress
from operator import is_, is_not
from typing import NamedTuple, TypeVar

from wiring.plan.plan import Plan

T = TypeVar("T")
BESIDE = (
    *("title", "author", "habits", "use", "board", "tracks", "joists", "wireways", "backdrop"),
    *("battery_log", "prices", "circuit_colours"),
)


class Changed(NamedTuple):
    """Ids of one table that are new, gone or altered."""

    added: frozenset[str]
    removed: frozenset[str]
    altered: frozenset[str]

    @property
    def any(self) -> bool:
        """Whether anything differs."""
        return bool(self.added or self.removed or self.altered)


class Changes(NamedTuple):
    """What differs between two plans."""

    parts: Changed
    wires: Changed
    scenes: Changed
    panels: Changed
    rest: bool  # whatever stands in BESIDE

    @property
    def ids(self) -> frozenset[str]:
        """Ids of every part or wire that is new or altered: what to select after an undo."""
        return self.parts.added | self.parts.altered | self.wires.added | self.wires.altered


def changes_between(old: Plan, new: Plan) -> Changes:
    """Return what differs; a record counts as altered when it is another object."""
    rest = any(getattr(old, name) is not getattr(new, name) for name in BESIDE)
    return Changes(
        _table(old.parts, new.parts),
        _table(old.wires, new.wires),
        _table(old.scenes, new.scenes),
        _table(old.panels, new.panels),
        rest,
    )


def other_records(old: Mapping[str, T], new: Mapping[str, T]) -> list[str]:
    """Return the ids of every record that is new or another object, in the order of the new table."""
    if old is new:
        return []
    if len(old) == len(new) and all(map(is_, old, new)):  # by far the most edits: the same ids in a row
        return list(compress(new, map(is_not, new.values(), old.values())))
    known = dict(old)
    return [i for i, record in new.items() if known.get(i) is not record]


def _table(old: Mapping[str, T], new: Mapping[str, T]) -> Changed:
    others = other_records(old, new)
    added = frozenset(i for i in others if i not in old)
    is_smaller = len(old) + len(added) > len(new)
    removed = frozenset(old.keys() - new.keys()) if is_smaller else frozenset[str]()
    return Changed(added, removed, frozenset(others) - added)
