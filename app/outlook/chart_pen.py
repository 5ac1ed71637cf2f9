"""Words and faint colours of a chart."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from app.theme.fonts import screen_font
from app.theme.surfaces import Surfaces
from app.theme.words import lined, scaled

LEFT_OF, RIGHT_OF = Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignRight
MIDDLE = Qt.AlignmentFlag.AlignHCenter
SIZE_PX = 12
_WIDE, _HIGH = 320.0, 18.0


class ChartPen:
    """A painter that can write at a place."""

    def __init__(self, painter: QPainter, s: Surfaces) -> None:
        self.p, self.s = painter, s

    def words(
        self, x: float, y: float, text: str, colour: str, align: Qt.AlignmentFlag, weight: str = "regular"
    ) -> None:
        """Write with the place at the left end, the right end or the middle of the words."""
        self.p.setFont(screen_font(SIZE_PX, weight))
        self.p.setPen(QColor(colour))
        wide, high = scaled(_WIDE), lined(_HIGH)
        left = {LEFT_OF: x, RIGHT_OF: x - wide}.get(align, x - wide / 2)
        room = QRectF(left, y - high / 2, wide, high)
        self.p.drawText(room, align | Qt.AlignmentFlag.AlignVCenter, text)

    def width(self, text: str, weight: str = "regular") -> float:
        """Return how wide words are."""
        return QFontMetricsF(screen_font(SIZE_PX, weight)).horizontalAdvance(text)

    def faint(self, colour: str, alpha: int) -> QColor:
        """Return a colour that lets through what lies below; alpha up to 255."""
        found = QColor(colour)
        found.setAlpha(alpha)
        return found
