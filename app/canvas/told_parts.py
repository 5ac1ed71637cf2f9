"""What a screen reader finds inside the plan: every part, wire and thing of the ground, by name and place."""

from functools import cache
from typing import TYPE_CHECKING, Any
from weakref import ref

from PySide6.QtCore import QObject, QPoint, QRect
from PySide6.QtGui import QAccessible, QAccessibleEvent, QAccessibleInterface, QColor, QWindow
from PySide6.QtWidgets import QAccessibleWidget
from shiboken6 import isValid

from app.canvas.hands.walking import SORTS, things
from app.canvas.readings import reading
from app.canvas.words import ground_words, part_words, wire_words
from wiring.plan.plan import Plan

if TYPE_CHECKING:
    from app.canvas.view import PlanView

# Qt keeps what it was given by address; Python must not take any of it away while the program runs.
_KEPT: list[QAccessibleInterface] = []
LEAST_PX = 8  # a thin wire still has a place that can be pointed at


class ToldPlan(QAccessibleWidget):
    """The plan, with what lies on it as children in the order in which keys walk it, then its widgets."""

    def __init__(self, view: "PlanView") -> None:
        super().__init__(view, QAccessible.Role.Canvas)
        self._view = ref(view)  # it is kept for longer than the view
        self._told: dict[str, ToldThing] = {}
        self._order: tuple[Plan | None, tuple[str, ...]] = None, ()

    @property
    def view(self) -> "PlanView | None":
        """The plan on the screen; None once it is closed."""
        view = self._view()
        return view if view is not None and isValid(view) else None

    @property
    def order(self) -> tuple[str, ...]:
        """Everything on the plan."""
        view = self.view
        if view is None:
            return ()
        plan = view.plan
        if self._order[0] is not plan:
            self._order = plan, tuple(one for sort in SORTS for one in things(plan, sort))
        return self._order[1]

    def told(self, one: str) -> "ToldThing":
        """Return what speaks for a thing, always the same for the same."""
        if one not in self._told:
            self._told[one] = ToldThing(self, one)
            _KEPT.append(self._told[one])
        return self._told[one]

    def childCount(self) -> int:
        """Return how many things there are, and widgets over them."""
        return len(self.order) + (super().childCount() if self.view is not None else 0)

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """Return one of them."""
        things_told = len(self.order)
        if 0 <= index < things_told:
            return self.told(self.order[index])
        return super().child(index - things_told) if self.view is not None else None

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """Return which of them it is; -1 for none."""
        if isinstance(child, ToldThing):
            return self.order.index(child.one) if child.one in self.order else -1
        widget = super().indexOfChild(child) if self.view is not None else -1
        return widget + len(self.order) if widget >= 0 else -1

    def focusChild(self) -> QAccessibleInterface | None:  # type: ignore[override]
        """Return the one thing that is selected."""
        view = self.view
        one = view.only if view is not None else ""
        return self.told(one) if one in self.order else None


class ToldThing(QAccessibleInterface):
    """One thing on the plan."""

    def __init__(self, plan: ToldPlan, one: str) -> None:
        super().__init__()
        self._plan, self.one = plan, one

    def isValid(self) -> bool:
        """Whether the plan still has it."""
        return self.one in self._plan.order

    def object(self) -> QObject | None:  # type: ignore[override]
        """It is no object of Qt's."""
        return None

    def window(self) -> QWindow | None:  # type: ignore[override]
        """Return the window of the plan."""
        view = self._plan.view
        return view.window().windowHandle() if view is not None else None

    def relations(self, match: Any = None) -> list[Any]:  # noqa: ANN401 - a flag of Qt's, and pairs of Qt's
        """It is labelled by nothing else."""
        return []

    def focusChild(self) -> None:  # type: ignore[override]
        """It has no children."""
        return

    def childAt(self, x: int, y: int) -> None:  # type: ignore[override]
        """It has no children."""
        return

    def parent(self) -> QAccessibleInterface:
        """Return the plan."""
        return self._plan

    def child(self, index: int) -> None:  # type: ignore[override]
        """It has no children."""
        return

    def childCount(self) -> int:
        """It has no children."""
        return 0

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """It has no children."""
        return -1

    def text(self, what: QAccessible.Text) -> str:
        """Return its name, or as description what it reads."""
        view = self._plan.view
        if view is None or not self.isValid():
            return ""
        sight = view.sight()
        if what == QAccessible.Text.Name:
            if self.one in sight.plan.parts:
                return part_words(sight, self.one)
            return (
                wire_words(sight, self.one) if self.one in sight.plan.wires else ground_words(sight, self.one)
            )
        is_read = what == QAccessible.Text.Description and self.one in (*sight.plan.parts, *sight.plan.wires)
        return reading(sight, self.one) if is_read else ""

    def setText(self, what: QAccessible.Text, text: str) -> None:
        """Names are typed on the plan, not through a reader."""

    def rect(self) -> QRect:
        """Return where it lies on the screen."""
        view = self._plan.view
        if view is None or not self.isValid():
            return QRect()
        box = view.box_of(self.one)
        if box is None:
            return QRect()
        a, b = view.px(box.left, box.top), view.px(box.right, box.bottom)
        rect = QRect(view.mapToGlobal(a), view.mapToGlobal(b)).normalized()
        grow = QPoint(max(LEAST_PX - rect.width(), 0), max(LEAST_PX - rect.height(), 0)) / 2
        return rect.adjusted(-grow.x(), -grow.y(), grow.x(), grow.y())

    def role(self) -> QAccessible.Role:
        """It stands in a list of things."""
        return QAccessible.Role.ListItem

    def state(self) -> QAccessible.State:
        """Whether it is selected and has the keyboard."""
        state = QAccessible.State()
        view = self._plan.view
        if view is None or not self.isValid():
            state.invalid = True
            return state
        state.selectable = state.focusable = True
        state.selected = self.one in view.chosen
        state.focused = view.only == self.one and view.hasFocus()
        return state

    def foregroundColor(self) -> QColor:
        """It has no one colour."""
        return QColor()

    def backgroundColor(self) -> QColor:
        """It has no one colour."""
        return QColor()


def tell_focus(view: "PlanView") -> None:
    """Let a reader know that the keyboard has gone to another thing of the plan."""
    there = QAccessible.queryAccessibleInterface(view)
    if isinstance(there, ToldPlan) and view.only in there.order:
        event = QAccessibleEvent(view, QAccessible.Event.Focus)
        event.setChild(there.order.index(view.only))
        QAccessible.updateAccessibility(event)


@cache
def speak_for_plans() -> None:
    """Let Qt ask here what stands on a plan; once a program."""
    QAccessible.installFactory(_told)


def _told(_key: str, of: QObject) -> QAccessibleInterface | None:
    from app.canvas.view import PlanView

    if not isinstance(of, PlanView):
        return None
    plan = ToldPlan(of)
    _KEPT.append(plan)
    return plan
