"""A line to type in on the plan itself, beside what it is about; nothing else waits for it."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QFrame, QLabel, QLineEdit, QVBoxLayout, QWidget

from app.theme.sizes import fix_width
from wiring.pictures.letters import box_words

Commit = Callable[[str], str]  # takes what was typed; returns "" or why it cannot be
WIDTH = 264
RIM_PX = 8


class InlineInput(QFrame):
    """Enter commits, Escape leaves all as it was; going elsewhere commits what can be and drops the rest."""

    def __init__(self, view: QWidget) -> None:
        super().__init__(view)
        self.setObjectName("inlineInput")
        self.setAutoFillBackground(True)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self._view = view
        self._commit: Commit | None = None
        self._first = ""
        self._as_is = False
        self._caption = QLabel(self)
        self._caption.setProperty("look", "caption")
        self._caption.setTextFormat(Qt.TextFormat.PlainText)
        self.line = _Line(self)
        self.line.returnPressed.connect(self._enter)
        self.line.left = self.leave
        self.line.lost = self._go_elsewhere
        self._fault = QLabel(self)
        self._fault.setProperty("look", "wrong")
        self._fault.setWordWrap(True)
        self._fault.setTextFormat(Qt.TextFormat.PlainText)
        self._note = QLabel(self)
        self._note.setProperty("look", "caption")
        self._note.setWordWrap(True)
        self._note.setTextFormat(Qt.TextFormat.PlainText)
        self.line.textChanged.connect(self._tell_letters)
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 7, 10, 9)
        column.setSpacing(4)
        for widget in (self._caption, self.line, self._fault, self._note):
            column.addWidget(widget)
        self._note.hide()
        fix_width(self, WIDTH)
        view.installEventFilter(self)
        self.hide()

    def ask(
        self, caption: str, text: str, at_px: QPointF, commit: Commit, *, even_as_is: bool = False
    ) -> None:
        """Show the line near a pixel of the view with a text to change, or that Enter takes `even_as_is`."""
        if self._commit is not None:
            self._go_elsewhere()
        self._commit, self._first = commit, text
        self._as_is = even_as_is
        self._caption.setText(caption)
        self.line.setAccessibleName(caption)
        self._say("")
        self.line.setText(text)
        self.line.selectAll()
        self.adjustSize()
        room_x, room_y = self._view.width() - self.width() - RIM_PX, self._view.height() - self.height()
        x = min(max(round(at_px.x()) + RIM_PX, RIM_PX), max(room_x, RIM_PX))
        y = min(max(round(at_px.y()) + RIM_PX, RIM_PX), max(room_y - RIM_PX, RIM_PX))
        self.move(x, y)
        self.show()
        self.raise_()
        self.line.setFocus(Qt.FocusReason.PopupFocusReason)

    def leave(self) -> None:
        """Put it away and change nothing."""
        if self._commit is None:
            return
        self._commit = None
        had_focus = self.line.hasFocus()
        self.hide()
        if had_focus:
            self._view.setFocus(Qt.FocusReason.OtherFocusReason)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A press on the plan, the wheel, or another size of the view means elsewhere."""
        if self._commit is not None and event.type() in _ELSEWHERE:
            self._go_elsewhere()
        return False

    def _enter(self) -> None:
        sentence = self._committed(entered=True)
        if sentence:
            self._say(sentence)
            self.line.selectAll()
        else:
            self.leave()

    def _go_elsewhere(self) -> None:
        self._committed()
        self.leave()

    def _committed(self, *, entered: bool = False) -> str:
        typed = self.line.text()
        as_is = typed == self._first and not (entered and self._as_is)
        if self._commit is None or as_is:
            return ""
        return self._commit(typed)

    def _tell_letters(self, typed: str) -> None:
        """Say at once which letters no sheet can print."""
        sentence = box_words(typed)
        if sentence != self._note.text() or self._note.isHidden() == bool(sentence):
            self._note.setText(sentence)
            self._note.setVisible(bool(sentence))
            self.line.setAccessibleDescription(sentence)
            self.adjustSize()

    def _say(self, sentence: str) -> None:
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))
        self.line.setAccessibleDescription(sentence)
        self.adjustSize()


_ELSEWHERE = (QEvent.Type.MouseButtonPress, QEvent.Type.Wheel, QEvent.Type.Resize)


class _Line(QLineEdit):
    left: Callable[[], None]
    lost: Callable[[], None]

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left()
        else:
            super().keyPressEvent(event)
            event.accept()  # Enter would go on to the plan, which is not meant

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.lost()
