"""One line of words that the mouse can select, at no cost while the pointer is elsewhere."""

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QEnterEvent
from PySide6.QtWidgets import QLabel


class SelectableWords(QLabel):
    """A label that becomes selectable under the pointer.

    Selectable words are a whole text document to Qt, which takes five times as long to show and asks to be
    painted twice; with figures that run along that is time the frame does not have.
    """

    def sizeHint(self) -> QSize:
        """Ask for the room the words need when they can be selected, so that nothing moves then."""
        return super().sizeHint().expandedTo(QSize(0, self.fontMetrics().lineSpacing()))

    def minimumSizeHint(self) -> QSize:
        """Ask for all of it."""
        return self.sizeHint()

    def enterEvent(self, event: QEnterEvent) -> None:
        """Let the words be selected."""
        self.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Be a plain label again, unless something is selected and may still be copied."""
        if not self.hasSelectedText():
            self.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        super().leaveEvent(event)
