"""A card of the inspector: what it shows of the selection; it keeps up with the plan and its figures."""

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.inspector.tab_order import order_tabs
from app.session import Session
from app.solving import Answer


class Card(QWidget):
    """Sections one below the other, for things of one sort.

    A card is made once and kept: `take_up` shows other things on it, `refresh` follows the plan and
    `show_answer` the figures. Only the card in sight is told of anything.
    """

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self.session = session
        self.ids: tuple[str, ...] = ()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(16, 14, 16, 18)
        self._column.setSpacing(12)

    def add(self, widget: QWidget) -> None:
        """Put a section at the end."""
        self._column.addWidget(widget)

    def close_up(self) -> None:
        """Push what was added to the top."""
        self._column.addStretch(1)
        order_tabs(self)

    def take_up(self, ids: tuple[str, ...]) -> None:
        """Show these things from now on."""
        self.ids = ids
        self.refresh()

    def begin(self) -> None:
        """Forget what was unfolded or ticked on it: another plan is open."""

    def refresh(self) -> None:
        """Show the plan as it is now."""

    def show_answer(self, answer: Answer | None) -> None:
        """Show the figures of an answer; None while those of the plan as it is now are not known."""


MakesCard = Callable[[Session, QWidget], Card]
