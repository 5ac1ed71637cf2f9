"""What is selected: parts, wires and things of the ground; not part of the plan and not undone."""

from collections.abc import Iterable

from PySide6.QtCore import QObject, Signal

from app.ground_keys import ground_is_there
from wiring.plan.plan import Plan


class Selection(QObject):
    """A set of part and wire ids, and one of what lies on or under the ground, see `app.ground_keys`."""

    changed = Signal(object)  # frozenset of ids

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.ids: frozenset[str] = frozenset()
        self.grounds: frozenset[str] = frozenset()

    @property
    def ground(self) -> str:
        """What of the ground is selected, if nothing else is; "" otherwise."""
        return next(iter(self.grounds)) if len(self.grounds) == 1 and not self.ids else ""

    def select(self, ids: Iterable[str], ground: str | Iterable[str] = ()) -> None:
        """Select exactly these: parts and wires, and one or several things of the ground."""
        new = frozenset(ids)
        grounds = frozenset(g for g in ((ground,) if isinstance(ground, str) else ground) if g)
        if (new, grounds) != (self.ids, self.grounds):
            self.ids, self.grounds = new, grounds
            self.changed.emit(new)

    def toggle(self, one: str) -> None:
        """Add one to the selection, or take it out."""
        self.select(self.ids ^ {one}, self.grounds)

    def clear(self) -> None:
        """Select nothing."""
        self.select(())

    def keep_to(self, plan: Plan, ids: Iterable[str] | None = None) -> None:
        """Select what of this, or of the ids, a plan has."""
        wanted = self.ids if ids is None else ids
        grounds = (g for g in self.grounds if ground_is_there(plan, g)) if ids is None else ()
        self.select((i for i in wanted if i in plan.parts or i in plan.wires), grounds)
