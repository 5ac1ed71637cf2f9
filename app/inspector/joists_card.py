"""The card of several joists: how far apart they lie, their size, where they lie, and how they go."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.ground_keys import joist_index
from app.inspector.card import Card
from app.inspector.committing import committed
from app.inspector.joist_card import SIZES
from app.inspector.one_value import one_value
from app.inspector.section import Section
from app.inspector.value_field import SEVERAL, ValueField
from app.session import Session
from wiring.edits.edit import Edit
from wiring.edits.joist_rows import (
    clear_between,
    middles_apart,
    move_joists,
    remove_joists,
    size_several,
    space_joists,
)
from wiring.plan.joist import Joist

APART = {False: "Middle to middle", True: "Clear between"}
EDGES = ("Left end at", "Upper end at")
EditOf = Callable[[float], Edit]
CROSSED = "They do not lie side by side, so there is no one distance between them."


class JoistsCard(Card):
    """Two joists or more; what is typed holds for all of them."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(session, parent)
        self._title, self._crossed = QLabel(self), QLabel(CROSSED, self)
        self._title.setProperty("look", "title")
        self._crossed.setProperty("look", "caption")
        self._crossed.setWordWrap(True)
        self._title.setTextFormat(Qt.TextFormat.PlainText)
        self.add(self._title)
        spacing, size, place = (Section(words, self) for words in ("Spacing", "Size", "Place"))
        self._apart = {
            clear: self._field(spacing, words, self._spacer(clear), f"joists_{('middles', 'clear')[clear]}")
            for clear, words in APART.items()
        }
        spacing.add(self._crossed)
        self._sizes = {
            name: self._field(size, words, self._sizer(name), f"joists_{name}")
            for name, words in SIZES.items()
        }
        self._edges = [
            self._field(place, words, self._mover(axis), f"joists_edge{axis}")
            for axis, words in enumerate(EDGES)
        ]
        away = QPushButton("Remove these joists", self)
        away.setObjectName("joistsAway")
        away.setProperty("look", "plain")
        away.clicked.connect(lambda: self.session.do(remove_joists(self._indices)))
        place.add(away)
        for section in (spacing, size, place):
            self.add(section)
        self.close_up()

    @property
    def _indices(self) -> tuple[int, ...]:
        return tuple(sorted(map(joist_index, self.ids)))

    @property
    def _joists(self) -> tuple[Joist, ...]:
        joists = self.session.plan.joists
        return tuple(joists[i] for i in self._indices if 0 <= i < len(joists))

    def refresh(self) -> None:
        """Show the joists as they are now."""
        joists = self._joists
        if len(joists) < len(self.ids):
            return
        self._title.setText(f"{len(joists)} joists")
        for clear, field in self._apart.items():
            gaps = clear_between(joists) if clear else middles_apart(joists)
            field.setVisible(bool(gaps))
            self._show(field, one_value(round(gap, 2) for gap in gaps))
        self._crossed.setVisible(not middles_apart(joists))
        for name, field in self._sizes.items():
            self._show(field, one_value(getattr(joist, name) for joist in joists))
        for axis, field in enumerate(self._edges):
            self._show(field, _least(joists, axis))

    def _show(self, field: ValueField, mm: float | None) -> None:
        field.show_units(self.session.plan.habits.units)
        field.show_value(None if mm is None else mm / 1000, SEVERAL if mm is None else "")

    def _field(self, section: Section, words: str, edit: EditOf, name: str) -> ValueField:
        def apply(metres: float | None) -> str:
            return "" if metres is None else committed(self.session, edit(round(metres * 1000, 3)))

        field = ValueField(words, "length", apply, self)
        field.editor.setObjectName(name)
        section.add(field)
        return field

    def _spacer(self, clear: bool) -> EditOf:
        return lambda mm: space_joists(self._indices, mm, clear=clear)

    def _sizer(self, name: str) -> EditOf:
        return lambda mm: size_several(self._indices, **{name: mm})

    def _mover(self, axis: int) -> EditOf:
        def edit(mm: float) -> Edit:
            by = mm - _least(self._joists, axis)
            return move_joists(self._indices, *((0.0, by) if axis else (by, 0.0)))

        return edit


def _least(joists: tuple[Joist, ...], axis: int) -> float:
    """Return how far left or up in mm the joists reach."""
    return min(point[axis] for joist in joists for point in (joist.start, joist.end))
