"""Which panel lies on the bench, which side of it is up, and what is chosen on its face; not undone."""

from collections.abc import Iterable
from typing import Literal, NamedTuple

from PySide6.QtCore import QObject, Signal

from app.selection import Selection
from wiring.plan.panel import Panel

LINE_MM, LETTERS_MM = 4.0, 3.5


class FaceItem(NamedTuple):
    """A track line or a legend of a face, by its number, from 0 on."""

    sort: Literal["line", "text"]
    number: int


class Pencil(NamedTuple):
    """What the next track line and the next legend look like."""

    line_mm: float = LINE_MM
    line_colour: str = "BK"
    letters_mm: float = LETTERS_MM
    letters_colour: str = "BK"


class Bench(QObject):
    """The canvas and the inspector both look at it; `panel` is "" while nothing lies on it."""

    changed = Signal()
    tool_wanted = Signal(str)  # "line", "text" or "select"

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.panel = ""
        self.behind = False
        self.items: frozenset[FaceItem] = frozenset()
        self.pencil = Pencil()

    def lay(self, panel_id: str) -> None:
        """Lay a panel on the bench, front up; "" takes away what lies there."""
        if panel_id != self.panel:
            self.panel, self.behind, self.items = panel_id, False, frozenset()
            self.changed.emit()

    def turn_over(self, behind: bool) -> None:
        """Show the front, or the back with left and right swapped."""
        if behind != self.behind:
            self.behind = behind
            self.changed.emit()

    def choose(self, items: Iterable[FaceItem]) -> None:
        """Choose exactly these lines and legends."""
        new = frozenset(items)
        if new != self.items:
            self.items = new
            self.changed.emit()

    def sharpen(self, pencil: Pencil) -> None:
        """Draw differently from now on."""
        if pencil != self.pencil:
            self.pencil = pencil
            self.changed.emit()

    def keep_to(self, panel: Panel | None) -> None:
        """Forget what is no longer there."""
        if panel is None:
            self.lay("")
            return
        counts = {"line": len(panel.lines), "text": len(panel.texts)}
        self.choose(item for item in self.items if item.number < counts[item.sort])


def bench_of(selection: Selection) -> Bench:
    """Return the one bench that goes with a selection."""
    found = selection.findChild(Bench)
    return found if isinstance(found, Bench) else Bench(selection)
