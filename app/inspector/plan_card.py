"""The card of the plan itself, shown while nothing is selected: totals, scenes, habits."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.inspector.backdrop_rows import BackdropRows
from app.inspector.card import Card
from app.inspector.choice_field import ChoiceField, Option
from app.inspector.colour_rows import ColourRows
from app.inspector.committing import committed
from app.inspector.every_position import EveryPosition, Trying
from app.inspector.figures_table import FiguresTable
from app.inspector.panel_rows import PanelRows
from app.inspector.reading_words import plan_figures
from app.inspector.scene_rows import SceneRows
from app.inspector.section import Section
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ValueField
from app.session import Session
from app.solving import Answer
from wiring.edits.scenes import add_scene
from wiring.edits.set_plan import set_habits, set_plan

CHOICES: dict[str, tuple[str, tuple[Option, ...]]] = {
    "units": ("Lengths in", (("metric", "metres"), ("us", "feet and inches"))),
    "fascia": (
        "You stand at",
        (
            ("bottom", "the lower edge"),
            ("top", "the upper edge"),
            ("left", "the left"),
            ("right", "the right"),
        ),
    ),
    "paper": ("Paper", (("A4", "A4"), ("Letter", "Letter"), ("A3", "A3"))),
    "symbols": ("Symbols", (("iec", "IEC 60617"), ("ieee", "IEEE 315 (American)"))),
}
VALUES: dict[str, tuple[str, str]] = {
    "slack_m": ("Spare per end", "length"),
    "drop_limit": ("Drop allowed", "fraction"),
    "dim_lightness": ("Dim below", "lightness"),
    "ambient_c": ("Room", "temperature"),
}
SCENE_SIZE_MM = (600.0, 400.0)


class PlanCard(Card):
    """What holds for the whole layout."""

    def __init__(
        self,
        session: Session,
        parent: QWidget,
        *,
        trying: Trying,
        lay: Callable[[str], None],
    ) -> None:
        super().__init__(session, parent)
        self._seen: tuple[object, object] = (None, None)  # the plan and the kinds that are shown
        self._answer: Answer | None = None
        title = QLabel("This layout", self)
        title.setProperty("look", "title")
        self.add(title)
        self._figures = FiguresTable(self)
        self.add(self._figures)
        self.every_position = EveryPosition(trying, self)
        self.add(self.every_position)
        scenes = Section("Scenes and how they are used", self)
        self.scenes = SceneRows(session, self)
        scenes.add(self.scenes)
        self.add(scenes)
        more = QPushButton("Add a scene", self)
        more.setObjectName("addScene")
        more.setProperty("look", "plain")
        more.clicked.connect(self._add_scene)
        scenes.add(more)
        self._panels = Section("Panels", self)
        self.panels = PanelRows(session, self, lay)
        self._panels.add(self.panels)
        self.add(self._panels)
        self._colours = Section("Wire colours by circuit", self)
        self.colours = ColourRows(session, self)
        self._colours.add(self.colours)
        self.add(self._colours)
        self._picture = Section("Picture under the plan", self)
        self.picture = BackdropRows(session, self)
        self._picture.add(self.picture)
        self.add(self._picture)
        self._choices: dict[str, ChoiceField] = {}
        self._values: dict[str, ValueField] = {}
        self._add_habits()
        self.close_up()

    def take_up(self, ids: tuple[str, ...]) -> None:
        """Show the plan again; what has not changed meanwhile is still there."""
        self.ids = ids
        self.every_position.refresh()
        if not (self._seen[0] is self.session.plan and self._seen[1] is self.session.kinds):
            self.refresh()

    def begin(self) -> None:
        """Forget the rows of the old plan, which had its own scenes, panels and supplies."""
        for rows in (self.scenes, self.panels, self.colours):
            rows.begin()

    def refresh(self) -> None:
        """Show the plan as it is now."""
        plan, habits = self.session.plan, self.session.plan.habits
        self._seen = (plan, self.session.kinds)
        self._author.show_text(plan.author)
        self._currency.show_text(habits.currency)
        self.scenes.refresh()
        self.panels.refresh()
        self._panels.setVisible(bool(plan.panels))
        self.colours.refresh()
        self._colours.setVisible(bool(self.colours.rows))
        self.picture.refresh()
        self._picture.setVisible(plan.backdrop is not None)
        for name, field in self._choices.items():
            field.show_value(str(getattr(habits, name)))
        for name, value_field in self._values.items():
            value_field.show_units(habits.units)
            value_field.show_value(getattr(habits, name))

    def show_answer(self, answer: Answer | None) -> None:
        """Show the totals."""
        if answer is not self._answer or answer is None:
            self._answer = answer
            self._figures.show_figures(list(plan_figures(answer)) if answer is not None else ())

    def _add_habits(self) -> None:
        section = Section("Habits", self)
        self._author = TypedField("Drawn by", self._set_author, self)
        section.add(self._author)
        for name, (caption, options) in CHOICES.items():
            self._choices[name] = ChoiceField(caption, options, self._habit(name), self)
            section.add(self._choices[name])
        for name, (caption, quantity) in VALUES.items():
            field = ValueField(caption, quantity, self._habit(name), self)
            field.editor.setObjectName(f"habit_{name}")
            self._values[name] = field
            section.add(field)
        self._currency = TypedField("Prices in", self._set_currency, self, hint="any currency")
        self._currency.editor.setObjectName("habit_currency")
        section.add(self._currency)
        self.add(section)

    def _habit(self, name: str) -> Callable[[Any], str]:
        return lambda value: committed(self.session, set_habits(**{name: value}))

    def _set_currency(self, typed: str) -> str:
        return committed(self.session, set_habits(currency=typed.strip()))

    def _set_author(self, typed: str) -> str:
        return committed(self.session, set_plan(author=typed.strip()))

    def _add_scene(self) -> None:
        plan = self.session.plan
        corners = plan.board or tuple((p.x_mm, p.y_mm) for p in plan.parts.values()) or ((0.0, 0.0),)
        left, top = min(x for x, _ in corners), min(y for _, y in corners)
        self.session.do(add_scene(f"Scene {len(plan.scenes) + 1}", left, top, *SCENE_SIZE_MM))
