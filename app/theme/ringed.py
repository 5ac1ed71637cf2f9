"""A widget that shows a ring round itself when the keyboard brought the focus, not when the pointer did."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFocusEvent, QPainter
from PySide6.QtWidgets import QWidget

_KEYS = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason, Qt.FocusReason.ShortcutFocusReason)


class Ringed(QWidget):
    """Call `paint_ring` at the end of painting."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._by_keys = False

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Remember what brought the focus."""
        self._by_keys = event.reason() in _KEYS
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Let the ring go."""
        super().focusOutEvent(event)
        self.update()

    def paint_ring(self, painter: QPainter, colour: str) -> None:
        """Paint the ring if it is due."""
        if self.hasFocus() and self._by_keys:
            painter.setPen(QColor(colour))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
