"""What the chosen track lines and legends look like, or, with none chosen, the next ones."""

from typing import Any

from PySide6.QtWidgets import QWidget

from app.bench.bench import Bench
from app.inspector.committing import committed
from app.inspector.face_colour_field import FaceColourField
from app.inspector.one_value import one_value
from app.inspector.section import Section
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ON_FACE, SEVERAL, ValueField
from app.session import Session
from wiring.edits.edit import Edit
from wiring.edits.face_items import Sort, change_item
from wiring.plan.panel import Panel
from wiring.plan.plan import Plan


class LineFields(Section):
    """Width and colour of track lines."""

    def __init__(self, session: Session, bench: Bench, parent: QWidget) -> None:
        super().__init__("Track diagram", parent)
        self._session, self._bench = session, bench
        self.width_field = ValueField("Line wide", ON_FACE, self._set_width, self)
        self.width_field.editor.setObjectName("line_width")
        self.colour = FaceColourField("Line colour", self._set_colour, self)
        self.colour.editor.setObjectName("line_colour")
        self.add(self.width_field)
        self.add(self.colour)

    def refresh(self, panel: Panel) -> None:
        """Show the chosen lines, or what the next one will be like."""
        chosen = [panel.lines[i] for i in _chosen(self._bench, "line") if i < len(panel.lines)]
        pencil = self._bench.pencil
        width = one_value(line.width_mm for line in chosen) if chosen else pencil.line_mm
        self.width_field.show_units(self._session.plan.habits.units)
        self.width_field.show_value(None if width is None else width / 1000, SEVERAL)
        self.colour.show_value(one_value(line.colour for line in chosen) if chosen else pencil.line_colour)

    def _set_width(self, metres: float | None) -> str:
        width_mm = round((metres or 0.0) * 1000, 3)
        return self._set({"width_mm": width_mm}, {"line_mm": width_mm})

    def _set_colour(self, letters: str) -> str:
        return self._set({"colour": letters}, {"line_colour": letters})

    def _set(self, fields: dict[str, Any], pencil: dict[str, Any]) -> str:
        return _set_each(self._session, self._bench, "line", fields, pencil)


class LegendFields(Section):
    """Words, height, colour and turn of legends."""

    def __init__(self, session: Session, bench: Bench, parent: QWidget) -> None:
        super().__init__("Legends", parent)
        self._session, self._bench = session, bench
        self.words = TypedField("Words", lambda t: self._set({"text": t}, {}), self)
        self.words.editor.setObjectName("legend_words")
        self.high = ValueField("Capitals high", ON_FACE, self._set_high, self)
        self.high.editor.setObjectName("legend_high")
        self.colour = FaceColourField("Letters", self._set_colour, self)
        self.colour.editor.setObjectName("legend_colour")
        self.turn = ValueField("Turned", "number", lambda v: self._set({"turn_deg": v or 0.0}, {}), self)
        self.turn.editor.setObjectName("legend_turn")
        for field in (self.words, self.high, self.colour, self.turn):
            self.add(field)

    def refresh(self, panel: Panel) -> None:
        """Show the chosen legends, or what the next one will be like."""
        chosen = [panel.texts[i] for i in _chosen(self._bench, "text") if i < len(panel.texts)]
        pencil = self._bench.pencil
        high = one_value(text.high_mm for text in chosen) if chosen else pencil.letters_mm
        self.high.show_units(self._session.plan.habits.units)
        self.high.show_value(None if high is None else high / 1000, SEVERAL)
        self.colour.show_value(one_value(t.colour for t in chosen) if chosen else pencil.letters_colour)
        self.words.setVisible(len(chosen) == 1)
        self.turn.setVisible(bool(chosen))
        if chosen:
            self.words.show_text(chosen[0].text)
            self.turn.show_value(one_value(t.turn_deg for t in chosen), SEVERAL)

    def _set_high(self, metres: float | None) -> str:
        high_mm = round((metres or 0.0) * 1000, 3)
        return self._set({"high_mm": high_mm}, {"letters_mm": high_mm})

    def _set_colour(self, letters: str) -> str:
        return self._set({"colour": letters}, {"letters_colour": letters})

    def _set(self, fields: dict[str, Any], pencil: dict[str, Any]) -> str:
        return _set_each(self._session, self._bench, "text", fields, pencil)


def _chosen(bench: Bench, sort: Sort) -> list[int]:
    return sorted(i.number for i in bench.items if i.sort == sort)


def _set_each(
    session: Session, bench: Bench, sort: Sort, fields: dict[str, Any], pencil: dict[str, Any]
) -> str:
    """Change what is chosen, in one step, or else the pencil for what is drawn next."""
    edits = [change_item(bench.panel, sort, i, **fields) for i in _chosen(bench, sort)]
    if not edits:
        bench.sharpen(bench.pencil._replace(**pencil))
        return ""

    def apply(plan: Plan) -> Plan:
        for edit in edits:
            plan = edit.apply(plan)
        return plan

    return committed(session, Edit(edits[0].label, apply))
