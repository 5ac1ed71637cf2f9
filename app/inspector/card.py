"""A card of the inspector: what it shows of the selection; it keeps up with the plan and its figures."""

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.session import Session
from app.solving import Answer


class Card(QWidget):
    """Sections one below the other; `refresh` follows the plan, `show_answer` the figures."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self.session = session
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(16, 14, 16, 18)
        self._column.setSpacing(12)

    def add(self, widget: QWidget) -> None:
        """Put a section at the end."""
        self._column.addWidget(widget)

    def close_up(self) -> None:
        """Push what was added to the top."""
        self._column.addStretch(1)

    def refresh(self) -> None:
        """Show the plan as it is now."""

    def show_answer(self, answer: Answer) -> None:
        """Show the figures of an answer."""


MakesCard = Callable[[Session, tuple[str, ...], QWidget], Card]
