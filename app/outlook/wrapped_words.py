"""Cells as high as their words need when the sheet of styles gives them air at the sides."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QTableWidget

AIR_PX = 24  # left and right of the words together, and a little: the toolkit forgets it when it wraps
ABOVE_PX = 8
_TALL = 10_000


class WrappedWords(QStyledItemDelegate):
    """Asks for the height of the words as they will really be broken."""

    def __init__(self, table: QTableWidget) -> None:
        super().__init__(table)
        self._table = table

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        """Return the toolkit's size, or higher."""
        size = super().sizeHint(option, index)
        width = self._table.columnWidth(index.column()) - AIR_PX
        if width <= 0 or not self._table.wordWrap():
            return size
        room = QRect(0, 0, width, _TALL)
        words = str(index.data() or "")
        high = QFontMetrics(self._table.font()).boundingRect(room, Qt.TextFlag.TextWordWrap, words).height()
        return QSize(size.width(), max(size.height(), high + ABOVE_PX))
