"""What an empty plan says: how to begin, in the middle of the drawing surface, gone with the first stroke."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QLabel, QMenu, QPushButton, QVBoxLayout, QWidget

from app.theme.words import scaled
from wiring.plan.plan import Plan

WORDS = (
    "Take a part from the left and set it down here, or begin with the board. "
    "Wire the parts, and their volts and amperes appear as you draw."
)
WIDTH, SIDE_ROOM = 400, 40


class FirstSteps(QWidget):
    """Lies over the view; only its buttons take the pointer."""

    def __init__(self, board: QAction, picture: QAction, examples: QMenu, view: QWidget) -> None:
        super().__init__(view)
        self._view = view
        title = QLabel("An empty plan", self)
        title.setProperty("look", "big")
        words = QLabel(WORDS, self)
        words.setProperty("look", "quiet")
        words.setWordWrap(True)
        for label in (title, words):
            label.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        draw = QPushButton("Draw the board", self)
        draw.setAccessibleName("Draw the board")
        draw.clicked.connect(board.trigger)
        under = QPushButton("Put a picture under it", self)
        under.setAccessibleName("Put a picture of the track plan under it")
        under.setObjectName("pictureFirst")
        under.clicked.connect(picture.trigger)
        example = QPushButton("Open an example", self)
        example.setProperty("look", "plain")
        example.setAccessibleName("Open an example")
        example.setObjectName("openExample")
        example.setMenu(examples)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(title)
        column.addWidget(words)
        column.addSpacing(6)
        for button in (draw, under, example):
            button.setCursor(Qt.CursorShape.ArrowCursor)
            column.addWidget(button, 0, Qt.AlignmentFlag.AlignHCenter)
        view.installEventFilter(self)
        self.hide()

    def follow(self, plan: Plan, tool: str) -> None:
        """Show while nothing is drawn and nothing is in hand."""
        self.setVisible(not is_drawn_on(plan) and tool == "select")
        self._centre()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay in the middle when the view changes its size."""
        if event.type() is QEvent.Type.Resize:
            self._centre()
        return False

    def _centre(self) -> None:
        self.setFixedWidth(min(scaled(WIDTH), self._view.width() - SIDE_ROOM))
        self.adjustSize()
        self.move((self._view.width() - self.width()) // 2, (self._view.height() - self.height()) // 2)


def is_drawn_on(plan: Plan) -> bool:
    """Whether there is anything on the plan at all, parts or not."""
    things = (plan.parts, plan.wires, plan.board, plan.joists, plan.tracks, plan.wireways)
    return bool(any(things) or plan.backdrop or plan.scenes or plan.panels)
