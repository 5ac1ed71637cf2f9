"""The card of one wire or of several: size, colour, strands, length, figures."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from app.inspector.card import Card
from app.inspector.choice_field import ChoiceField
from app.inspector.committing import committed
from app.inspector.field_row import FieldRow
from app.inspector.figures_table import FiguresTable
from app.inspector.one_value import one_value
from app.inspector.reading_words import several_figures, wire_figures
from app.inspector.section import Section
from app.inspector.typed_field import TypedField
from app.inspector.value_field import SEVERAL, ValueField
from app.inspector.wire_choice import ColourBox, SizeBox
from app.session import Session
from app.solving import Answer
from wiring.edits.set_wire import set_wire
from wiring.plan.designations import terminal_label

STRANDS = (("", "stranded"), ("solid", "solid, one strand"))


class WireCard(Card):
    """Fields that hold for every chosen wire."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(session, parent)
        self._title = QLabel(self)
        self._title.setProperty("look", "title")
        self._ends = QLabel(self)
        self._ends.setProperty("look", "quiet")
        self._ends.setWordWrap(True)
        for label in (self._title, self._ends):
            label.setTextFormat(Qt.TextFormat.PlainText)
            self.add(label)
        self._figures = FiguresTable(self)
        reads = Section("Reads now", self)
        reads.add(self._figures)
        self.add(reads)
        self._size, self._colour = SizeBox(self), ColourBox(self)
        self._size_row = FieldRow("Size", self._size, self)
        self._colour_row = FieldRow("Colour", self._colour, self)
        self._size.chosen.connect(lambda: self._size_row.show_fault(self._set(size=self._size.value)))
        self._colour.chosen.connect(lambda: self._colour_row.show_fault(self._set(colour=self._colour.value)))
        self._solid = ChoiceField("Strands", STRANDS, lambda v: self._set(solid=bool(v)), self)
        self._length = ValueField(
            "Length", "length", lambda v: self._set(length_m=v), self, may_be_empty=True
        )
        made_of = Section("Wire", self)
        for row in (self._size_row, self._colour_row, self._solid, self._length):
            made_of.add(row)
        self.add(made_of)
        self._texts: dict[str, TypedField] = {}
        names = Section("Name", self)
        for name, caption in (("label", "Label"), ("note", "Note")):
            self._texts[name] = TypedField(caption, self._text(name), self)
            self._texts[name].editor.setObjectName(f"wire_{name}")
            names.add(self._texts[name])
        self.add(names)
        self.close_up()

    def refresh(self) -> None:
        """Show the wires as they are now."""
        plan = self.session.plan
        wires = [plan.wires[i] for i in self.ids if i in plan.wires]
        if not wires:
            return
        one = wires[0] if len(wires) == 1 else None
        self._title.setText(f"-{one.label}" if one else f"{len(wires)} wires")
        self._ends.setText(
            f"from {terminal_label(plan, one.start)} to {terminal_label(plan, one.end)}" if one else ""
        )
        self._ends.setVisible(one is not None)
        self._texts["label"].setVisible(one is not None)
        self._size.show_value(one_value(w.size for w in wires) or "")
        self._colour.show_value(one_value(w.colour for w in wires) or "")
        solid = one_value(w.solid for w in wires)
        self._solid.show_value(None if solid is None else "solid" if solid else "")
        self._length.show_units(plan.habits.units)
        lengths = {w.length_m for w in wires}
        length = lengths.pop() if len(lengths) == 1 else None
        self._length.show_value(length, SEVERAL if lengths else "as drawn")
        for name, field in self._texts.items():
            text = one_value(str(getattr(w, name)) for w in wires)
            field.show_text(text or "", SEVERAL if text is None else "")

    def show_answer(self, answer: Answer | None) -> None:
        """Show the figures of the wires."""
        if answer is None:
            self._figures.show_figures(())
        elif len(self.ids) == 1:
            units = self.session.plan.habits.units
            self._figures.show_figures(list(wire_figures(answer, self.ids[0], units)))
        else:
            self._figures.show_figures(list(several_figures(answer, self.ids)))

    def _set(self, **fields: Any) -> str:  # noqa: ANN401 - each field has its own type
        return committed(self.session, set_wire(self.ids, **fields))

    def _text(self, name: str) -> Callable[[str], str]:
        return lambda typed: self._set(**{name: typed.strip()})
