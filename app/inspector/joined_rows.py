"""What a card says of parts joined as one thing, and the buttons that feed, join or take apart."""

from collections.abc import Collection

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.inspector.act_button import ActButton
from wiring.plan.groups import thing_of, things_of
from wiring.plan.names import PartId
from wiring.plan.plan import Plan


class JoinedRows(QWidget):
    """Offers what can be done with the selected parts as a whole."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._feed = ActButton("Feed these", "feed", self)
        self._join = ActButton("Join as one thing", "join", self)
        self._apart = ActButton("Take apart", "take_apart", self)
        self._keep = ActButton("Keep in the tray", "keep_set", self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        for button in (self._feed, self._join, self._apart, self._keep):
            column.addWidget(button)

    def show_parts(self, plan: Plan, ids: Collection[PartId]) -> None:
        """Offer to join parts that are not one thing, to take apart and keep those that are."""
        things = things_of(plan, ids)
        within_one = len(things) == 1 and set(ids) <= set(things[0])
        self._feed.setVisible(len(ids) > 1)
        self._join.setVisible(len(ids) > 1 and not within_one)
        self._apart.setVisible(bool(things))
        self._keep.setVisible(bool(thing_of(plan, ids)))
        self.setVisible(len(ids) > 1 or bool(things))
