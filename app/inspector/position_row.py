"""Throws a switch or a motor from the inspector, and keeps a position as the one in use."""

from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QGridLayout,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.session import Session
from wiring.catalogue.kind import Kind
from wiring.edits.throw import keep_position
from wiring.plan.positions import in_use

IN_A_ROW = 3


class PositionRow(QWidget):
    """One button for each position; the pressed one is how the part stands now."""

    def __init__(self, session: Session, part_id: str, kind: Kind, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._part, self._kind = session, part_id, kind
        frame = QFrame(self)
        frame.setObjectName("views")
        grid = QGridLayout(frame)
        grid.setContentsMargins(3, 3, 3, 3)
        grid.setSpacing(2)
        self._group = QButtonGroup(self)
        self._buttons: dict[str, QToolButton] = {}
        for number, position in enumerate(kind.positions):
            button = QToolButton(frame)
            button.setText(position.name)
            button.setCheckable(True)
            button.setAccessibleName(f"Throw to {position.name}")
            button.setMinimumWidth(64)
            button.clicked.connect(lambda _on=False, name=position.name: session.throw(part_id, name))
            self._group.addButton(button)
            self._buttons[position.name] = button
            grid.addWidget(button, number // IN_A_ROW, number % IN_A_ROW)
            grid.setColumnStretch(number % IN_A_ROW, 1)
        self._keep = QPushButton("Keep this as how it stands in use", self)
        self._keep.setProperty("look", "plain")
        self._keep.setAccessibleName("Keep this position as how it stands in use")
        self._keep.clicked.connect(self._keep_now)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(frame)
        column.addWidget(self._keep)
        session.thrown.connect(self.refresh)
        self.refresh()

    def refresh(self, _positions: object = None) -> None:
        """Show how the part stands."""
        stands = self._session.positions.get(self._part)
        button = self._buttons.get(stands or "")
        if button is not None:
            button.setChecked(True)
        usual = in_use(self._session.plan, self._session.kinds).get(self._part)
        self._keep.setVisible(stands is not None and stands != usual)

    def _keep_now(self) -> None:
        stands = self._session.positions.get(self._part)
        if stands is not None:
            self._session.do(keep_position(self._part, stands, kinds=self._session.kinds))
