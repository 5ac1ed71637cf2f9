"""The tray of parts: a search field, and kinds to click and place or to drag onto the plan."""

from collections.abc import Mapping

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QFrame, QLabel, QLineEdit, QListView, QVBoxLayout, QWidget

from app.theme.icons import icon
from app.theme.look import Look
from app.tray.row_painter import RowPainter
from app.tray.shelf_model import ROW_ROLE, Row, ShelfModel
from wiring.catalogue.kind import Kind

LEAST_WIDTH = 184


class Tray(QFrame):
    """Tells which kind the builder wants to place."""

    wanted = Signal(str)  # key of a kind

    def __init__(self, kinds: Mapping[str, Kind], look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("tray")
        self.setMinimumWidth(LEAST_WIDTH)
        self.model = ShelfModel(kinds, self)
        self.search = QLineEdit(self)
        self.search.setPlaceholderText("Find a part")
        self.search.setAccessibleName("Find a part to place")
        self.search.setClearButtonEnabled(True)
        self.search.addAction(icon("search"), QLineEdit.ActionPosition.LeadingPosition)
        self.search.textChanged.connect(self._searched)
        self.search.returnPressed.connect(self._take_first)
        self.list = _KindList(self)
        self.list.setModel(self.model)
        self.list.setItemDelegate(RowPainter(look, self.list))
        self.list.taken.connect(self._take)
        self._nothing = QLabel("No part is called that. Try “lamp”, “switch” or “battery”.", self)
        self._nothing.setWordWrap(True)
        self._nothing.setProperty("look", "quiet")
        self._nothing.setContentsMargins(14, 4, 14, 4)
        self._nothing.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 10, 0, 0)
        column.setSpacing(4)
        field = QVBoxLayout()
        field.setContentsMargins(12, 0, 12, 0)
        field.addWidget(self.search)
        column.addLayout(field)
        column.addWidget(self._nothing)
        column.addWidget(self.list, 1)
        look.changed.connect(self.list.viewport().update)

    def mark(self, key: str) -> None:
        """Show which kind is being placed; an empty key shows none."""
        for number, row in enumerate(self.model.rows):
            if row.kind is not None and row.kind.key == key:
                self.list.setCurrentIndex(self.model.index(number))
                return
        self.list.clearSelection()

    def _searched(self, words: str) -> None:
        self.model.search(words)
        self._nothing.setVisible(not self.model.rows)

    def _take_first(self) -> None:
        for number, row in enumerate(self.model.rows):
            if row.kind is not None:
                self.list.setCurrentIndex(self.model.index(number))
                self.wanted.emit(row.kind.key)
                return

    def _take(self, index: QModelIndex) -> None:
        row: Row | None = index.data(ROW_ROLE)
        if row is None:
            return
        if row.kind is not None:
            self.wanted.emit(row.kind.key)
        else:
            self.model.toggle(row.purpose)


class _KindList(QListView):
    """A list where a click or Enter takes the row."""

    taken = Signal(QModelIndex)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Parts to place")
        self.setMouseTracking(True)
        self.setDragEnabled(True)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragOnly)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.clicked.connect(self.taken)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.taken.emit(self.currentIndex())
            return
        super().keyPressEvent(event)
