"""Throws a switch or a motor from the inspector, and keeps a position as the one in use."""

from collections.abc import Mapping

from PySide6.QtCore import QSize
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
from app.theme.held_room import HeldRoom
from app.theme.sizes import least_width
from wiring.catalogue.kind import Kind
from wiring.edits.throw import keep_position
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

IN_A_ROW = 3


class PositionRow(QWidget):
    """One button for each position; the pressed one is how the part stands now."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self._part = ""
        self._positions: tuple[str, ...] = ()
        self._frame = QFrame(self)
        self._frame.setObjectName("views")
        self._grid = QGridLayout(self._frame)
        self._grid.setContentsMargins(3, 3, 3, 3)
        self._grid.setSpacing(2)
        self._group = QButtonGroup(self)
        self._buttons: list[QToolButton] = []
        self._keep = QPushButton("Keep this as how it stands in use", self)
        self._keep.setProperty("look", "plain")
        self._keep.setAccessibleName("Keep this position as how it stands in use")
        self._keep.clicked.connect(self._keep_now)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self._frame)
        column.addWidget(HeldRoom(self._keep, self))  # nothing below moves while a switch is thrown
        session.thrown.connect(self._follow)

    def show_part(self, part_id: str, kind: Kind) -> bool:
        """Show the positions of a part, or none; True when buttons had to be made for them."""
        names = tuple(p.name for p in kind.positions) if part_id else ()
        before = len(self._buttons)
        while len(self._buttons) < len(names):
            self._add_button()
        for number, button in enumerate(self._buttons):
            there = number < len(names)
            button.setVisible(there)
            if there:
                button.setText(names[number])
                button.setAccessibleName(f"Throw to {names[number]}")
        for column in range(IN_A_ROW):
            self._grid.setColumnStretch(column, int(column < len(names)))
        self._part, self._positions = part_id, names
        return len(self._buttons) > before

    def refresh(self) -> None:
        """Show how the part stands."""
        if self._part:
            self._show_stand(self._session.positions)

    def _follow(self, positions: Mapping[str, str]) -> None:
        if self._part:
            self._show_stand(positions)

    def _show_stand(self, positions: Mapping[str, str]) -> None:
        stands = positions.get(self._part)
        # An exclusive group would not let go of the last button that was pressed.
        self._group.setExclusive(False)
        for name, button in zip(self._positions, self._buttons, strict=False):
            if button.isChecked() != (name == stands):
                before = _room(button)
                button.setChecked(name == stands)
                if _room(button) != before:  # the pressed one is set in bolder type
                    button.updateGeometry()
        self._group.setExclusive(True)
        self._keep.setVisible(stands is not None and stands != self._usual())

    def _usual(self) -> str | None:
        part = self._session.plan.parts.get(self._part)
        alone = Plan(parts={self._part: part} if part is not None else {})
        return in_use(alone, self._session.kinds).get(self._part)

    def _add_button(self) -> None:
        number = len(self._buttons)
        button = QToolButton(self._frame)
        button.setCheckable(True)
        least_width(button, 64)
        button.pressed.connect(lambda: self._session.foresee(self._part, self._positions[number]))
        button.clicked.connect(lambda: self._session.throw(self._part, self._positions[number]))
        self._group.addButton(button)
        self._buttons.append(button)
        self._grid.addWidget(button, number // IN_A_ROW, number % IN_A_ROW)

    def _keep_now(self) -> None:
        stands = self._session.positions.get(self._part)
        if stands is not None:
            self._session.do(keep_position(self._part, stands, kinds=self._session.kinds))


def _room(button: QToolButton) -> QSize:
    return button.sizeHint().expandedTo(button.minimumSize())
