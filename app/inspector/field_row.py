"""One row of the inspector: a caption, an editor, and room for one sentence when what was typed cannot be."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from app.inspector.fitted_box import FittedBox
from app.theme.sizes import fix_width

CAPTION_WIDTH = 112


class FieldRow(QWidget):
    """Holds an editor; the sentence below it is only there while something is wrong.

    A `bare` row has no caption and no room of its own for the sentence: it tells it by `faulted`.
    """

    faulted = Signal(str)

    def __init__(self, caption: str, editor: QWidget, parent: QWidget, *, bare: bool = False) -> None:
        super().__init__(parent)
        self.editor = editor
        self._caption: QLabel | None = None
        self._fault: QLabel | None = None
        self._noted = ""
        self._note: QLabel | None = None  # made when it is first needed
        self.fault = ""  # the sentence that is shown, "" when nothing is wrong
        editor.setParent(self)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(0 if bare else 8)
        self._grid.setVerticalSpacing(3)
        self._grid.setColumnStretch(1, 1)
        if not bare:
            self._add_labels()
        self._grid.addWidget(editor, 0, 1)
        self._stacked = False
        if isinstance(editor, FittedBox):
            editor.currentTextChanged.connect(self.fit)
        if self._caption is not None and hasattr(editor, "needed_px"):
            self._caption.installEventFilter(self)
        self.show_caption(caption)

    def show_caption(self, caption: str) -> None:
        """Give it a caption; a bare row only has it read out."""
        self.editor.setAccessibleName(caption)
        if self._caption is not None:
            self._caption.setText(caption)

    def show_fault(self, sentence: str) -> None:
        """Show what is wrong, or nothing."""
        self.fault = sentence
        if self._fault is not None:
            self._fault.setText(sentence)
            self._fault.setVisible(bool(sentence))
        self.faulted.emit(sentence)
        self.editor.setAccessibleDescription(sentence or self._noted)
        if bool(self.editor.property("wrong")) != bool(sentence):
            self.editor.setProperty("wrong", bool(sentence))
            # A stylesheet looks at properties only when it is asked to.
            self.editor.style().unpolish(self.editor)
            self.editor.style().polish(self.editor)

    def show_note(self, sentence: str) -> None:
        """Show something to know about a value that can be, below the editor; a bare row has it as a tip."""
        if self._fault is None:
            self.editor.setToolTip(sentence)
        elif sentence or self._note is not None:
            if self._note is None:
                self._note = QLabel(self)
                self._note.setProperty("look", "caption")
                self._note.setWordWrap(True)
                self._note.setTextFormat(Qt.TextFormat.PlainText)
                self._grid.addWidget(self._note, 3, 0, 1, 2)
            self._note.setText(sentence)
            self._note.setVisible(bool(sentence))
        self._noted = sentence
        if not self.fault:
            self.editor.setAccessibleDescription(sentence)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See whether what is chosen still fits beside the caption."""
        super().resizeEvent(event)
        self.fit()

    def showEvent(self, event: QShowEvent) -> None:
        """The same when it comes into sight with something else chosen."""
        super().showEvent(event)
        self.fit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The same when the caption has another width, as with larger words; once the row is laid out."""
        if event.type() is QEvent.Type.Resize:
            QTimer.singleShot(0, self, self.fit)
        return False

    def fit(self) -> None:
        """Give a box or line whose words would be cut beside the caption the line below it."""
        needed_px: Callable[[], int] | None = getattr(self.editor, "needed_px", None)
        if self._caption is None or self._fault is None or needed_px is None:
            return
        beside = self.width() - self._caption.width() - self._grid.horizontalSpacing()
        stacked = self.isVisible() and needed_px() > beside
        if stacked != self._stacked:
            self._stacked = stacked
            row, column, wide = (1, 0, 2) if stacked else (0, 1, 1)
            self._grid.removeWidget(self.editor)
            self._grid.removeWidget(self._fault)
            self._grid.addWidget(self.editor, row, column, 1, wide)
            self._grid.addWidget(self._fault, row + 1, 0, 1, 2)

    def put_back(self) -> None:
        """Forget what was refused."""
        if self.fault:
            self.show_fault("")

    def _add_labels(self) -> None:
        self._caption, self._fault = QLabel(self), QLabel(self)
        self._caption.setProperty("look", "quiet")
        fix_width(self._caption, CAPTION_WIDTH)
        self._caption.setWordWrap(True)
        self._caption.setBuddy(self.editor)
        self._fault.setProperty("look", "wrong")
        self._fault.setWordWrap(True)
        self._fault.setTextFormat(Qt.TextFormat.PlainText)
        self._fault.hide()
        self._grid.addWidget(self._caption, 0, 0, Qt.AlignmentFlag.AlignVCenter)
        self._grid.addWidget(self._fault, 1, 0, 1, 2)
