"""Rows that stay out of sight until they are asked for."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget


class Folded(QWidget):
    """A quiet button with rows below it; `marked` says that something in there is not as usual."""

    def __init__(self, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._title = title
        self._marked = 0
        self.button = QPushButton(self)
        self.button.setProperty("look", "plain")
        self.button.setCheckable(True)
        self.button.toggled.connect(self._unfold)
        self._rows = QWidget(self)
        self._inner = QVBoxLayout(self._rows)
        self._inner.setContentsMargins(0, 0, 0, 0)
        self._inner.setSpacing(7)
        self._rows.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(7)
        column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self._rows)
        self._tell()

    def add(self, row: QWidget) -> None:
        """Put a row at the end."""
        self._inner.addWidget(row)

    def mark(self, number: int) -> None:
        """Say how many of the rows are not as usual; the first time that opens them."""
        if number and not self._marked:
            self.button.setChecked(True)
        self._marked = number
        self._tell()

    def fold(self) -> None:
        """Be as new, for other things."""
        self._marked = 0
        self.button.setChecked(False)
        self._tell()

    def _unfold(self, yes: bool) -> None:
        self._rows.setVisible(yes)
        self._tell()

    def _tell(self) -> None:
        changed = f" ({self._marked} changed)" if self._marked else ""
        self.button.setText(f"{'Less' if self.button.isChecked() else self._title}{changed}")
        self.button.setAccessibleName(f"Settings for experts{changed}")
