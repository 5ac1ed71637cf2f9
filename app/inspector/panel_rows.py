"""The panels of a plan as a small table: name, width and height of the face."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QToolButton, QVBoxLayout, QWidget

from app.inspector.committing import committed
from app.inspector.named_row import REMOVE_WIDTH, NamedRow, drop, heads, remove_button
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ON_FACE, ValueField
from app.session import Session
from app.theme.icons import icon
from app.theme.sizes import fix_width
from wiring.edits.panels import change_panel, remove_panel
from wiring.plan.panel import Panel

BENCH_WIDTH = 26

SIZE_WIDTH = 66
SIDES = (("width_mm", "Wide"), ("height_mm", "High"))


class PanelRows(QWidget):
    """One row a panel."""

    def __init__(self, session: Session, parent: QWidget, lay: Callable[[str], None]) -> None:
        super().__init__(parent)
        self._session, self._lay = session, lay
        self.rows: dict[str, PanelRow] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)
        self._column.addLayout(
            heads(
                self,
                (("", 0), *((word, SIZE_WIDTH) for _, word in SIDES), ("", BENCH_WIDTH), ("", REMOVE_WIDTH)),
            )
        )

    def begin(self) -> None:
        """Forget the rows of another plan."""
        drop(self.rows, self.rows.keys())

    def refresh(self) -> None:
        """Show the panels as they are now."""
        plan = self._session.plan
        drop(self.rows, self.rows.keys() - plan.panels.keys())
        for panel_id, panel in plan.panels.items():
            if panel_id not in self.rows:
                self.rows[panel_id] = PanelRow(self._session, panel_id, self, self._lay)
                self._column.addWidget(self.rows[panel_id])
            self.rows[panel_id].show_panel(panel, plan.habits.units)


class PanelRow(NamedRow):
    """One panel."""

    def __init__(self, session: Session, panel_id: str, parent: QWidget, lay: Callable[[str], None]) -> None:
        super().__init__(parent)
        self._session, self._id = session, panel_id
        self.name = TypedField("Name of the panel", lambda t: self._change(name=t.strip()), self, bare=True)
        self.sizes: dict[str, ValueField] = {}
        self.lead_with(self.name)
        for side, word in SIDES:
            field = ValueField(f"{word}, the panel's face", ON_FACE, self._size(side), self, bare=True)
            fix_width(field, SIZE_WIDTH)
            field.editor.setObjectName(f"panel_{side}")
            self.sizes[side] = field
            self.line.addWidget(field)
        self.line.addWidget(self._bench_button(lay))
        self.line.addWidget(remove_button(self, "panel", lambda: self._session.do(remove_panel(self._id))))
        self.listen_to((self.name, *self.sizes.values()))

    def show_panel(self, panel: Panel, units: str) -> None:
        """Show the panel as it is now."""
        self.name.show_text(panel.name)
        for side, field in self.sizes.items():
            field.show_units(units)
            field.show_value(getattr(panel, side) / 1000)
        self.fit_name()

    def _bench_button(self, lay: Callable[[str], None]) -> QToolButton:
        button = QToolButton(self)
        button.setIcon(icon("fit"))
        button.setObjectName("layOnBench")
        button.setProperty("look", "small")
        button.setFixedWidth(BENCH_WIDTH)
        button.setToolTip("Lay this panel on the bench: its face at its own size")
        button.setAccessibleName("Lay this panel on the bench")
        # A panel on the bench has a card of its own, which takes this one's place: the click ends first.
        button.clicked.connect(lambda: QTimer.singleShot(0, lambda: lay(self._id)))
        return button

    def _size(self, side: str) -> Callable[[Any], str]:
        return lambda metres: self._change(**{side: metres * 1000})

    def _change(self, **fields: Any) -> str:  # noqa: ANN401 - each field has its own type
        return committed(self._session, change_panel(self._id, kinds=self._session.kinds, **fields))
