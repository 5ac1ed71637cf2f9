"""The card of a joist: how long, thick and deep it is, and what crosses it."""

import math
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.ground_keys import joist_index
from app.inspector.card import Card
from app.inspector.committing import committed
from app.inspector.figures_table import Figure, FiguresTable
from app.inspector.section import Section
from app.inspector.value_field import ValueField
from app.session import Session
from wiring.edits.joists import change_joist, remove_joist, size_joists
from wiring.quantities.wording import worded

SIZES = {"width_mm": "Thickness", "depth_mm": "Depth"}
DRILL = (
    "Wires outside a wireway that cross it need a hole, or a clip beneath it. Drill in the middle of its "
    "depth, and see what lies behind before you do."
)


class JoistCard(Card):
    """One joist."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(session, parent)
        title = QLabel("Joist", self)
        title.setProperty("look", "title")
        self.add(title)
        self.figures = FiguresTable(self)
        self.add(self.figures)
        section = Section("Size", self)
        self._sizes: dict[str, ValueField] = {}
        for name, caption in SIZES.items():
            field = ValueField(caption, "length", self._size(name), self)
            field.editor.setObjectName(f"joist_{name}")
            self._sizes[name] = field
            section.add(field)
        alike = QPushButton("Make all joists like this one", self)
        alike.setObjectName("joistsAlike")
        alike.clicked.connect(self._make_alike)
        away = QPushButton("Remove this joist", self)
        away.clicked.connect(lambda: self.session.do(remove_joist(self._index)))
        for button in (alike, away):
            button.setProperty("look", "plain")
            section.add(button)
        self.add(section)
        self._caution = QLabel(DRILL, self)
        self._caution.setProperty("look", "caption")
        self._caution.setTextFormat(Qt.TextFormat.PlainText)
        self._caution.setWordWrap(True)
        self.add(self._caution)
        self.close_up()

    @property
    def _index(self) -> int:
        return joist_index(self.ids[0]) if self.ids else -1

    def refresh(self) -> None:
        """Show the joist as it is now."""
        from wiring.routing.joists import joists_met, joists_of_wire

        plan = self.session.plan
        if not 0 <= self._index < len(plan.joists):
            return
        joist, units = plan.joists[self._index], plan.habits.units
        for name, field in self._sizes.items():
            field.show_units(units)
            field.show_value(getattr(joist, name) / 1000)
        length_m = math.dist(joist.start, joist.end) / 1000
        ways = sum(self._index in joists_met(plan, way.points) for way in plan.wireways.values())
        loose = [
            f"-{w.label}"
            for w in plan.wires.values()
            if not w.along and self._index in joists_of_wire(plan, self.session.kinds, w)
        ]
        self.figures.show_figures(
            [
                Figure("Length", worded(length_m, "length", units), True),
                Figure("Wireways through it", str(ways)),
                Figure("Loose wires across it", str(len(loose)), bool(loose)),
                *(
                    [Figure("Which", ", ".join(loose[:8]) + (" …" if len(loose) > 8 else ""))]
                    if loose
                    else []
                ),
            ]
        )
        self._caution.setVisible(bool(loose))

    def _make_alike(self) -> None:
        joist = self.session.plan.joists[self._index]
        self.session.do(size_joists(width_mm=joist.width_mm, depth_mm=joist.depth_mm))

    def _size(self, name: str) -> Any:  # noqa: ANN401 - a Commit of a ValueField
        return lambda metres: committed(
            self.session, change_joist(self._index, **{name: round(metres * 1000, 3)})
        )
