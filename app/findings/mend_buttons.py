"""The buttons in the list of findings: in every row that is seen and has an act one that mends it.

Where several findings are of one sort, the first of them has a second button, which mends them all.
"""

from PySide6.QtCore import QElapsedTimer, QEvent, QModelIndex, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QListView, QPushButton, QToolTip

from app.findings.finding_list import ALL_ROLE, ALL_WORDS_ROLE, FINDING_ROLE
from app.findings.row_layout import row_layout
from wiring.findings.finding import Finding

KEYS = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
KEY_WORDS, ALL_KEY_WORDS = "Ctrl+Return", "Ctrl+Shift+Return"


class MendButtons(QObject):
    """Lays buttons over the rows of a list; pressing one, or its key in the list, asks for the act."""

    wanted = Signal(object)  # the Finding that is to be mended
    all_wanted = Signal(object)  # the AllOfSort that are to be mended, or None where there are not several

    def __init__(self, view: QListView) -> None:
        super().__init__(view)
        self._view = view
        self._buttons: list[_MendButton] = []
        self._pressed = QElapsedTimer()
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(self._place)
        view.installEventFilter(self)
        view.viewport().installEventFilter(self)
        view.verticalScrollBar().valueChanged.connect(self._place)
        model = view.model()
        model.modelReset.connect(self._later.start)
        model.rowsInserted.connect(self._later.start)
        view.selectionModel().currentChanged.connect(self._later.start)

    def go_on(self, row: int) -> None:
        """Stay by keys in the row where one was: the findings are other ones now."""
        view, count = self._view, self._view.model().rowCount()
        if row >= 0 and count and view.hasFocus() and not view.currentIndex().isValid():
            view.setCurrentIndex(view.model().index(min(row, count - 1), 0))
        self._place()

    def button(self, row: int) -> QPushButton | None:
        """Return the button of a row that mends it, if it is seen and has one."""
        self._place()
        return self._worn(row, of_all=False)

    def button_of_all(self, row: int) -> QPushButton | None:
        """Return the button of a row that mends all of its sort, if it is seen and has one."""
        self._place()
        return self._worn(row, of_all=True)

    def _worn(self, row: int, *, of_all: bool) -> QPushButton | None:
        worn = (b for b in self._buttons if b.isVisibleTo(self._view))
        return next((b for b in worn if (b.row, b.of_all) == (row, of_all)), None)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Mend what is current on its key; lay the buttons anew when the list has other room."""
        if watched is self._view and isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            if event.key() in KEYS and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                if not event.isAutoRepeat():  # a key that is held mends one thing, not all
                    of_all = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
                    self._ask(self._view.currentIndex(), of_all=of_all)
                return True
        elif event.type() in (QEvent.Type.Resize, QEvent.Type.Show, QEvent.Type.FontChange):
            self._later.start()
        return super().eventFilter(watched, event)

    def _ask(self, index: QModelIndex, *, of_all: bool) -> None:
        finding = index.data(FINDING_ROLE) if index.isValid() else None
        if finding is not None and of_all:
            self.all_wanted.emit(index.data(ALL_ROLE))
        elif finding is not None:
            self.wanted.emit(finding)

    def _press(self, row: int, *, of_all: bool) -> None:
        """Mend a row, but not by the second half of a double click: that row moved up under the pointer."""
        hasty = self._pressed.isValid() and self._pressed.elapsed() < QApplication.doubleClickInterval()
        self._pressed.start()
        if not hasty:
            self._ask(self._view.model().index(row, 0), of_all=of_all)

    def _place(self) -> None:
        """Give each row in sight that has an act its buttons, and put the others away."""
        rows = self._seen() if self._view.isVisible() else []
        while len(self._buttons) < len(rows):
            button = _MendButton(self._view)
            button.clicked.connect(
                lambda _checked=False, button=button: self._press(button.row, of_all=button.of_all)
            )
            self._buttons.append(button)
        current = self._view.currentIndex().row()
        for button, (row, of_all) in zip(self._buttons, rows, strict=False):
            self._wear(button, row, of_all=of_all, by_tab=row == current)
        for button in self._buttons[len(rows) :]:
            if button.hasFocus():
                self._view.setFocus()
            button.hide()

    def _wear(self, button: "_MendButton", row: int, *, of_all: bool, by_tab: bool) -> None:
        index = self._view.model().index(row, 0)
        finding: Finding = index.data(FINDING_ROLE)
        rect, all_words = self._view.visualRect(index), index.data(ALL_WORDS_ROLE) or ""
        layout = row_layout(finding, rect.width(), all_words)
        place = layout.of_all if of_all else layout.button
        assert finding.act is not None and place is not None
        words = all_words if of_all else finding.act.words
        button.row, button.of_all = row, of_all
        button.setText(words.replace("&", "&&"))
        button.setAccessibleName(words)
        button.setAccessibleDescription(
            "Mends all findings of this sort as one step" if of_all else f"Mends this: {finding.what}"
        )
        tip = f"{words}  {ALL_KEY_WORDS if of_all else KEY_WORDS}"
        if button.underMouse() and button.toolTip() != tip:
            QToolTip.hideText()  # what it shows was said of another finding
        button.setToolTip(tip)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus if by_tab else Qt.FocusPolicy.NoFocus)
        button.setGeometry(place.translated(rect.topLeft()))
        button.show()

    def _seen(self) -> list[tuple[int, bool]]:
        """Return the buttons in sight: the row of each, and whether it mends all of the row's sort."""
        view, model = self._view, self._view.model()
        room = view.viewport().rect()
        rows: list[tuple[int, bool]] = []
        first = view.indexAt(room.topLeft())
        for row in range(max(first.row(), 0), model.rowCount()):
            index = model.index(row, 0)
            rect = view.visualRect(index)
            if rect.top() > room.bottom():
                break
            finding: Finding = index.data(FINDING_ROLE)
            if finding.act is not None and rect.intersects(room):
                rows.append((row, False))
                if index.data(ALL_WORDS_ROLE):
                    rows.append((row, True))
        return rows


class _MendButton(QPushButton):
    """One button; it is handed from row to row."""

    def __init__(self, view: QListView) -> None:
        super().__init__(view.viewport())
        self.row, self.of_all = -1, False
        self.setProperty("look", "mend")
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setCursor(Qt.CursorShape.ArrowCursor)
