"""The picture under the plan on the plan's card: how strong it shows, how it is turned."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QSlider, QVBoxLayout, QWidget

from app.inspector.committing import committed
from app.inspector.field_row import FieldRow
from app.inspector.plain_number import plain_number
from app.inspector.typed_field import TypedField
from app.session import Session
from wiring.edits.backdrop import remove_backdrop, set_backdrop, turn_backdrop

QUARTER_DEG = 90.0


class BackdropRows(QWidget):
    """Strength, turn, and away with it."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self.strength = QSlider(Qt.Orientation.Horizontal)
        self.strength.setObjectName("backdropStrength")
        self.strength.setRange(0, 100)
        self.strength.setPageStep(10)
        self.strength.valueChanged.connect(self._set_strength)
        self.turn = TypedField("Turn, degrees", self._set_turn, self)
        self.turn.editor.setObjectName("backdropTurn")
        self.turn.align_right()
        quarter = QPushButton("Turn a quarter", self)
        quarter.setObjectName("backdropQuarter")
        quarter.clicked.connect(lambda: self._turn_to(self._turn_deg() + QUARTER_DEG))
        away = QPushButton("Take it away", self)
        away.clicked.connect(lambda: session.do(remove_backdrop()))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(7)
        column.addWidget(FieldRow("Strength", self.strength, self))
        column.addWidget(self.turn)
        for button in (quarter, away):
            button.setProperty("look", "plain")
            column.addWidget(button)

    def refresh(self) -> None:
        """Show the picture as it lies now."""
        backdrop = self._session.plan.backdrop
        if backdrop is None:
            return
        self.strength.blockSignals(True)
        self.strength.setValue(round(backdrop.strength * 100))
        self.strength.blockSignals(False)
        self.strength.setToolTip(f"{backdrop.strength:.0%} of it shows")
        self.turn.show_text(f"{backdrop.turn_deg:g}")

    def _set_strength(self, percent: int) -> None:
        edit = set_backdrop(strength=percent / 100)._replace(label="Dim picture")
        self._session.do(edit, joins_last=True)

    def _set_turn(self, typed: str) -> str:
        try:
            return self._turn_to(plain_number(typed.strip().removesuffix("°")))
        except ValueError as refusal:
            return str(refusal)

    def _turn_to(self, degrees: float) -> str:
        return committed(self._session, turn_backdrop(degrees))

    def _turn_deg(self) -> float:
        backdrop = self._session.plan.backdrop
        return backdrop.turn_deg if backdrop is not None else 0.0
