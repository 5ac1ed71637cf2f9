"""One line of words that the mouse can select, at no cost while the pointer is elsewhere."""

from functools import lru_cache

from PySide6.QtCore import QEvent, QRect, QSize, Qt
from PySide6.QtGui import QEnterEvent, QFont, QFontMetrics
from PySide6.QtWidgets import QLabel

_ANYWHERE = QRect(0, 0, 2000, 2000)


class SelectableWords(QLabel):
    """A label that becomes selectable under the pointer.

    Selectable words are a whole text document to Qt, which takes five times as long to show and asks to be
    painted twice; with figures that run along that is time the frame does not have.
    """

    def say(self, words: str, *, runs: bool = False) -> None:
        """Show other words; those of a figure that `runs` keep the room they had, as it comes and goes."""
        self.setText(words)
        self._take_room(self.minimumSize() if runs else QSize())

    def changeEvent(self, event: QEvent) -> None:
        """Take other room for other letters."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._take_room(QSize())

    def _take_room(self, least: QSize) -> None:
        """Take the room the words need when they can be selected, so that nothing moves then.

        At each change of a label's words Qt lays out all that is round it, unless the label's size is fixed.
        """
        room = _room(self.text(), self.alignment().value, self.font()).expandedTo(least)
        if room != self.minimumSize():
            self.setFixedSize(room)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Let the words be selected."""
        self.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Be a plain label again, unless something is selected and may still be copied."""
        if not self.hasSelectedText():
            self.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        super().leaveEvent(event)


@lru_cache(maxsize=1024)
def _room(words: str, alignment: int, font: QFont) -> QSize:
    letters = QFontMetrics(font)
    return (
        letters.boundingRect(_ANYWHERE, alignment, words).size().expandedTo(QSize(0, letters.lineSpacing()))
    )
