"""Says that an outlook counts with switches as they are thrown just now; one press puts them back."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from app.inspector.act_button import ActButton
from app.session import Session
from wiring.plan.designations import part_label

NAMED = 3


class ThrownLine(QWidget):
    """Hidden while everything stands as in use."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self.words = QLabel(self)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.button = ActButton("Put all back as in use", "put_back", self)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.words)
        row.addWidget(self.button)
        row.addStretch(1)

    def follow(self, *, counted: bool) -> None:
        """Show what is thrown, where an outlook counts with it."""
        plan, thrown = self._session.plan, self._session.thrown_apart
        told = [f"{part_label(plan, part)} {position}" for part, position in list(thrown.items())[:NAMED]]
        more = f" and {len(thrown) - NAMED} more" if len(thrown) > NAMED else ""
        self.words.setText(f"Counted as switches stand just now: {', '.join(told)}{more}.")
        self.setVisible(counted and bool(thrown))
