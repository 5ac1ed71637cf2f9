"""Bars in a column of a table: to the right what makes it last longer, to the left what makes it shorter."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPalette
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QWidget

from app.theme.look import Look
from app.theme.words import scaled

CHANGE = Qt.ItemDataRole.UserRole  # a share of the days, -1 to whatever
WHOLE = 0.6  # the share at which a bar is as long as it gets
WORDS_PX, THICK_PX, AIR_PX = 78, 9.0, 10.0


class ChangeBars(QStyledItemDelegate):
    """The words stand at the right, the bar to their left about a middle line."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Paint the bar, then the words over what is left."""
        super().paint(painter, option, index)
        change = index.data(CHANGE)
        if change is None:
            return
        room = QRectF(option.rect).adjusted(AIR_PX, 0, -scaled(WORDS_PX) - AIR_PX, 0)
        middle, half = room.center().x(), room.width() / 2
        length = half * max(-1.0, min(change / WHOLE, 1.0))
        s = self._look.surfaces
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(s.note if change > 0 else s.copper))
        bar = QRectF(min(middle, middle + length), room.center().y() - THICK_PX / 2, abs(length), THICK_PX)
        if abs(length) >= 1:
            painter.drawRoundedRect(bar, 3, 3)
        painter.setPen(option.palette.color(QPalette.ColorRole.Mid))
        painter.drawLine(round(middle), round(room.top()), round(middle), round(room.bottom()))
        painter.restore()
