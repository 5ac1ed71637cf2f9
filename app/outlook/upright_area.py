"""A page that is scrolled up and down where it is too high, and never sideways."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget


class UprightArea(QScrollArea):
    """As wide as what it holds needs, at least."""

    def __init__(self, inside: QWidget, parent: QWidget) -> None:
        super().__init__(parent)
        self._inside = inside
        self.setWidget(inside)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def minimumSizeHint(self) -> QSize:
        """The width of what it holds, beside the bar to scroll by."""
        inside = self._inside.minimumSizeHint().width()
        return QSize(inside + self.verticalScrollBar().sizeHint().width(), super().minimumSizeHint().height())
