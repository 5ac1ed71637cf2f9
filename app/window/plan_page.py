"""The page with the plan itself: a slim bar with the tools, the wire in hand, and the drawing surface."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QMenu,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.canvas.hits.hit import Hit
from app.canvas.view import PlanView
from app.canvas.words import hit_words
from app.inspector.wire_choice import ColourBox, SizeBox
from app.theme.box_name import name_box
from app.theme.elided import Elided
from app.theme.held_room import HeldRoom
from app.theme.icon_button import ICON, icon_button
from app.theme.icons import icon
from app.theme.look import Look
from app.theme.sizes import column_width, fix_height, most_width
from app.theme.words import LEAST, factor, softly
from app.window.actions import DRAWN, PICTURE, TOOLS, ZOOMS, Actions

BAR_HEIGHT = 40
FULL_WORDS_WIDTH = 760
BESIDE = 462  # what the columns on both sides need at least


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
        self._room_for_words, self._offers_wire, self._number = 0, False, 0
        self._tools = [*(_tool(actions, name, bar) for name in TOOLS), _draw_button(actions, bar)]
        for button in self._tools:
            row.addWidget(button)
        self.wire_size = SizeBox(bar)
        name_box(self.wire_size, "Size of the next wire")
        self.wire_colour = ColourBox(bar)
        name_box(self.wire_colour, "Colour of the next wire")
        self.wire_colour.offer_none("as its circuit")
        column_width(self.wire_size, 86)
        self.wire_colour.setMinimumWidth(126)
        self._boxes = (self.wire_size, self.wire_colour)
        for box, most in zip(self._boxes, (110, 190), strict=True):
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
        self._thrown_room = HeldRoom(self.thrown, bar)
        row.addWidget(self._thrown_room)
        self.pointed = Elided(bar, lines=2)
        self.pointed.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.pointed.setProperty("look", "quiet")
        row.addWidget(self.pointed, 1)
        row.addSpacing(2)
        self._zooms = [icon_button(actions[name], bar) for name in ZOOMS]
        for button in self._zooms:
            row.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(bar)
        self._second = QFrame(self)  # for the boxes, where one row has no room for them
        self._second.setObjectName("pageBar")
        self._second.hide()
        fix_height(self._second, BAR_HEIGHT)
        self._below = QHBoxLayout(self._second)
        self._below.setContentsMargins(10, 0, 10, 0)
        self._below.setSpacing(4)
        self._below.addStretch(1)
        column.addWidget(self._second)
        column.addWidget(view, 1)
        self._bar, self._row = bar, row
        self.show_wire_choice(False)
        view.tool_changed.connect(self._tell_tool)
        view.pointed.connect(self._tell_pointed)

    def show_wire_choice(self, yes: bool) -> None:
        """Offer size and colour only while wires are drawn."""
        self._offers_wire = yes
        for box in self._boxes:
            box.setVisible(yes)
        if yes:
            self._tell_wire()
        self._fit()

    def keep_room(self) -> None:
        """Be as wide from the start as the bar gets with everything in it, so that nothing shifts later."""
        self._put_boxes(below=False)
        for widget in (*self._boxes, self.thrown, *self._zooms):
            widget.setVisible(True)
        self.thrown.setText("99")
        self._thrown_room.ask()
        self._bar.ensurePolished()
        self._show_words(True)
        self._room_for_words = self._bar.minimumSizeHint().width()
        self._show_words(False)
        for button in self._zooms:  # keys and wheel do the same, should large words need their room
            button.setVisible(factor() == LEAST)
        wanted = self._bar.minimumSizeHint().width()
        for needless in (*self._boxes, *self._zooms):  # a small screen has no room for these too
            needless.setVisible(False)
        room = max(self.screen().availableSize().width(), self.window().width()) - softly(BESIDE)
        self.setMinimumWidth(max(min(wanted, room), self._bar.minimumSizeHint().width()))
        for box in self._boxes:
            box.setVisible(self._offers_wire)
        self.show_thrown(self._number)
        self._fit()

    def minimumSizeHint(self) -> QSize:
        """No wider than `keep_room` found: what has no room there goes elsewhere."""
        return QSize(self.minimumWidth(), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show what there is room for."""
        self.show_thrown(self._number)
        self._fit()
        super().resizeEvent(event)

    def _fit(self) -> None:
        """Leave out the words of the tools, then the zooms; then put size and colour into a row below."""
        self._show_words(self.width() >= self._room_for_words)
        is_below = self._second.isVisibleTo(self)
        needed = (max(box.minimumWidth(), box.minimumSizeHint().width()) for box in self._boxes)
        boxes_px = sum(needed) + len(self._boxes) * self._row.spacing() if is_below else 0
        for zooms in (True, False):
            for button in self._zooms:
                button.setVisible(zooms)
            if self._bar.minimumSizeHint().width() + boxes_px <= self.width():
                self._put_boxes(below=False)
                return
        self._put_boxes(below=self._offers_wire)

    def _put_boxes(self, *, below: bool) -> None:
        """Move the boxes, only where they are not yet: whoever moves loses the keys."""
        if below == self._second.isVisibleTo(self):
            return
        self._second.setVisible(below)
        for n, box in enumerate(self._boxes):
            if below:
                self._below.insertWidget(n, box)
            else:
                self._row.insertWidget(len(self._tools) + n, box)
            box.setVisible(self._offers_wire)

    def _show_words(self, yes: bool) -> None:
        style = Qt.ToolButtonStyle
        for button in self._tools:
            button.setToolButtonStyle(style.ToolButtonTextBesideIcon if yes else style.ToolButtonIconOnly)

    def _tell_tool(self, tool: str) -> None:
        for name in TOOLS:
            self._actions[name].setChecked(name == tool)
        self.show_wire_choice(tool == "wire")

    def _tell_pointed(self, hit: Hit | None) -> None:
        words = hit_words(self.view.sight(), hit) if hit is not None else ""
        self.pointed.setText(words)

    def show_thrown(self, number: int) -> None:
        """Say how many switches stand otherwise than in use."""
        self._number = number
        narrow, most = self.width() < FULL_WORDS_WIDTH, max(number, 1)
        words = str(most) if narrow else f"{most} thrown"  # of one while there is none: its room stays
        if words != self.thrown.text():
            self.thrown.setText(words)
            self._thrown_room.ask()
            self._fit()
        self.thrown.setVisible(number > 0)

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
