"""The tray of parts: a search field, and kinds to click and place or to drag onto the plan."""

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QLabel,
    QLineEdit,
    QListView,
    QMenu,
    QVBoxLayout,
    QWidget,
)

from app.theme.icons import icon
from app.theme.look import Look
from app.tray.row_painter import RowPainter
from app.tray.shelf_model import ROW_ROLE, Row, ShelfModel
from wiring.catalogue.kind import Kind

LEAST_WIDTH = 184


class Tray(QFrame):
    """Tells which kind the builder wants to place."""

    wanted = Signal(str)  # key of a kind
    wanted_set = Signal(object)  # a KeptSet
    renamed = Signal(object, str)  # path of a kept set, and what it is to be called
    dropped = Signal(object)  # path of a kept set that is no longer wanted

    def __init__(self, kinds: Mapping[str, Kind], look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("tray")
        self.setMinimumWidth(LEAST_WIDTH)  # names are broken into lines
        self.model = ShelfModel(kinds, self)
        self.search = _SearchField(self)
        self.search.setPlaceholderText("Find a part")
        self.search.setAccessibleName("Find a part to place")
        self.search.setClearButtonEnabled(True)
        self.search.addAction(icon("search"), QLineEdit.ActionPosition.LeadingPosition)
        self.search.textChanged.connect(self._searched)
        self.search.returnPressed.connect(self._take_first)
        self.search.went_down.connect(self._go_down)
        self.list = _KindList(self)
        self.list.setModel(self.model)
        self.list.setItemDelegate(RowPainter(look, kinds, self.list))
        self.model.renamed.connect(self.renamed)
        self.list.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.list.customContextMenuRequested.connect(self._show_menu)
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
        number = self.model.best() if words.strip() else None
        if number is not None:  # shown before Enter takes it
            self.list.setCurrentIndex(self.model.index(number))
            self.list.scrollTo(self.model.index(number))

    def _take_first(self) -> None:
        number = self.model.best()
        if number is not None:
            self.list.setCurrentIndex(self.model.index(number))
            self._take(self.model.index(number))

    def _go_down(self) -> None:
        marked = self.list.currentIndex().row()  # the one that Enter takes anyway
        things = [n for n, row in enumerate(self.model.rows) if not row.is_heading]
        below = [n for n in things if n > marked] or things[-1:]
        if below:
            self.list.setFocus()
            self.list.setCurrentIndex(self.model.index(below[0]))

    def _take(self, index: QModelIndex) -> None:
        row: Row | None = index.data(ROW_ROLE)
        if row is None:
            return
        if row.kind is not None:
            self.wanted.emit(row.kind.key)
        elif row.kept is not None:
            self.wanted_set.emit(row.kept)
        else:
            self.model.toggle(row.purpose)

    def set_menu(self, index: QModelIndex) -> QMenu | None:
        """Return the menu of a kept set; None for any other row."""
        row: Row | None = index.data(ROW_ROLE)
        if row is None or row.kept is None:
            return None
        kept, menu = row.kept, QMenu(self.list)
        menu.addAction("Place it", lambda: self.wanted_set.emit(kept))
        menu.addAction("Rename\tF2", lambda: self.list.edit(index))
        menu.addAction("Take it away", lambda: self.dropped.emit(kept.path))
        return menu

    def _show_menu(self, at: QPoint) -> None:
        menu = self.set_menu(self.list.indexAt(at))
        if menu is not None:
            menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
            menu.popup(self.list.viewport().mapToGlobal(at))


class _SearchField(QLineEdit):
    """A field from which Down leads on into what was found."""

    went_down = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down:
            self.went_down.emit()
            return
        super().keyPressEvent(event)


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
        self.setResizeMode(QListView.ResizeMode.Adjust)  # names are broken anew
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)  # F2 and the menu begin it
        self.clicked.connect(self.taken)
        self.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep F2 from the window, where it names what is selected on the plan."""
        if watched is not self:
            return super().eventFilter(watched, event)
        asked = event.type() == QEvent.Type.ShortcutOverride
        if asked and isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_F2 and self._may_edit():
            event.accept()
            return True
        return False

    def _may_edit(self) -> bool:
        return bool(self.currentIndex().flags() & Qt.ItemFlag.ItemIsEditable)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.taken.emit(self.currentIndex())
            return
        if event.key() == Qt.Key.Key_F2 and self._may_edit():
            self.edit(self.currentIndex())
            return
        super().keyPressEvent(event)
