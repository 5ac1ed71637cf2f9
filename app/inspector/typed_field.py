"""A line to type in: it commits on Enter or when it loses the focus, and keeps what was typed when wrong."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QHelpEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QToolTip, QWidget

from app.inspector.field_row import FieldRow
from wiring.pictures.letters import box_words

FRAME_PX = 20  # what the line needs beside its words
Commit = Callable[[str], str]  # takes what was typed; returns "" or why it cannot be


class TypedField(FieldRow):
    """Shows a text; what is typed goes to `commit` once, whole."""

    def __init__(
        self, caption: str, commit: Commit, parent: QWidget, *, hint: str = "", bare: bool = False
    ) -> None:
        self.line = _Line()
        super().__init__(caption, self.line, parent, bare=bare)
        self._commit = commit
        self._shown, self._plain = "", True
        self.line.setPlaceholderText(hint)
        self.line.editingFinished.connect(self._finish)
        self.line.left = self.put_back

    def show_text(self, text: str, hint: str | None = None) -> None:
        """Show a value from the plan; what is being typed, or was refused, is left alone."""
        if hint is not None:
            self.line.setPlaceholderText(hint)
        self._shown = text  # what Esc puts back, also while something else is being typed
        if not (self._plain and text.isascii()):
            self._plain = text.isascii()
            self.show_note(box_words(text))
        being_typed = self.line.isModified() and (self.line.hasFocus() or bool(self.fault))
        if being_typed:
            return
        if self.line.text() != text:
            self.line.setText(text)
            self.line.setCursorPosition(0)
            self.fit()
        elif self.line.isUndoAvailable():
            at = self.line.cursorPosition()
            self.line.setText(text)  # what was typed so far counts now: taking it back is the plan's to do
            self.line.setCursorPosition(at)

    def put_back(self) -> None:
        """Forget what was typed or refused."""
        if self.line.isModified() or self.fault:
            self.line.setText(self._shown)
            self.line.setModified(False)
        super().put_back()

    def align_right(self) -> None:
        """Let numbers stand in a column."""
        self.line.setAlignment(Qt.AlignmentFlag.AlignRight)

    def commit_now(self) -> None:
        """Take what was typed as if the field had been left."""
        self._finish()

    def _finish(self) -> None:
        if not self.line.isModified():
            return
        typed = self.line.text()
        if typed == self._shown:
            self.line.setModified(False)
            self.show_fault("")
            return
        # Before the commit, because the answer to it shows the new value in this very field.
        self.line.setModified(False)
        sentence = self._commit(typed)
        if sentence:
            self.line.setModified(True)  # so that leaving the field again tries again
        self.show_fault(sentence)


class _Line(QLineEdit):
    """Escape puts the old text back; undo and redo are the plan's while nothing is being typed."""

    left: Callable[[], None]

    def __init__(self) -> None:
        super().__init__()
        self.installEventFilter(self)

    def needed_px(self) -> int:
        """Return how wide it must be for its text to be seen whole."""
        return self.fontMetrics().horizontalAdvance(self.text()) + FRAME_PX

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Leave Undo and Redo to the window when nothing is typed to take back; tell what is cut in a tip.

        Not `event` itself: a fault in a handler below an overridden `event` would end the whole program.
        """
        if watched is self and event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            cut = self.needed_px() > self.width() and not self.toolTip()
            if cut:
                QToolTip.showText(event.globalPos(), self.text(), self)
            return cut
        if watched is self and event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            typed = self.isUndoAvailable() and self.isModified()
            undo = event.matches(QKeySequence.StandardKey.Undo) and not typed
            if undo or (event.matches(QKeySequence.StandardKey.Redo) and not self.isRedoAvailable()):
                event.ignore()
                return True
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Answer Escape."""
        if event.key() == Qt.Key.Key_Escape and self.isModified():
            self.left()
            return
        super().keyPressEvent(event)
