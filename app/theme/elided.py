"""A line or two of words that end in three points where they have no room; their tip has them whole then."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent, QTextLayout
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget


class Elided(QLabel):
    """Asks for no room of its own: it takes what is left."""

    def __init__(self, parent: QWidget, words: str = "", lines: int = 1) -> None:
        super().__init__(words, parent)
        self._lines = lines
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
        """The words as they are seen, line by line."""
        room = self.contentsRect().width()
        lines = self._broken(room)
        whole, rest = lines[: self._lines - 1], lines[self._lines - 1 :]
        last = self.fontMetrics().elidedText(" ".join(rest), Qt.TextElideMode.ElideRight, room)
        return "\n".join([*whole, last] if rest else whole)

    def fits(self, room: int) -> bool:
        """Whether all of the words would be seen in so many pixels."""
        lines, metrics = self._broken(room), self.fontMetrics()
        return len(lines) <= self._lines and all(metrics.horizontalAdvance(line) <= room for line in lines)

    def _broken(self, room: int) -> list[str]:
        words = self.text()
        if self._lines == 1 or self.fontMetrics().horizontalAdvance(words) <= room:
            return [words]
        layout, lines = QTextLayout(words, self.font()), []
        layout.beginLayout()
        while (line := layout.createLine()).isValid():
            line.setLineWidth(room)
            lines.append(words[line.textStart() : line.textStart() + line.textLength()].strip())
        layout.endLayout()
        return lines

    def _tell(self) -> None:
        self.setToolTip("" if self.fits(self.contentsRect().width()) else self.text())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint what fits; what is broken into lines begins at the left."""
        painter, words, rect = QPainter(self), self.shown, self.contentsRect()
        left = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        where = left if "\n" in words else int(self.alignment())
        role = self.foregroundRole()
        self.style().drawItemText(painter, rect, where, self.palette(), self.isEnabled(), words, role)
        painter.end()
