"""The right-hand side: one card at a time, chosen by what is selected."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from app.bench.bench import bench_of
from app.ground_keys import joist_index
from app.inspector.card import Card, MakesCard
from app.inspector.every_position import Trying
from app.inspector.joist_card import JoistCard
from app.inspector.panel_card import PanelCard
from app.inspector.part_card import PartCard
from app.inspector.plan_card import PlanCard
from app.inspector.several_card import SeveralCard
from app.inspector.throwing import Throwing
from app.inspector.wire_card import WireCard
from app.inspector.wireway_card import WirewayCard
from app.selection import Selection
from app.session import PlanChanged, Session
from app.solving import Answer
from app.theme.look import Look

LEAST_WIDTH = 276


class Inspector(QFrame):
    """Follows the selection, the plan and the figures."""

    def __init__(
        self,
        session: Session,
        selection: Selection,
        look: Look,
        parent: QWidget,
        *,
        at_once: bool = False,
    ) -> None:
        super().__init__(parent)
        self.setObjectName("inspector")
        self.setMinimumWidth(LEAST_WIDTH)
        self._session, self._selection = session, selection
        self._answer: Answer | None = None
        self.trying = Trying(self, at_once=at_once)
        self._bench = bench_of(selection)
        self.throwing = Throwing(self, at_once=at_once)
        self._makes_part_card = partial(PartCard, throwing=self.throwing)
        self._makes_plan_card = partial(PlanCard, trying=self.trying, lay=self._bench.lay)
        self._makes_panel_card = partial(PanelCard, bench=self._bench)
        self._makes_way_card = partial(WirewayCard, selection=selection)
        self._shown: tuple[MakesCard, tuple[str, ...]] | None = None
        self.card: Card | None = None
        self._area = QScrollArea(self)
        self._area.setWidgetResizable(True)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._area)
        selection.changed.connect(lambda _ids: self._choose())
        session.changed.connect(self._follow)
        self._bench.changed.connect(self._choose)
        self._choose()

    def show_answer(self, answer: Answer) -> None:
        """Show new figures on the card."""
        self._answer = answer
        self.trying.follow(answer)
        if self.card is not None:
            self.card.show_answer(answer)

    def _follow(self, change: PlanChanged) -> None:
        if change.cause == "open":
            self._shown = None
        self._choose()

    def _choose(self) -> None:
        plan = self._session.plan
        ids = tuple(sorted(i for i in self._selection.ids if i in plan.parts or i in plan.wires))
        ground = self._selection.ground
        if not ids and (ground in plan.wireways or 0 <= joist_index(ground) < len(plan.joists)):
            ids = (ground,)
        if not ids and self._bench.panel in plan.panels:
            ids = (self._bench.panel,)
        makes = self._card_for(ids)
        if self._shown == (makes, ids) and self.card is not None:
            self.card.refresh()
            return
        self._shown = (makes, ids)
        card = self.card = makes(self._session, ids, self)
        # The old card goes by and by: a pressed button or an open list of it may still wait for a release.
        old = self._area.takeWidget()
        if old is not None:
            old.deleteLater()
        if self.card is not card:  # what was typed in the old card counted, and chose another card
            card.deleteLater()
            return
        self._area.setWidget(card)
        if self._answer is not None and self._answer.revision == self._session.revision:
            self.card.show_answer(self._answer)

    def _card_for(self, ids: tuple[str, ...]) -> MakesCard:
        plan, kinds = self._session.plan, self._session.kinds
        if not ids:
            return self._makes_plan_card
        if joist_index(ids[0]) >= 0:
            return JoistCard
        if ids[0] in plan.panels:
            return self._makes_panel_card
        if ids[0] in plan.wireways:
            return self._makes_way_card
        if all(i in plan.wires for i in ids):
            return WireCard
        found = {plan.parts[i].kind for i in ids if i in plan.parts}
        one_kind = len(found) == 1 and all(i in plan.parts for i in ids)
        return self._makes_part_card if one_kind and found <= kinds.keys() else SeveralCard
