"""A slip over the page that shows one notice at a time; nothing moves when it comes or goes.

What lasts and is covered by something newer comes back when that has gone.
"""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from app.findings.flag import Flag
from app.notices import Notice, Notices
from app.theme.icons import icon
from app.theme.look import Look

WIDEST, SIDE_ROOM, DOWN, AIR = 680, 24, 52, 8  # below the bar with a page's tools
FOLLOWED = (QEvent.Type.Resize, QEvent.Type.Move, QEvent.Type.Show, QEvent.Type.Hide)
NARROW = 400  # words stand one below the other in less
NOTE_MS, REFUSAL_MS = 9000, 20000  # these leave by themselves; what needs an answer or names a fault stays


class NoticeBar(QFrame):
    """Hidden until something is said; Escape, there or on the page, or the cross puts it away."""

    left = Signal()  # it goes with the keys still meant for it; what is next in the row must not get them

    def __init__(self, notices: Notices, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("notice")
        self.hide()
        self._notice: Notice | None = None
        self._covered: list[Notice] = []  # the newest last
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
        row = self._row = QHBoxLayout(self)
        row.setContentsMargins(16, 6, 10, 6)
        row.setSpacing(10)
        for widget in (self._flag, self._words, self._act, close):
            row.addWidget(widget)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._go)
        notices.said.connect(self._show)
        notices.outdated.connect(self.forget)
        notices.taken_back.connect(self._take_back)
        self._over: QWidget | None = None
        self._bar: QWidget | None = None
        self._busy: dict[QObject, Callable[[], bool]] = {}  # of pages whose Escape means it when they rest

    def setVisible(self, visible: bool) -> None:
        """Give the keys back before it hides; nothing is left to say then."""
        if not visible:
            self._notice, self._covered = None, []
        held = QApplication.focusWidget()
        if not visible and held is not None and self.isAncestorOf(held):
            self.left.emit()
        super().setVisible(visible)

    def lie_over(self, page: QWidget, bar: QWidget) -> None:
        """Keep over the upper edge of a widget of the same window, below a bar in it that comes and goes."""
        self._over, self._bar = page, bar
        page.installEventFilter(self)
        bar.installEventFilter(self)

    def yield_in(self, page: QWidget, busy: Callable[[], bool]) -> None:
        """Go on an Escape in that page too, unless there is something under way that Escape leaves first."""
        self._busy[page] = busy
        page.installEventFilter(self)

    def yield_to_escape(self) -> bool:
        """Go on an Escape that was not pressed in it; False when nothing is said that may go so lightly."""
        lightly = self._notice is not None and self._notice.put_away is None and self.isVisible()
        if lightly:
            self.put_away()
        return lightly

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the page and the bar, and go on Escape."""
        if isinstance(event, QKeyEvent) and watched in self._busy:
            escape = event.type() == QEvent.Type.KeyPress and event.key() == Qt.Key.Key_Escape
            return escape and not self._busy[watched]() and self.yield_to_escape()
        if event.type() in FOLLOWED and self.isVisibleTo(self.window()):
            self._place()
        return False

    def _place(self) -> None:
        if self._over is None:
            return
        corner = self._over.mapTo(self.window(), QPoint(0, 0))
        room = self._over.width() - 2 * SIDE_ROOM
        if room < NARROW:  # a page between two columns of a small screen: over the columns too
            room, corner = self.window().width() - 2 * SIDE_ROOM, QPoint(0, corner.y())
        width = min(WIDEST, room)
        height = self._row.totalHeightForWidth(width)
        left = corner.x() + (room - width) // 2 + SIDE_ROOM
        down = DOWN
        if self._bar is not None and self._bar.isVisible():
            down = max(down, self._bar.mapTo(self._over, QPoint(0, self._bar.height())).y() + AIR)
        self.setGeometry(left, corner.y() + down, width, max(height, self.minimumSizeHint().height()))
        self.raise_()

    @property
    def text(self) -> str:
        """The sentence it shows."""
        return self._words.text()

    def _show(self, notice: Notice) -> None:
        before = self._notice
        self._covered = [n for n in self._covered if n.text != notice.text]
        if before is not None and _lasts(before) and before.text != notice.text:
            self._covered.append(before)
        self._notice = notice
        self._flag.show_rank(notice.rank)
        self._words.setText(notice.text)
        self._act.setText(notice.act_text)
        self._act.setVisible(bool(notice.act_text))
        self.setAccessibleName(notice.text)
        self.show()
        self._place()
        self._timer.stop()
        if not _lasts(notice):
            self._timer.start(REFUSAL_MS if notice.about_act else NOTE_MS)

    def _go(self) -> None:
        """Hide, or show again what lies below."""
        self._notice = None
        if self._covered:
            self._show(self._covered[-1])
        else:
            self.hide()

    def put_away(self) -> None:
        """Hide it, as one who has read it."""
        notice = self._notice
        self._go()
        if notice is not None and notice.put_away is not None:
            notice.put_away()

    def forget(self, only_about_act: bool) -> None:
        """Hide what is outdated; a rescued copy can be asked for whatever is done."""
        if not only_about_act:
            self._covered = [n for n in self._covered if n.put_away is not None]
        notice = self._notice
        if notice is None or notice.put_away is not None or (only_about_act and not notice.about_act):
            return
        self._go()

    def _take_back(self, notice: Notice) -> None:
        self._covered = [n for n in self._covered if n is not notice]
        if self._notice is notice:
            self._go()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape puts it away."""
        if event.key() == Qt.Key.Key_Escape:
            self.put_away()
        else:
            super().keyPressEvent(event)

    def _answer(self) -> None:
        notice = self._notice
        self._go()
        if notice is not None and notice.act is not None:
            notice.act()


def _lasts(notice: Notice) -> bool:
    """Whether it stays until somebody puts it away."""
    return not notice.about_act and (notice.rank != "note" or notice.act is not None)
