"""What differs between two plans, found by identity, so that a view repaints only that."""

from collections.abc import Mapping
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


def _table(old: Mapping[str, T], new: Mapping[str, T]) -> Changed:
    if old is new:
        return Changed(frozenset(), frozenset(), frozenset())
    return Changed(
        added=frozenset(new.keys() - old.keys()),
        removed=frozenset(old.keys() - new.keys()),
        altered=frozenset(k for k in new.keys() & old.keys() if new[k] is not old[k]),
    )
