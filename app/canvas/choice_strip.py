"""A slim strip at the foot of the plan that offers a few ways to do what is under way."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

HEIGHT = 44
WHY_AIR = 6  # above the sentence that tells why a choice cannot be


class ChoiceStrip(QFrame):
    """Lies along the lower edge of the view while a gesture offers choices; the gesture decides."""

    chosen = Signal(int)  # index of the choice
    agreed = Signal()
    left = Signal()

    def __init__(self, view: QWidget) -> None:
        super().__init__(view)
        self.setObjectName("choices")
        self.setAutoFillBackground(True)
        self._view = view
        self._title = QLabel(self)
        self._title.setProperty("look", "heading")
        self._why = QLabel(self)  # over the button that is not to be pressed, where the whole sentence fits
        self._why.setProperty("look", "wrong")
        self._why.setTextFormat(Qt.TextFormat.PlainText)
        self._why.setWordWrap(True)
        self._why.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom)
        self._why.setContentsMargins(0, WHY_AIR, 0, 0)
        self._why.hide()
        self._says = QLabel(self)  # what the choice that is seen does, where its button has no room for it
        self._says.setProperty("look", "quiet")
        self._says.setTextFormat(Qt.TextFormat.PlainText)
        self._says.setWordWrap(True)
        self._says.setContentsMargins(0, WHY_AIR, 0, 0)
        self._says.hide()
        self._told: tuple[str, ...] = ()
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._group.idClicked.connect(self.chosen)
        self._agree = QPushButton(self)
        self._agree.setProperty("look", "main")
        self._agree.clicked.connect(self.agreed)
        leave = QPushButton("Leave it", self)
        leave.setObjectName("leaveChoices")
        leave.clicked.connect(self.left)
        self._agree.setObjectName("agreeChoices")
        rows = self._rows = QVBoxLayout(self)
        rows.setContentsMargins(16, 0, 12, 0)
        rows.setSpacing(0)
        rows.addWidget(self._why, 0)
        rows.addWidget(self._says, 0)
        self._row, self._second = QHBoxLayout(), QHBoxLayout()
        for row in (self._row, self._second):
            row.setSpacing(6)
            rows.addLayout(row)
        self._row.addWidget(self._title)
        self._row.addSpacing(8)
        self._row.addStretch(1)
        for button in (leave, self._agree):
            self._row.addWidget(button)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.setCursor(Qt.CursorShape.ArrowCursor)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        view.installEventFilter(self)
        self.hide()

    def offer(
        self, title: str, options: Sequence[tuple[str, str]], agree: str, told: Sequence[str] = ()
    ) -> None:
        """Show the strip: its title, words and tip of each choice, words of the button that agrees.

        `told` holds a sentence for each choice that stands over them while it is seen; "" for none.
        """
        for button in self._group.buttons():
            self._group.removeButton(button)
            self._row.removeWidget(button)
            self._second.removeWidget(button)
            button.deleteLater()
        self._title.setText(title)
        self._agree.setText(agree)
        self._told = tuple(told)
        self.mark(-1)
        for index, (words, tip) in enumerate(options):
            button = QToolButton(self)
            button.setText(words)
            button.setToolTip(tip)
            button.setAccessibleName(f"{words}: {tip}")
            button.setObjectName(f"choice{index}")
            button.setCheckable(True)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            self._group.addButton(button, index)
            self._row.insertWidget(2 + index, button)
            button.show()
        self.setAccessibleName(title)
        self._place()
        self.show()
        self.raise_()

    def mark(self, index: int, refused: str = "") -> None:
        """Show which choice is seen on the plan, and why it cannot be agreed to, if so."""
        button = self._group.button(index)
        if button is not None:
            button.setChecked(True)
        says = self._told[index] if 0 <= index < len(self._told) and not refused else ""
        if (self._why.text(), self._says.text()) != (refused, says):
            for label, words in ((self._why, refused), (self._says, says)):
                label.setText(words)
                label.setVisible(bool(words))
            self._agree.setEnabled(not refused)
            self._agree.setAccessibleDescription(refused or says)
            self._agree.setToolTip(refused)
            self._place()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay along the lower edge when the view changes its size."""
        if event.type() is QEvent.Type.Resize:
            self._place()
        return False

    def _place(self) -> None:
        """Lie along the lower edge, in two rows where one is too narrow for all the words."""
        self._arrange(in_two=False)
        narrow = self.minimumSizeHint().width() > self._view.width()
        if narrow:
            self._arrange(in_two=True)
        height = HEIGHT * (2 if narrow else 1)
        margins = self._rows.contentsMargins()
        room = self._view.width() - margins.left() - margins.right()
        for label in (self._why, self._says):
            if label.text():
                label.setFixedHeight(label.heightForWidth(room))
                height += label.height() - WHY_AIR  # the buttons have air enough of their own
        self.setGeometry(0, self._view.height() - height, self._view.width(), height)

    def _arrange(self, *, in_two: bool) -> None:
        while self._second.count():
            self._second.takeAt(0)
        for index, button in enumerate(self._group.buttons()):
            self._row.removeWidget(button)
            if in_two:
                self._second.addWidget(button)
            else:
                self._row.insertWidget(2 + index, button)
        if in_two:
            self._second.addStretch(1)
        self._rows.setStretchFactor(self._row, 1)
        self._rows.setStretchFactor(self._second, int(in_two))
        self._rows.invalidate()
