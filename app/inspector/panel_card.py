"""The card of the panel on the bench: its face, what is painted on it, how its wires come out."""

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QToolButton, QWidget

from app.bench.bench import Bench
from app.inspector.card import Card
from app.inspector.choice_field import ChoiceField
from app.inspector.committing import committed
from app.inspector.face_fields import LegendFields, LineFields
from app.inspector.section import Section
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ON_FACE, ValueField
from app.session import Session
from wiring.edits.edit import Edit
from wiring.edits.face_legends import legends_from_labels
from wiring.edits.panel_harness import bring_out
from wiring.edits.panels import change_panel
from wiring.plan.designations import part_label
from wiring.plan.harness import harness_of, leaving
from wiring.plan.panel import Panel
from wiring.plan.panel_bodies import bodies_on, misfits

SIZES = (
    ("width_mm", "Wide"),
    ("height_mm", "High"),
    ("spacing_mm", "Spacing"),
    ("room_mm", "Room behind"),
)
MAY_BE_EMPTY = {"spacing_mm": "as the plan's", "room_mm": "not known"}
SPACINGS = {  # words and millimetres of the usual ones
    "metric": (("5", 5.0), ("10", 10.0), ("12.5", 12.5), ("20", 20.0)),
    "us": (("1/4", 6.35), ("1/2", 12.7), ("3/4", 19.05), ("1", 25.4)),
}
UNIT = {"metric": "mm", "us": "in"}
SIDES = (("front", "from the front"), ("behind", "from behind"))


class PanelCard(Card):
    """One panel; its id is the only one in `ids`."""

    def __init__(self, session: Session, parent: QWidget, *, bench: Bench) -> None:
        super().__init__(session, parent)
        self._bench = bench
        self._title = self._label("title")
        self._fits = self._label("quiet")
        self.name = TypedField("Name", lambda t: self._change(name=t.strip()), self)
        self.name.editor.setObjectName("panel_name")
        self.sizes: dict[str, ValueField] = {}
        self._spacings: dict[str, QWidget] = {}  # by units
        self._side = ChoiceField("Seen", SIDES, self._turn_over, self)
        self._side.editor.setObjectName("panel_side")
        self._add_face()
        self._lines = LineFields(session, bench, self)
        self._legends = LegendFields(session, bench, self)
        for fields, words, tool in (
            (self._lines, "Draw a track line", "line"),
            (self._legends, "Put a legend", "text"),
        ):
            fields.add(self._button(words, f"bench_{tool}_here", partial(bench.tool_wanted.emit, tool)))
            self.add(fields)
        self._legends.add(self._button("Legends from labels", "legendsFromLabels", self._from_labels))
        self._add_harness()
        self.close_up()

    @property
    def _id(self) -> str:
        return self.ids[0] if self.ids else ""

    def refresh(self) -> None:
        """Show the panel as it is now."""
        plan, panel = self.session.plan, self.session.plan.panels.get(self._id)
        if panel is None:
            return
        self._title.setText(panel.name)
        self.name.show_text(panel.name)
        for field, editor in self.sizes.items():
            value = getattr(panel, field)
            empty = field in MAY_BE_EMPTY and not value
            editor.show_units(plan.habits.units)
            editor.show_value(None if empty else value / 1000, MAY_BE_EMPTY.get(field, ""))
        for units, buttons in self._spacings.items():
            buttons.setVisible(units == plan.habits.units)
        self._side.show_value("behind" if self._bench.behind else "front")
        self._fits.setText(self._fit_words(panel))
        self._lines.refresh(panel)
        self._legends.refresh(panel)
        self._harness.setText(self._harness_words(panel))
        some_leave = bool(leaving(plan, self.session.kinds, panel))
        self._bring_out.setEnabled(some_leave)
        self._bring_out.setVisible(some_leave)

    def _add_face(self) -> None:
        section = Section("Face", self)
        section.add(self.name)
        for field, caption in SIZES:
            editor = ValueField(
                caption, ON_FACE, self._set_mm(field), self, may_be_empty=field in MAY_BE_EMPTY
            )
            editor.editor.setObjectName(f"panel_{field}")
            self.sizes[field] = editor
            section.add(editor)
            if field == "spacing_mm":
                for units in SPACINGS:
                    self._spacings[units] = self._spacing_buttons(units)
                    section.add(self._spacings[units])
        section.add(self._side)
        self.add(section)

    def _spacing_buttons(self, units: str) -> QWidget:
        row = QWidget(self)
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(4)
        line.addStretch(1)
        for words, spacing_mm in SPACINGS[units]:
            button = QToolButton(row)
            button.setText(words)
            button.setProperty("look", "small")
            button.setObjectName(f"spacing_{words}")
            button.setToolTip(f"A spacing of {words} {UNIT[units]}")
            button.setAccessibleName(button.toolTip())
            button.clicked.connect(partial(self._change, spacing_mm=spacing_mm))
            line.addWidget(button)
        line.addWidget(QLabel(UNIT[units], row))
        return row

    def _add_harness(self) -> None:
        section = Section("Wires at the back", self)
        self._harness = QLabel(self)
        self._harness.setWordWrap(True)
        self._harness.setTextFormat(Qt.TextFormat.PlainText)
        section.add(self._harness)
        self._bring_out = self._button(
            "Bring out as a harness",
            "bringOut",
            lambda: self._do(bring_out(self._id, kinds=self.session.kinds)),
        )
        section.add(self._bring_out)
        self.add(section)

    def _fit_words(self, panel: Panel) -> str:
        bodies = bodies_on(self.session.plan, self.session.kinds, panel)
        if not bodies:
            return "Nothing sits in it yet. Place switches, buttons and indicators from the list at the left."
        wrong = misfits(bodies, panel)
        if not wrong:
            return f"{len(bodies)} {'part sits' if len(bodies) == 1 else 'parts sit'} in it, and all fit."
        names = ", ".join(part_label(self.session.plan, b.part.id) for b in bodies if b.part.id in wrong)
        return f"Cannot be mounted as they stand: {names}."

    def _harness_words(self, panel: Panel) -> str:
        plan, kinds = self.session.plan, self.session.kinds
        harness, single = harness_of(plan, kinds, panel), len(leaving(plan, kinds, panel))
        says = []
        if harness is not None and harness.inner:
            plugs = ", ".join(f"{part_label(plan, p.id)}" for p in harness.plugs)
            says.append(f"{len(harness.inner)} wires come out as one harness through {plugs}.")
        if single:
            says.append(f"{single} {'wire leaves' if single == 1 else 'wires leave'} it one by one.")
        return " ".join(says) or "No wire leaves it yet."

    def _label(self, look: str) -> QLabel:
        label = QLabel(self)
        label.setProperty("look", look)
        label.setWordWrap(True)
        label.setTextFormat(Qt.TextFormat.PlainText)
        self.add(label)
        return label

    def _button(self, words: str, name: str, act: Callable[[], object]) -> QPushButton:
        button = QPushButton(words, self)
        button.setObjectName(name)
        button.setProperty("look", "plain")
        button.clicked.connect(lambda: act())
        return button

    def _set_mm(self, field: str) -> Callable[[Any], str]:
        return lambda metres: self._change(**{field: round((metres or 0.0) * 1000, 3)})

    def _turn_over(self, side: str) -> str:
        self._bench.turn_over(side == "behind")
        return ""

    def _from_labels(self) -> None:
        pencil = self._bench.pencil
        self._do(
            legends_from_labels(self._id, pencil.letters_mm, pencil.letters_colour, kinds=self.session.kinds)
        )

    def _do(self, edit: Edit) -> None:
        self.session.do(edit)

    def _change(self, *_checked: object, **fields: Any) -> str:  # noqa: ANN401 - each field has its own type
        return committed(self.session, change_panel(self._id, kinds=self.session.kinds, **fields))
