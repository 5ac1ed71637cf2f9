"""The small flag of a finding: a circle for a note, a diamond for weak, a triangle for danger."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QWidget

from app.theme.look import Look
from wiring.findings.finding import Rank

SIZE = 14
_WORDS = {Rank.NOTE: "note", Rank.WEAK: "weak", Rank.DANGER: "danger"}


def rank_word(rank: Rank) -> str:
    """Return the word, and colour role, of a rank."""
    return _WORDS[rank]


def paint_flag(painter: QPainter, box: QRectF, word: str, colour: str, *, hollow: bool = False) -> None:
    """Paint the shape of a rank in a box; its shape alone tells the rank."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QColor(colour) if hollow else Qt.PenStyle.NoPen)
    painter.setBrush(Qt.BrushStyle.NoBrush if hollow else QColor(colour))
    x, y, w, h = box.x(), box.y(), box.width(), box.height()
    if word == "danger":
        painter.drawPolygon(QPolygonF([QPointF(x + w / 2, y), QPointF(x + w, y + h), QPointF(x, y + h)]))
    elif word == "weak":
        corners = [(x + w / 2, y), (x + w, y + h / 2), (x + w / 2, y + h), (x, y + h / 2)]
        painter.drawPolygon(QPolygonF([QPointF(*c) for c in corners]))
    else:
        inset = w * 0.08
        painter.drawEllipse(box.adjusted(inset, inset, -inset, -inset))
    painter.restore()


class Flag(QWidget):
    """A flag that stands in a row of widgets."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._word = "note"
        self.setFixedSize(SIZE, SIZE)
        look.changed.connect(self.update)

    def show_rank(self, word: str) -> None:
        """Show the flag of "note", "weak" or "danger"."""
        self._word = word
        self.setAccessibleName(word)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint it as it stands."""
        painter = QPainter(self)
        paint_flag(
            painter, QRectF(self.rect()).adjusted(1, 1, -1, -1), self._word, self._look.theme[self._word]
        )
        painter.end()
