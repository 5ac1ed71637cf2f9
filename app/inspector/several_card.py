"""The card of a mixed selection: what it is made of, and its totals."""

from collections import Counter

from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.inspector.card import Card
from app.inspector.choice_field import ChoiceField
from app.inspector.committing import committed
from app.inspector.figures_table import Figure, FiguresTable
from app.inspector.joined_rows import JoinedRows
from app.inspector.one_value import one_value
from app.inspector.part_card import NOWHERE
from app.inspector.reading_words import several_figures
from app.inspector.section import Section
from app.session import Session
from app.solving import Answer
from wiring.edits.scenes import add_scene, put_in_scene
from wiring.plan.groups import thing_of

SCENE_MARGIN_MM = 40.0


class SeveralCard(Card):
    """Parts of different kinds, or parts and wires."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(session, parent)
        self._title = QLabel(self)
        self._title.setProperty("look", "title")
        self.add(self._title)
        self._made_of, self._figures = FiguresTable(self), FiguresTable(self)
        self.add(self._made_of)
        self._joined = JoinedRows(self)
        self.add(self._joined)
        reads = Section("Reads now", self)
        reads.add(self._figures)
        self.add(reads)
        self._scene = ChoiceField(
            "Scene", [NOWHERE], lambda s: committed(session, put_in_scene(self._part_ids(), s)), self
        )
        belongs = Section("Place", self)
        belongs.add(self._scene)
        make = QPushButton("Make a scene of these", self)
        make.setProperty("look", "plain")
        make.clicked.connect(self._make_scene)
        belongs.add(make)
        self.add(belongs)
        self.close_up()

    def refresh(self) -> None:
        """Show what is chosen."""
        plan, kinds = self.session.plan, self.session.kinds
        parts = [plan.parts[i] for i in self._part_ids()]
        wires = sum(i in plan.wires for i in self.ids)
        one = thing_of(plan, self._part_ids())
        self._title.setText(
            f"One thing of {len(one)} parts" if one else f"{len(parts) + wires} things selected"
        )
        self._joined.show_parts(plan, self._part_ids())
        counts = Counter(kinds[p.kind].title if p.kind in kinds else p.kind for p in parts)
        rows = [Figure(title, str(number)) for title, number in counts.items()]
        self._made_of.show_figures([*rows, *([Figure("Wires", str(wires))] if wires else [])])
        self._scene.setVisible(bool(plan.scenes) and bool(parts))
        self._scene.offer([NOWHERE, *((s.id, s.name) for s in plan.scenes.values())])
        self._scene.show_value(one_value(p.scene for p in parts))

    def show_answer(self, answer: Answer | None) -> None:
        """Show the totals."""
        self._figures.show_figures(list(several_figures(answer, self.ids)) if answer is not None else ())

    def _part_ids(self) -> tuple[str, ...]:
        return tuple(i for i in self.ids if i in self.session.plan.parts)

    def _make_scene(self) -> None:
        parts = [self.session.plan.parts[i] for i in self._part_ids()]
        if not parts:
            return
        left, top = min(p.x_mm for p in parts) - SCENE_MARGIN_MM, min(p.y_mm for p in parts) - SCENE_MARGIN_MM
        right, bottom = (
            max(p.x_mm for p in parts) + SCENE_MARGIN_MM,
            max(p.y_mm for p in parts) + SCENE_MARGIN_MM,
        )
        name = f"Scene {len(self.session.plan.scenes) + 1}"
        self.session.do(add_scene(name, left, top, right - left, bottom - top))
