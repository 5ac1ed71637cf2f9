"""A button on a card that does an act of the window."""

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QPushButton, QWidget


class ActButton(QPushButton):
    """Triggers the act of that name, looked up when it is clicked: cards may be made before acts are tied."""

    def __init__(self, words: str, act: str, parent: QWidget) -> None:
        super().__init__(words, parent)
        self._act = act
        self.setProperty("look", "plain")
        self.clicked.connect(self._do)

    def _do(self) -> None:
        act = self.window().findChild(QAction, self._act)
        if act is not None:
            act.trigger()
