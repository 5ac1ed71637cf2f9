"""A row of the small tables on the plan card: fields in a line, and beneath it what is wrong."""

from collections.abc import Callable, Iterable, MutableMapping
from typing import TypeVar

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from app.inspector.typed_field import TypedField
from app.theme.icons import icon
from app.theme.sizes import fix_width

REMOVE_WIDTH = 26
Row = TypeVar("Row", bound=QWidget)


class NamedRow(QWidget):
    """Holds one line of widgets and the sentence of whichever field was given something wrong."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._fault = QLabel(self)
        self._fault.setProperty("look", "wrong")
        self._fault.setWordWrap(True)
        self._fault.hide()
        self._name: TypedField | None = None
        self._name_above = False
        self.line = QHBoxLayout()
        self.line.setSpacing(4)
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(2)
        self.column.addLayout(self.line)
        self.column.addWidget(self._fault)

    def lead_with(self, name: TypedField) -> None:
        """Put a name first in the line, or over it where the line would cut it."""
        self._name, self._name_above = name, False
        self.line.addWidget(name, 1)
        name.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Look again when the name has more room or less, as with larger words in what stands beside it.

        Afterwards: the row is just being laid out, and must not be changed meanwhile.
        """
        if event.type() is QEvent.Type.Resize:
            QTimer.singleShot(0, self, self.fit_name)
        return False

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See whether the name still fits."""
        super().resizeEvent(event)
        self.fit_name()

    def showEvent(self, event: QShowEvent) -> None:
        """The same when it comes into sight with another name."""
        super().showEvent(event)
        self.fit_name()

    def fit_name(self) -> None:
        """Put the name where it is not cut."""
        if self._name is None or not self.isVisible():
            return
        others = [item.widget() for n in range(self.line.count()) if (item := self.line.itemAt(n))]
        rest = [w for w in others if w is not None and w is not self._name]
        room = self.width() - sum(w.sizeHint().boundedTo(w.maximumSize()).width() for w in rest)
        above = self._name.line.needed_px() > room - self.line.spacing() * len(rest)
        if above != self._name_above:
            self._name_above = above
            if above:
                self.line.removeWidget(self._name)
                self.line.insertStretch(0, 1)
                self.column.insertWidget(0, self._name)
            else:
                self.column.removeWidget(self._name)
                self.line.takeAt(0)
                self.line.insertWidget(0, self._name, 1)

    def listen_to(self, fields: Iterable[TypedField]) -> None:
        """Show beneath the line what these fields find wrong."""
        for field in fields:
            field.faulted.connect(self._show_fault)

    def _show_fault(self, sentence: str) -> None:
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))


def drop(rows: MutableMapping[str, Row], gone: Iterable[str]) -> None:
    """Take rows out of a table; a row may be under the hand still, so it ends after the event."""
    for key in tuple(gone):
        row = rows.pop(key)
        row.hide()
        row.deleteLater()


def remove_button(parent: QWidget, what: str, take: Callable[[], object]) -> QToolButton:
    """Return the small cross that takes a scene or panel away."""
    button = QToolButton(parent)
    button.setIcon(icon("close"))
    button.setFixedWidth(REMOVE_WIDTH)
    button.setProperty("look", "small")
    button.setToolTip(f"Take this {what} away; its parts stay")
    button.setAccessibleName(f"Take this {what} away")
    # What is taken away takes this very button with it: deleteLater lets the click end first.
    button.clicked.connect(lambda: take())
    return button


def heads(parent: QWidget, columns: Iterable[tuple[str, int]]) -> QGridLayout:
    """Return the captions over a table's columns; width 0 takes what is left."""
    grid = QGridLayout()
    grid.setSpacing(4)
    grid.setColumnStretch(0, 1)
    for column, (text, width) in enumerate(columns):
        head = QLabel(text, parent)
        head.setProperty("look", "caption")
        if width:
            (fix_width if text else QLabel.setFixedWidth)(head, width)
        grid.addWidget(head, 0, column)
    return grid
