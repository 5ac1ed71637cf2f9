"""The card of a wireway: its name, its holes and drops, what runs in it and whether that fits."""

import math
from collections.abc import Callable
from itertools import pairwise
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.inspector.card import Card
from app.inspector.committing import committed
from app.inspector.figures_table import Figure, FiguresTable
from app.inspector.section import Section
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ValueField
from app.selection import Selection
from app.session import Session
from wiring.edits.wireways import remove_wireway, set_wireway
from wiring.plan.plan import Plan
from wiring.plan.wireway import Wireway
from wiring.quantities.wording import worded

SIZES = {"hole_mm": "Narrowest hole", "drop_mm": "Drop to the board", "fascia_drop_mm": "Drop to panels"}
MOST_NAMED = 24  # wires that are named one by one
CORNERS = "Two clicks on it add a corner; drag a corner to move it, and the wires in it follow."


class WirewayCard(Card):
    """One wireway."""

    def __init__(self, session: Session, parent: QWidget, *, selection: Selection) -> None:
        super().__init__(session, parent)
        self._title = QLabel(self)
        self._title.setProperty("look", "title")
        self._wires = QLabel(self)
        self._wires.setProperty("look", "quiet")
        for label in (self._title, self._wires):
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setWordWrap(True)
        self.add(self._title)
        self.figures = FiguresTable(self)
        self.add(self.figures)
        holds = Section("Runs in it", self)
        holds.add(self._wires)
        self.pick = QPushButton("Select these wires", self)
        self.pick.setObjectName("pickWires")
        self.pick.setProperty("look", "plain")
        self.pick.clicked.connect(lambda: selection.select(w.id for w in wires_in(session.plan, self._id)))
        holds.add(self.pick)
        self.add(holds)
        self._add_fields()
        self.close_up()

    @property
    def _id(self) -> str:
        return self.ids[0] if self.ids else ""

    def refresh(self) -> None:
        """Show the wireway as it is now."""
        plan = self.session.plan
        way = plan.wireways.get(self._id)
        if way is None:
            return
        units = plan.habits.units
        self._title.setText(way.name)
        self._name.show_text(way.name)
        for name, field in self._sizes.items():
            value = getattr(way, name)
            field.show_units(units)
            field.show_value(None if value is None else value / 1000, "as to the board")
        self.figures.show_figures(list(wireway_figures(plan, way)))
        wires = wires_in(plan, way.id)
        named = ", ".join(f"-{w.label}" for w in wires[:MOST_NAMED])
        more = f" and {len(wires) - MOST_NAMED} more" if len(wires) > MOST_NAMED else ""
        self._wires.setText(f"{named}{more}" if wires else "Nothing yet: Edit, Route along wireways.")
        self.pick.setVisible(bool(wires))

    def _add_fields(self) -> None:
        section = Section("Wireway", self)
        self._name = TypedField("Name", lambda typed: self._set(name=typed.strip()), self)
        self._name.editor.setObjectName("wireway_name")
        section.add(self._name)
        self._sizes: dict[str, ValueField] = {}
        for name, caption in SIZES.items():
            optional = name == "fascia_drop_mm"
            field = ValueField(caption, "length", self._size(name), self, may_be_empty=optional)
            field.editor.setObjectName(f"wireway_{name}")
            self._sizes[name] = field
            section.add(field)
        hint = QLabel(CORNERS, self)
        hint.setProperty("look", "caption")
        hint.setWordWrap(True)
        section.add(hint)
        away = QPushButton("Remove this wireway", self)
        away.setProperty("look", "plain")
        away.clicked.connect(lambda: self.session.do(remove_wireway(self._id)))
        section.add(away)
        self.add(section)

    def _size(self, name: str) -> Callable[[float | None], str]:
        return lambda metres: self._set(**{name: None if metres is None else round(metres * 1000, 3)})

    def _set(self, **fields: Any) -> str:  # noqa: ANN401 - each field has its own type
        return committed(self.session, set_wireway(self._id, **fields))


def wires_in(plan: Plan, way_id: str) -> list[Any]:
    """Return the wires that were led along a wireway, in plan order."""
    return [w for w in plan.wires.values() if way_id in w.along]


def wireway_figures(plan: Plan, way: Wireway) -> list[Figure]:
    """Return length, joists met and bundle of a wireway in words."""
    from wiring.routing.bundles import bundles
    from wiring.routing.joists import joists_met

    units = plan.habits.units
    length_mm = sum(math.dist(a, b) for a, b in pairwise(way.points))
    found = [Figure("Length", worded(length_mm / 1000, "length", units), True)]
    if plan.joists:
        found.append(Figure("Joists it goes through", str(len(joists_met(plan, way.points)))))
    bundle = next((b for b in bundles(plan) if b.wireway.id == way.id), None)
    if bundle is None:
        return [*found, Figure("Wires in it", "none")]
    found.append(Figure("Wires in it", str(len(bundle.wires)), True))
    fill = f"{worded(bundle.fill, 'fraction')} of {worded(bundle.allowed, 'fraction')} allowed"
    found.append(Figure("Hole filled", fill, not bundle.fits))
    word = "Hole they need" if bundle.fits else "Too narrow: drill"
    return [*found, Figure(word, worded(bundle.hole_mm / 1000, "length", units), not bundle.fits)]
