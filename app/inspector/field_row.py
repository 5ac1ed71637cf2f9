"""One row of the inspector: a caption, an editor, and room for one sentence when what was typed cannot be."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

CAPTION_WIDTH = 112


class FieldRow(QWidget):
    """Holds an editor; the sentence below it is only there while something is wrong.

    A `bare` row has no caption and no room of its own for the sentence: it tells it by `faulted`.
    """

    faulted = Signal(str)

    def __init__(self, caption: str, editor: QWidget, parent: QWidget, *, bare: bool = False) -> None:
        super().__init__(parent)
        self.editor = editor
        self._bare = bare
        editor.setParent(self)
        editor.setAccessibleName(caption)
        label = QLabel(caption, self)
        label.setProperty("look", "quiet")
        label.setFixedWidth(CAPTION_WIDTH)
        label.setWordWrap(True)
        label.setBuddy(editor)
        label.setVisible(not bare)
        self._fault = QLabel(self)
        self._fault.setProperty("look", "wrong")
        self._fault.setWordWrap(True)
        self._fault.setTextFormat(Qt.TextFormat.PlainText)
        self._fault.hide()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(0 if bare else 8)
        grid.setVerticalSpacing(3)
        if not bare:
            grid.addWidget(label, 0, 0, Qt.AlignmentFlag.AlignVCenter)
        grid.addWidget(editor, 0, 1)
        grid.addWidget(self._fault, 1, 0, 1, 2)
        grid.setColumnStretch(1, 1)

    @property
    def fault(self) -> str:
        """The sentence that is shown, "" when nothing is wrong."""
        return self._fault.text()

    def show_fault(self, sentence: str) -> None:
        """Show what is wrong, or nothing."""
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence) and not self._bare)
        self.faulted.emit(sentence)
        self.editor.setAccessibleDescription(sentence)
        if self.editor.property("wrong") != (bool(sentence)):
            self.editor.setProperty("wrong", bool(sentence))
            # A stylesheet looks at properties only when it is asked to.
            self.editor.style().unpolish(self.editor)
            self.editor.style().polish(self.editor)
