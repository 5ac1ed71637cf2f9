"""The pages of the window, one shown at a time."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QStackedWidget, QWidget


class Pages(QStackedWidget):
    """Asks only for the room of the page that is shown, not of the widest one."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.currentChanged.connect(lambda _index: self.updateGeometry())

    def minimumSizeHint(self) -> QSize:
        """The least the shown page needs."""
        page = self.currentWidget()
        return (
            super().minimumSizeHint()
            if page is None
            else page.minimumSizeHint().expandedTo(page.minimumSize())
        )
