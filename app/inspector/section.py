"""A titled stretch of the inspector, and the thin line between two of them."""

from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout, QWidget


class Section(QWidget):
    """A heading with rows below it."""

    def __init__(self, title: str, parent: QWidget, *, ruled: bool = True) -> None:
        super().__init__(parent)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(7)
        if ruled:
            rule = QFrame(self)
            rule.setProperty("look", "rule")
            self._column.addWidget(rule)
            self._column.addSpacing(3)
        if title:
            heading = QLabel(title, self)
            heading.setProperty("look", "heading")
            self._column.addWidget(heading)

    def add(self, widget: QWidget) -> None:
        """Put a row at the end."""
        self._column.addWidget(widget)
