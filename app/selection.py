"""Which parts and wires are selected; not part of the plan and not undone."""

from collections.abc import Iterable

from PySide6.QtCore import QObject, Signal


class Selection(QObject):
    """A set of part and wire ids."""

    changed = Signal(object)  # frozenset of ids

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.ids: frozenset[str] = frozenset()

    def select(self, ids: Iterable[str]) -> None:
        """Select exactly these."""
        new = frozenset(ids)
        if new != self.ids:
            self.ids = new
            self.changed.emit(new)

    def toggle(self, one: str) -> None:
        """Add one to the selection, or take it out."""
        self.select(self.ids ^ {one})

    def clear(self) -> None:
        """Select nothing."""
        self.select(())
