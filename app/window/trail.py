"""Where one was before a jump from a list or a drawing, and the way back there and onward again."""

from typing import TYPE_CHECKING, NamedTuple

from app.canvas.camera import Camera
from app.session import PlanChanged

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

LONGEST = 50


class Place(NamedTuple):
    """What was shown and selected."""

    view: str
    ids: frozenset[str]
    grounds: frozenset[str]
    camera: Camera


class Trail:
    """Remembers places; another plan has another trail."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._before: list[Place] = []
        self._after: list[Place] = []
        self._walking = False
        window.session.changed.connect(self._follow)

    def leave(self) -> None:
        """Remember the place that is about to be left."""
        here = self._here()
        if not self._walking and here not in self._before[-1:]:
            self._before = [*self._before, here][-LONGEST:]
            self._after = []
            self._tell()

    def back(self) -> None:
        """Go where one was before the last jump."""
        self._walk(self._before, self._after)

    def onward(self) -> None:
        """Go again where one came back from."""
        self._walk(self._after, self._before)

    def _walk(self, from_: list[Place], to: list[Place]) -> None:
        here = self._here()
        while from_ and from_[-1] == here:
            from_.pop()
        if from_:
            to.append(here)
            self._go(from_.pop())
        self._tell()

    def _here(self) -> Place:
        window = self._window
        selection = window.selection
        return Place(window.view, selection.ids, selection.grounds, window.plan_view.sight().camera)

    def _go(self, place: Place) -> None:
        window, plan = self._window, self._window.session.plan
        self._walking = True
        window.show_view(place.view)
        window.selection.select((i for i in place.ids if i in plan.parts or i in plan.wires), place.grounds)
        window.selection.keep_to(plan)
        window.plan_view.look_from(place.camera)
        self._walking = False

    def _follow(self, change: PlanChanged) -> None:
        if change.cause == "open":
            self._before, self._after = [], []
            self._tell()

    def _tell(self) -> None:
        self._window.acts["back"].setEnabled(bool(self._before))
        self._window.acts["onward"].setEnabled(bool(self._after))
