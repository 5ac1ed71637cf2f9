"""The page with the plan itself: a slim bar with the tools, the wire in hand, and the drawing surface."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.canvas.hits.hit import Hit
from app.canvas.view import PlanView
from app.canvas.words import hit_words
from app.inspector.wire_choice import ColourBox, SizeBox
from app.theme.icon_button import ICON, icon_button
from app.theme.icons import icon
from app.theme.look import Look
from app.theme.sizes import column_width, fix_height, most_width
from app.theme.words import LEAST, factor
from app.window.actions import DRAWN, PICTURE, TOOLS, ZOOMS, Actions

BAR_HEIGHT = 40
FULL_WORDS_WIDTH = 760


class PlanPage(QWidget):
    """Stands round the drawing surface; the surface does the work."""

    def __init__(self, view: PlanView, actions: Actions, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.view, self._actions = view, actions
        bar = QFrame(self)
        bar.setObjectName("pageBar")
        fix_height(bar, BAR_HEIGHT)
        row = QHBoxLayout(bar)
        row.setContentsMargins(10, 0, 10, 0)
        row.setSpacing(4)
        self._room_for_words = 0
        self._tools = [*(_tool(actions, name, bar) for name in TOOLS), _draw_button(actions, bar)]
        for button in self._tools:
            row.addWidget(button)
        self.wire_size = SizeBox(bar)
        self.wire_size.setAccessibleName("Size of the next wire")
        self.wire_colour = ColourBox(bar)
        self.wire_colour.setAccessibleName("Colour of the next wire")
        column_width(self.wire_size, 86)
        self.wire_colour.setMinimumWidth(126)
        for box, most in ((self.wire_size, 110), (self.wire_colour, 190)):
            most_width(box, most)
            row.addWidget(box)
            box.chosen.connect(self._tell_wire)
        row.addSpacing(2)
        self.thrown = QPushButton(bar)
        self.thrown.setProperty("look", "plain")
        self.thrown.setIcon(icon("put-back"))
        self.thrown.setToolTip(actions["put_back"].toolTip())
        self.thrown.setAccessibleName("Put all switches back as in use")
        self.thrown.clicked.connect(actions["put_back"].trigger)
        self.thrown.hide()
        row.addWidget(self.thrown)
        self.pointed = QLabel(bar)
        self.pointed.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.pointed.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.pointed.setProperty("look", "quiet")
        self.pointed.setTextFormat(Qt.TextFormat.PlainText)
        row.addWidget(self.pointed, 1)
        row.addSpacing(2)
        self._zooms = [icon_button(actions[name], bar) for name in ZOOMS]
        for button in self._zooms:
            row.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(bar)
        column.addWidget(view, 1)
        self._bar = bar
        self.show_wire_choice(False)
        view.tool_changed.connect(self._tell_tool)
        view.pointed.connect(self._tell_pointed)

    def show_wire_choice(self, yes: bool) -> None:
        """Offer size and colour only while wires are drawn."""
        self.wire_size.setVisible(yes)
        self.wire_colour.setVisible(yes)
        if yes:
            self._tell_wire()
        self._show_zooms()

    def keep_room(self) -> None:
        """Be as wide from the start as the bar gets with everything in it, so that nothing shifts later."""
        hidden = [w for w in (self.wire_size, self.wire_colour, self.thrown) if w.isHidden()]
        for widget in (*hidden, *self._zooms):
            widget.setVisible(True)
        self.thrown.setText("99")
        self._bar.ensurePolished()
        self._show_words(True)
        self._room_for_words = self._bar.minimumSizeHint().width()
        self._show_words(False)
        for button in self._zooms:  # keys and wheel do the same, should large words need their room
            button.setVisible(factor() == LEAST)
        self.setMinimumWidth(self._bar.minimumSizeHint().width())
        self._show_words(self.width() >= self._room_for_words)
        self.thrown.setText("")
        for widget in hidden:
            widget.setVisible(False)
        self._show_zooms()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show the words beside the tools' signs where there is room for them."""
        self._show_words(self.width() >= self._room_for_words)
        self._show_zooms()
        super().resizeEvent(event)

    def _show_words(self, yes: bool) -> None:
        style = Qt.ToolButtonStyle
        for button in self._tools:
            button.setToolButtonStyle(style.ToolButtonTextBesideIcon if yes else style.ToolButtonIconOnly)

    def _show_zooms(self) -> None:
        for button in self._zooms:
            button.setVisible(True)
        fits = self._bar.minimumSizeHint().width() <= self.width()
        for button in self._zooms:
            button.setVisible(fits)

    def _tell_tool(self, tool: str) -> None:
        for name in TOOLS:
            self._actions[name].setChecked(name == tool)
        self.show_wire_choice(tool == "wire")

    def _tell_pointed(self, hit: Hit | None) -> None:
        words = hit_words(self.view.sight(), hit) if hit is not None else ""
        room = self.pointed.width()
        self.pointed.setText(self.pointed.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room))

    def show_thrown(self, number: int) -> None:
        """Say how many switches stand otherwise than in use."""
        self.thrown.setVisible(number > 0)
        narrow = self.width() < FULL_WORDS_WIDTH
        self.thrown.setText("" if not number else str(number) if narrow else f"{number} thrown")
        self._show_zooms()

    def _tell_wire(self) -> None:
        self.view.set_wire_choice(self.wire_size.value, self.wire_colour.value)


def _tool(actions: Actions, name: str, parent: QWidget) -> QToolButton:
    button = QToolButton(parent)
    button.setDefaultAction(actions[name])
    button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
    button.setIconSize(ICON)
    button.setAccessibleName(actions[name].text().replace("&", ""))
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return button


def _draw_button(actions: Actions, parent: QWidget) -> QToolButton:
    button = QToolButton(parent)
    button.setText("Draw")
    button.setIcon(icon("draw"))
    button.setIconSize(ICON)
    button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
    button.setToolTip("Draw the board, joists, a track, a wireway, a scene or a panel; a picture under it")
    button.setAccessibleName("Draw")
    button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    menu = QMenu(button)
    menu.addActions([actions[name] for name in DRAWN])
    menu.addSeparator()
    menu.addMenu("A &picture under it").addActions([actions[name] for name in PICTURE])
    button.setMenu(menu)
    return button
