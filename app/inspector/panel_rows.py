"""The panels of a plan as a small table: name, width and height of the face."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from app.inspector.committing import committed
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ValueField
from app.session import Session
from app.theme.icons import icon
from wiring.edits.panels import change_panel, remove_panel
from wiring.plan.panel import Panel

SIZE_WIDTH, REMOVE_WIDTH = 60, 26
SIDES = (("width_mm", "Wide"), ("height_mm", "High"))


class PanelRows(QWidget):
    """One row a panel."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self.rows: dict[str, PanelRow] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)
        self._column.addLayout(_heads(self))

    def refresh(self) -> None:
        """Show the panels as they are now."""
        plan = self._session.plan
        for gone in self.rows.keys() - plan.panels.keys():
            row = self.rows.pop(gone)
            row.hide()
            row.deleteLater()
        for panel_id, panel in plan.panels.items():
            if panel_id not in self.rows:
                self.rows[panel_id] = PanelRow(self._session, panel_id, self)
                self._column.addWidget(self.rows[panel_id])
            self.rows[panel_id].show_panel(panel, plan.habits.units)


class PanelRow(QWidget):
    """One panel."""

    def __init__(self, session: Session, panel_id: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._id = session, panel_id
        self.name = TypedField("Name of the panel", lambda t: self._change(name=t.strip()), self, bare=True)
        self.sizes: dict[str, ValueField] = {}
        self._fault = QLabel(self)
        self._fault.setProperty("look", "wrong")
        self._fault.setWordWrap(True)
        self._fault.hide()
        line = QHBoxLayout()
        line.setSpacing(4)
        line.addWidget(self.name, 1)
        for side, word in SIDES:
            field = ValueField(f"{word}, the panel's face", "length", self._size(side), self, bare=True)
            field.setFixedWidth(SIZE_WIDTH)
            field.editor.setObjectName(f"panel_{side}")
            self.sizes[side] = field
            line.addWidget(field)
        remove = QToolButton(self)
        remove.setIcon(icon("close"))
        remove.setFixedWidth(REMOVE_WIDTH)
        remove.setProperty("look", "small")
        remove.setToolTip("Take this panel away; its parts stay")
        remove.setAccessibleName("Take this panel away")
        # Taking a panel away deletes this very button, so the click must be over first.
        remove.clicked.connect(lambda: self._session.do(remove_panel(self._id)))
        line.addWidget(remove)
        fields: tuple[TypedField, ...] = (self.name, *self.sizes.values())
        for each in fields:
            each.faulted.connect(self._show_fault)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addLayout(line)
        column.addWidget(self._fault)

    def show_panel(self, panel: Panel, units: str) -> None:
        """Show the panel as it is now."""
        self.name.show_text(panel.name)
        for side, field in self.sizes.items():
            field.show_units(units)
            field.show_value(getattr(panel, side) / 1000)

    def _size(self, side: str) -> Callable[[Any], str]:
        return lambda metres: self._change(**{side: metres * 1000})

    def _change(self, **fields: Any) -> str:  # noqa: ANN401 - each field has its own type
        return committed(self._session, change_panel(self._id, **fields))

    def _show_fault(self, sentence: str) -> None:
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))


def _heads(parent: QWidget) -> QGridLayout:
    grid = QGridLayout()
    grid.setSpacing(4)
    grid.setColumnStretch(0, 1)
    for column, (text, width) in enumerate(
        (("", 0), *((w, SIZE_WIDTH) for _, w in SIDES), ("", REMOVE_WIDTH))
    ):
        head = QLabel(text, parent)
        head.setProperty("look", "caption")
        if width:
            head.setFixedWidth(width)
        grid.addWidget(head, 0, column)
    return grid
