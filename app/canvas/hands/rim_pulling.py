"""Pulls the paper slowly while something that is dragged rests at the rim of the view."""

from collections.abc import Callable

from PySide6.QtCore import QElapsedTimer, QObject, QTimer
from PySide6.QtWidgets import QWidget

from wiring.plan.places import Point

RIM_PX = 24.0  # as near to an edge of the view the paper begins to follow
RESTS_MS = 150  # what only passes through the rim, on its way to a button beside the view, pulls nothing
EVERY_MS = 16
PX_PER_SEC = 20.0  # for each pixel by which the pointer is deeper in the rim
MOST_PX_PER_SEC = 600.0
LATE_MS = 50  # a tick that comes later does not leap for it
Depths = tuple[float, float, float, float]


class RimPulling(QObject):
    """Knows how deep in the rim the pointer is and pulls by that.

    What was taken hold of within the rim pulls only from beyond where it was taken: it can be dragged inward.
    """

    def __init__(
        self, view: QWidget, carries: Callable[[], bool], pull: Callable[[float, float], None]
    ) -> None:
        super().__init__(view)
        self._view, self._carries, self._pull = view, carries, pull
        self._at: Point | None = None
        self._spared: Depths = (0.0, 0.0, 0.0, 0.0)
        self._since = QElapsedTimer()
        self._rests = False
        self._ticks = QTimer(self, interval=EVERY_MS)
        self._ticks.timeout.connect(self._tick)

    def press(self, x_px: float, y_px: float) -> None:
        """A button went down there."""
        self._at, self._spared = (x_px, y_px), self._depths(x_px, y_px)
        self._ticks.stop()

    def move(self, x_px: float, y_px: float) -> None:
        """The pointer is there now."""
        self._at = x_px, y_px
        left, right, top, bottom = map(min, self._spared, self._depths(x_px, y_px))
        self._spared = left, right, top, bottom
        if not self._carries() or not any(self._speed()):
            self._ticks.stop()
        elif not self._ticks.isActive():
            self._rests = False
            self._since.start()
            self._ticks.start()

    def stop(self) -> None:
        """Nothing is dragged any more, or it has left the view."""
        self._at, self._spared = None, (0.0, 0.0, 0.0, 0.0)
        self._ticks.stop()

    def _depths(self, x: float, y: float) -> Depths:
        """Return how deep a place lies in the rim on the left, right, top and bottom, in pixels."""
        across, down = self._view.width(), self._view.height()
        left, right, top, bottom = (max(RIM_PX - gap, 0.0) for gap in (x, across - 1 - x, y, down - 1 - y))
        return left, right, top, bottom

    def _speed(self) -> Point:
        """Return how fast the paper goes, in pixels a second to the right and down."""
        if self._at is None:
            return 0.0, 0.0
        deeper = (depth - spared for depth, spared in zip(self._depths(*self._at), self._spared, strict=True))
        left, right, top, bottom = (min(depth * PX_PER_SEC, MOST_PX_PER_SEC) for depth in deeper)
        return left - right, top - bottom

    def _tick(self) -> None:
        across, down = self._speed()
        if not self._carries() or not (across or down):
            self._ticks.stop()
            return
        if not self._rests:
            self._rests = self._since.hasExpired(RESTS_MS)
            if self._rests:
                self._since.start()
            return
        sec = min(self._since.restart(), LATE_MS) / 1000
        self._pull(across * sec, down * sec)
