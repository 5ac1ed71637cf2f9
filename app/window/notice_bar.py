"""The bar below the header that shows one notice at a time."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QToolButton, QWidget

from app.findings.flag import Flag
from app.notices import Notice, Notices
from app.theme.icons import icon
from app.theme.look import Look

NOTE_MS = 9000  # a note leaves by itself; what needs an answer or names a fault stays


class NoticeBar(QFrame):
    """Hidden until something is said; Escape or the cross puts it away."""

    def __init__(self, notices: Notices, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("notice")
        self.hide()
        self._notice: Notice | None = None
        self._flag = Flag(look, self)
        self._words = QLabel(self)
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._act = QPushButton(self)
        self._act.clicked.connect(self._answer)
        close = QToolButton(self)
        close.setIcon(icon("close"))
        close.setAccessibleName("Put this notice away")
        close.clicked.connect(self.put_away)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 6, 10, 6)
        row.setSpacing(10)
        for widget in (self._flag, self._words, self._act, close):
            row.addWidget(widget)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.hide)
        notices.said.connect(self._show)

    @property
    def text(self) -> str:
        """The sentence it shows."""
        return self._words.text()

    def _show(self, notice: Notice) -> None:
        self._notice = notice
        self._flag.show_rank(notice.rank)
        self._words.setText(notice.text)
        self._act.setText(notice.act_text)
        self._act.setVisible(bool(notice.act_text))
        self.setAccessibleName(notice.text)
        self.show()
        self._timer.stop()
        if notice.rank == "note" and notice.act is None:
            self._timer.start(NOTE_MS)

    def put_away(self) -> None:
        """Hide it, as one who has read it."""
        notice, self._notice = self._notice, None
        self.hide()
        if notice is not None and notice.put_away is not None:
            notice.put_away()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape puts it away."""
        if event.key() == Qt.Key.Key_Escape:
            self.put_away()
        else:
            super().keyPressEvent(event)

    def _answer(self) -> None:
        notice = self._notice
        self.hide()
        if notice is not None and notice.act is not None:
            notice.act()
