"""The right-hand side: one card at a time, chosen by what is selected."""

from functools import partial

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from app.bench.bench import bench_of
from app.ground_keys import joist_index
from app.inspector.card import Card, MakesCard
from app.inspector.every_position import Trying
from app.inspector.joist_card import JoistCard
from app.inspector.joists_card import JoistsCard
from app.inspector.laying_out import lay_out
from app.inspector.letting_go import let_go
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
from app.theme.sizes import column_width

LEAST_WIDTH = 276
READY = ("part", "wire", "several")  # cards made beforehand, while nobody waits for one
IDLE_MS = 400


class Inspector(QFrame):
    """Follows the selection, the plan and the figures.

    There is one card for each sort of thing, made when it is first needed and kept:
    choosing another thing fills it anew, which is quick, and nothing under the hand is ever destroyed.
    """

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
        column_width(self, LEAST_WIDTH)
        self._session, self._selection = session, selection
        self._answer: Answer | None = None
        self.trying = Trying(self, at_once=at_once)
        self._bench = bench_of(selection)
        self.throwing = Throwing(self, at_once=at_once)
        self._makes: dict[str, MakesCard] = {
            "plan": partial(PlanCard, trying=self.trying, lay=self._bench.lay),
            "part": partial(PartCard, throwing=self.throwing),
            "wire": WireCard,
            "several": SeveralCard,
            "panel": partial(PanelCard, bench=self._bench),
            "wireway": partial(WirewayCard, selection=selection),
            "joist": JoistCard,
            "joists": JoistsCard,
        }
        self._cards: dict[str, Card] = {}
        self._shown: tuple[str, tuple[str, ...]] | None = None
        self._letting_go = False
        self.card: Card | None = None
        self._area = QScrollArea(self)
        self._area.setWidgetResizable(True)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._pile = QWidget(self._area)
        pile = QVBoxLayout(self._pile)
        pile.setContentsMargins(0, 0, 0, 0)
        self._area.setWidget(self._pile)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._area)
        self._idle = QTimer(self)
        self._idle.setInterval(IDLE_MS)
        self._idle.timeout.connect(self._make_ready)
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
            lay_out(self.card, same_rows=True)

    def showEvent(self, event: QShowEvent) -> None:
        """Soon after, the first choice is made ready for."""
        super().showEvent(event)
        self._idle.start()

    def _make_ready(self) -> None:
        """Make one card that is still wanting; the first choice need not wait for it then."""
        wanting = [sort for sort in READY if sort not in self._cards]
        if wanting:
            for widget in self._kept(wanting[0]).findChildren(QWidget):
                widget.ensurePolished()
        else:
            self._idle.stop()

    def _follow(self, change: PlanChanged) -> None:
        if change.cause == "open":
            self._clear_away()
        self._choose()

    def _choose(self) -> None:
        if self._letting_go:
            return
        if self.card is not None and self._shown == self._wanted():
            self.card.refresh()
            lay_out(self.card)
            return
        self._let_go()
        # Only now: what was being typed counted, and may have changed what there is to show.
        sort, ids = self._shown = self._wanted()
        card = self._kept(sort)
        card.take_up(ids)
        card.show_answer(self._answer_now())
        if card is not self.card:
            if self.card is not None:
                self.card.hide()
            card.show()
            self.card = card
        lay_out(card)
        self._area.verticalScrollBar().setValue(0)

    def _let_go(self) -> None:
        if self.card is None:
            return
        self._letting_go = True
        try:
            # While a change is being told no other can be made: what is half typed then is dropped.
            let_go(self.card, commits=not self._session.telling)
        finally:
            self._letting_go = False

    def _clear_away(self) -> None:
        """Show nothing of the old plan when another is open."""
        self._let_go()
        if self.card is not None:
            self.card.hide()
        for card in self._cards.values():
            card.begin()
        self._shown, self.card = None, None

    def _kept(self, sort: str) -> Card:
        if sort not in self._cards:
            card = self._cards[sort] = self._makes[sort](self._session, self._pile)
            card.hide()
            layout = self._pile.layout()
            assert layout is not None
            layout.addWidget(card)
        return self._cards[sort]

    def _answer_now(self) -> Answer | None:
        answer = self._answer
        return answer if answer is not None and answer.revision == self._session.revision else None

    def _wanted(self) -> tuple[str, tuple[str, ...]]:
        """Return the sort of card there is to show, and what on it."""
        plan = self._session.plan
        ids = tuple(sorted(i for i in self._selection.ids if i in plan.parts or i in plan.wires))
        if ids:
            return self._sort_of(ids), ids
        ground, grounds = self._selection.ground, tuple(sorted(self._selection.grounds))
        if len(grounds) > 1 and all(0 <= joist_index(g) < len(plan.joists) for g in grounds):
            return "joists", grounds
        if 0 <= joist_index(ground) < len(plan.joists):
            return "joist", (ground,)
        if ground in plan.wireways:
            return "wireway", (ground,)
        if self._bench.panel in plan.panels:
            return "panel", (self._bench.panel,)
        return "plan", ()

    def _sort_of(self, ids: tuple[str, ...]) -> str:
        plan, kinds = self._session.plan, self._session.kinds
        if all(i in plan.wires for i in ids):
            return "wire"
        found = {plan.parts[i].kind for i in ids if i in plan.parts}
        one_kind = len(found) == 1 and all(i in plan.parts for i in ids)
        return "part" if one_kind and found <= kinds.keys() else "several"
