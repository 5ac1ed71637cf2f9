"""A line of words that ends in three points where it has no room for all of them; its tip has them then."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget


class Elided(QLabel):
    """Asks for no room of its own: it takes what is left."""

    def __init__(self, parent: QWidget, words: str = "") -> None:
        super().__init__(words, parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)

    def setText(self, words: str) -> None:
        """Show other words."""
        super().setText(words)
        self._tell()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Tell in the tip what no longer fits."""
        super().resizeEvent(event)
        self._tell()

    @property
    def shown(self) -> str:
        """The words as they are seen."""
        room = self.contentsRect().width()
        return self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, room)

    def _tell(self) -> None:
        self.setToolTip(self.text() if self.shown != self.text() else "")

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint what fits."""
        painter = QPainter(self)
        role, where = self.foregroundRole(), int(self.alignment())
        rect = self.contentsRect()
        self.style().drawItemText(painter, rect, where, self.palette(), self.isEnabled(), self.shown, role)
        painter.end()
