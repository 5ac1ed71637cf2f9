"""Room held for a widget that comes and goes: nothing round it is laid out anew meanwhile."""

from PySide6.QtCore import QEvent, QObject, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget


class HeldRoom(QWidget):
    """Stands in a layout in place of a widget, which fills it whenever it is shown.

    Qt lays out all that is round a widget when it is shown or hidden, even where its size is retained.
    """

    def __init__(self, held: QWidget, parent: QWidget) -> None:
        super().__init__(parent)
        self.held = held
        held.setParent(self)
        policy = held.sizePolicy()
        self.setSizePolicy(policy)
        policy.setRetainSizeWhenHidden(True)  # so that it tells while it is hidden, too
        held.setSizePolicy(policy)
        self._hint = held.sizeHint()
        self.installEventFilter(self)

    def sizeHint(self) -> QSize:
        """As much as the widget wants."""
        return self.held.sizeHint()

    def minimumSizeHint(self) -> QSize:
        """As little as the widget can do with."""
        return self.held.minimumSizeHint()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the widget all of it."""
        self.held.setGeometry(self.rect())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Ask anew when Qt says that the widget may want other room, which it does later."""
        if event.type() == QEvent.Type.LayoutRequest:
            self.ask()
        return False

    def ask(self) -> None:
        """Ask for other room at once, only when the widget wants other room."""
        if self.held.sizeHint() != self._hint:
            self._hint = self.held.sizeHint()
            self.updateGeometry()
