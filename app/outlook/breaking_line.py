"""Fields in one line, of which the last go below the others where there is no room beside them."""

from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

SPACING_PX = 8


class BreakingLine(QWidget):
    """One of the `rest`, the `wide` one, takes what is left of its line."""

    def __init__(
        self, first: Sequence[QWidget], rest: Sequence[QWidget], wide: QWidget, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self._head, self._tail = QHBoxLayout(), QWidget(self)
        tail = QHBoxLayout(self._tail)
        tail.setContentsMargins(0, 0, 0, 0)
        for line, widgets in ((self._head, first), (tail, rest)):
            line.setSpacing(SPACING_PX)
            for widget in widgets:
                line.addWidget(widget, int(widget is wide))
        self._head.addWidget(self._tail, 1)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(SPACING_PX)
        self._column.addLayout(self._head)
        self._broken = False

    def minimumSizeHint(self) -> QSize:
        """The least room: that of the longer line once it is broken."""
        width = max(self._head_width(), self._tail.minimumSizeHint().width())
        return QSize(width, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break the line, or join it again."""
        super().resizeEvent(event)
        needed = self._head_width() + SPACING_PX + self._tail.minimumSizeHint().width()
        if self._broken == (needed > self.width()):
            return
        self._broken = not self._broken
        if self._broken:
            self._head.removeWidget(self._tail)
            self._column.addWidget(self._tail)
        else:
            self._column.removeWidget(self._tail)
            self._head.addWidget(self._tail, 1)
        self.updateGeometry()

    def _head_width(self) -> int:
        """Return the least width of the first line without the rest."""
        own = self._head.minimumSize().width()
        return own if self._broken else own - SPACING_PX - self._tail.minimumSizeHint().width()
