"""The plan's title in the header: cut short while it is read, whole while it is typed."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QLineEdit, QWidget

_FRAME = 20  # pixels the field needs beside its words


class TitleLine(QLineEdit):
    """Tells a new title once, on Enter or when the focus leaves; Escape puts the old one back."""

    renamed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("planTitle")
        self.setAccessibleName("Title of the plan")
        self.setMinimumWidth(60)
        self._title = ""
        self.returnPressed.connect(self.clearFocus)

    def show_title(self, title: str) -> None:
        """Show a title; what is being typed is left alone."""
        self._title = title
        self.setToolTip(title)
        self.setMaximumWidth(self.fontMetrics().horizontalAdvance(title) + _FRAME + 14)
        if not self.hasFocus():
            self._cut_short()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the whole title to type in."""
        self.setText(self._title)
        super().focusInEvent(event)
        self.selectAll()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Tell what was typed, if it is another title."""
        typed = self.text().strip()
        super().focusOutEvent(event)
        if typed != self._title:
            self.renamed.emit(typed)
        self._cut_short()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Escape put the old title back."""
        if event.key() == Qt.Key.Key_Escape:
            self.setText(self._title)
            self.clearFocus()
            return
        super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Cut anew for the new width."""
        super().resizeEvent(event)
        if not self.hasFocus():
            self._cut_short()

    def _cut_short(self) -> None:
        room = self.width() - _FRAME
        self.setText(self.fontMetrics().elidedText(self._title, Qt.TextElideMode.ElideRight, room))
        self.home(False)
