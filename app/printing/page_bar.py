"""The bar over the sheets: paper, how many there are, zoom, and the ways onto paper."""

from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QToolButton, QWidget

from app.theme.icon_button import icon_button
from app.theme.sizes import fix_height
from app.window.actions import ZOOMS, Actions


class PageBar(QFrame):
    """Holds the widgets; `choosing` shows and hides what there is to choose; `onto_paper` are buttons."""

    def __init__(self, actions: Actions, paper: QWidget, words: QLabel, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("pageBar")
        fix_height(self, 48)
        save, send = QPushButton("Save PDF…", self), QPushButton("Print…", self)
        save.setProperty("look", "main")
        save.clicked.connect(actions["save_pdf"].trigger)
        send.clicked.connect(actions["print"].trigger)
        self.onto_paper = send, save
        self.choosing = QToolButton(self)
        self.choosing.setText("What to print")
        self.choosing.setCheckable(True)
        self.choosing.setChecked(True)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 0, 12, 0)
        row.setSpacing(8)
        row.addWidget(QLabel("Paper", self))
        row.addWidget(paper)
        row.addWidget(words)
        row.addStretch(1)
        for name in ZOOMS:
            row.addWidget(icon_button(actions[name], self))
        row.addSpacing(10)
        for button in (self.choosing, send, save):
            row.addWidget(button)
