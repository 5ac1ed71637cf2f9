"""What a preview touches, among all that stands: where it would lie if the preview came true."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import TypeVar

from app.canvas.geometry import Geometry
from app.canvas.sight import Sight
from app.canvas.sub_plan import sub_plan
from wiring.catalogue.kind import Kind
from wiring.plan.changes import Changed, Changes, changes_between
from wiring.plan.plan import Plan

T = TypeVar("T")
AMONG_ALL_MOST = 40  # parts and wires touched; more are laid among themselves only, to stay within a frame
NONE = Changed(frozenset(), frozenset(), frozenset())


class Touched:
    """Lays out what is touched. Of very much it keeps arrays of its own from one preview to the next."""

    def __init__(self) -> None:
        self._plan: Plan | None = None
        self._geometry: Geometry | None = None

    @contextmanager
    def laid(self, sight: Sight, plan: Plan, touched: frozenset[str]) -> Iterator[Sight]:
        """Look at the plan as a preview has it; its wires lie in the lanes they will have beside all others.

        The arrays of what stands follow the preview and come back, for as long as this is entered.
        """
        if len(touched) > AMONG_ALL_MOST:
            some, geometry = self._apart(plan, touched, sight.kinds)
            yield sight._replace(plan=some, geometry=geometry)
            return
        stands, would = sight.plan, _with_touched(sight.plan, plan, touched)
        there, back = _changes(stands, would, touched), _changes(would, stands, touched)
        try:
            sight.geometry.follow(would, there)
            yield sight._replace(plan=would)
        finally:
            sight.geometry.follow(stands, back)

    def forget(self) -> None:
        """Let go of the last preview."""
        self._plan = self._geometry = None

    def _apart(self, plan: Plan, touched: frozenset[str], kinds: Mapping[str, Kind]) -> tuple[Plan, Geometry]:
        some = sub_plan(plan, touched)
        if self._plan is None or self._geometry is None or self._geometry.kinds is not kinds:
            self._geometry = Geometry(some, kinds)
        else:
            self._geometry.follow(some, changes_between(self._plan, some))
        self._plan = some
        return some, self._geometry


def _with_touched(stands: Plan, plan: Plan, touched: frozenset[str]) -> Plan:
    """Return a preview together with all it leaves alone: it may hold no more than what it touches."""
    return plan.with_changes(
        parts=_taken_over(stands.parts, plan.parts, touched),
        wires=_taken_over(stands.wires, plan.wires, touched),
    )


def _taken_over(stands: Mapping[str, T], news: Mapping[str, T], touched: frozenset[str]) -> dict[str, T]:
    table = dict(stands)
    for one in sorted(touched, key=lambda i: (len(i), i)):
        if one in news:
            table[one] = news[one]
        else:
            table.pop(one, None)
    return table


def _changes(old: Plan, new: Plan, touched: frozenset[str]) -> Changes:
    """Return what differs among what is touched."""
    return Changes(
        _changed(old.parts, new.parts, touched),
        _changed(old.wires, new.wires, touched),
        NONE,
        NONE,
        rest=False,
    )


def _changed(old: Mapping[str, object], new: Mapping[str, object], touched: frozenset[str]) -> Changed:
    before, after = touched & old.keys(), touched & new.keys()
    altered = frozenset(i for i in before & after if old[i] is not new[i])
    return Changed(frozenset(after - before), frozenset(before - after), altered)
