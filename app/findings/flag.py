"""The small flag of a finding: a circle with i for a note, a diamond with ~ for weak, a triangle with !."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QWidget

from app.theme.fonts import fixed_font
from app.theme.look import Look
from wiring.findings.finding import Rank

SIZE = 17
MARK_SHARE = 0.62  # height of the mark, of that of the flag
MARKS = {"note": "i", "weak": "~", "danger": "!"}
_WORDS = {Rank.NOTE: "note", Rank.WEAK: "weak", Rank.DANGER: "danger"}


def rank_word(rank: Rank) -> str:
    """Return the word, and colour role, of a rank."""
    return _WORDS[rank]


def paint_flag(painter: QPainter, box: QRectF, word: str, colour: str, ground: str) -> None:
    """Paint the shape of a rank in a box, with its mark left out of it; both tell the rank without colour."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colour))
    x, y, w, h = box.x(), box.y(), box.width(), box.height()
    if word == "danger":
        painter.drawPolygon(QPolygonF([QPointF(x + w / 2, y), QPointF(x + w, y + h), QPointF(x, y + h)]))
    elif word == "weak":
        corners = [(x + w / 2, y), (x + w, y + h / 2), (x + w / 2, y + h), (x, y + h / 2)]
        painter.drawPolygon(QPolygonF([QPointF(*c) for c in corners]))
    else:
        inset = w * 0.08
        painter.drawEllipse(box.adjusted(inset, inset, -inset, -inset))
    painter.setFont(fixed_font(h * MARK_SHARE, "bold"))
    painter.setPen(QColor(ground))
    low = h * 0.14 if word == "danger" else 0.0
    painter.drawText(box.translated(0, low), Qt.AlignmentFlag.AlignCenter, MARKS[word])
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
            painter,
            QRectF(self.rect()).adjusted(1, 1, -1, -1),
            self._word,
            self._look.theme[self._word],
            self._look.surfaces.header,
        )
        painter.end()
