"""What is selected: parts and wires, or one thing of the ground; not part of the plan and not undone."""

from collections.abc import Iterable

from PySide6.QtCore import QObject, Signal

from app.ground_keys import ground_is_there
from wiring.plan.plan import Plan


class Selection(QObject):
    """A set of part and wire ids; while it is empty, `ground` may name a wireway or a joist."""

    changed = Signal(object)  # frozenset of ids

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.ids: frozenset[str] = frozenset()
        self.ground = ""

    def select(self, ids: Iterable[str], ground: str = "") -> None:
        """Select exactly these; `ground` only counts where there are none."""
        new = frozenset(ids)
        ground = "" if new else ground
        if (new, ground) != (self.ids, self.ground):
            self.ids, self.ground = new, ground
            self.changed.emit(new)

    def toggle(self, one: str) -> None:
        """Add one to the selection, or take it out."""
        self.select(self.ids ^ {one})

    def clear(self) -> None:
        """Select nothing."""
        self.select(())

    def keep_to(self, plan: Plan, ids: Iterable[str] | None = None) -> None:
        """Select what of this, or of the ids, a plan has."""
        wanted = self.ids if ids is None else ids
        ground = self.ground if ids is None and ground_is_there(plan, self.ground) else ""
        self.select((i for i in wanted if i in plan.parts or i in plan.wires), ground)
